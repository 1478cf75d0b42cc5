/** Checks of what the day says: times, rigs, depths, readings, fish. */
export * from "./contradictions.ts";
export * from "./depths.ts";
export * from "./measured-depths.ts";
export * from "./measures.ts";
export * from "./no-depth.ts";
export * from "./readings-and-fish.ts";
export * from "./rods.ts";
export * from "./times.ts";
export * from "./water.ts";
