/** The rules about how lines are written, in the order they run. */
import type { Rule } from "./check.ts";

export const LANGUAGE_RULES: readonly Rule[] = [];
