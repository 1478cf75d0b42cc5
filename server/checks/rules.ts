/** Every rule that looks at a whole file, in the order it runs; those of one trip are in `TRIP_RULES`. */
import type { Rule } from "./check.ts";
import { DAY_RULES } from "./day-rules.ts";
import { LANGUAGE_RULES } from "./language-rules.ts";

export const FILE_RULES: readonly Rule[] = [...LANGUAGE_RULES, ...DAY_RULES];
