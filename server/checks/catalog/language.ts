/** Checks of how lines are written: words, names, units, numbers, definitions. */
export * from "./names.ts";
export * from "./reading.ts";
