/** Every rule, in the order it runs. */
import type { Rule } from "./check.ts";
import { touchingBottom } from "./touching-bottom.ts";

export const RULES: readonly Rule[] = [touchingBottom];
