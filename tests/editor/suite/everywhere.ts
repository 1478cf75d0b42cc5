/** The tests that every kind of editor has to pass. */
import { activationTests } from "./activation.ts";
import { featureTests } from "./features.ts";
import { joinedTests } from "./joined.ts";
import { lineHelpTests } from "./line-help.ts";
import { nameTests } from "./names.ts";
import type { EditorTest } from "./runner.ts";
import { typingTests } from "./typing.ts";
import { wholeFolderTests } from "./whole-folder.ts";

/** In their order: those of the waking come first. */
export const testsEverywhere: readonly EditorTest[] = [
  ...activationTests,
  ...joinedTests,
  ...wholeFolderTests,
  ...featureTests,
  ...lineHelpTests,
  ...nameTests,
  ...typingTests,
];
