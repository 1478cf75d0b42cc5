/** Checks of how lines are written: words, names, units, numbers, definitions, gear. */
export * from "./gear.ts";
export * from "./names.ts";
export * from "./reading.ts";
