/** Every rule, in the order it runs. */
import type { Rule } from "./check.ts";
import { DAY_RULES } from "./day-rules.ts";
import { LANGUAGE_RULES } from "./language-rules.ts";

export const RULES: readonly Rule[] = [...LANGUAGE_RULES, ...DAY_RULES];
