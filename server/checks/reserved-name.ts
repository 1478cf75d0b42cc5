import { fileGear } from "../model/gear-lines.ts";
import { slotName } from "../model/quantities.ts";
import { RESERVED_NAME } from "./catalog/language.ts";
import { RESERVED_NAMES } from "./catalog/titles.ts";
import type { Rule } from "./check.ts";
import { slotPlace } from "./places.ts";

/** Flags a rig, lure or ball whose name means something else in a log, so that no line could speak of it. */
export const reservedName: Rule = ({ analysis, report }) => {
  const [own] = analysis.files;
  for (const { line, lineIndex } of own === undefined ? [] : fileGear(own).lines) {
    const name = slotName(line) ?? "";
    const meaning = RESERVED_NAMES.get(`${line.verb} ${name}`);
    if (meaning !== undefined) {
      report(RESERVED_NAME, slotPlace(lineIndex, line), { name, verb: line.verb, meaning });
    }
  }
};
