/** Every rule, in the order it runs. */
import type { Rule } from "./check.ts";
import { LANGUAGE_RULES } from "./language-rules.ts";
import { touchingBottom } from "./touching-bottom.ts";

export const RULES: readonly Rule[] = [...LANGUAGE_RULES, touchingBottom];
