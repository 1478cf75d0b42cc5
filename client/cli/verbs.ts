/** The verbs by name. Each is loaded when it is asked for, so that one doesn't wait for what only another needs. */
import type { Verb } from "./verb.ts";

/** Every verb, in the order of the help. */
export const VERBS: ReadonlyMap<string, () => Promise<Verb>> = new Map([
  ["check", async (): Promise<Verb> => (await import("./verbs/check.ts")).CHECK],
  ["format", async (): Promise<Verb> => (await import("./verbs/format.ts")).FORMAT],
  ["summary", async (): Promise<Verb> => (await import("./verbs/summary.ts")).SUMMARY],
  ["calibrate", async (): Promise<Verb> => (await import("./verbs/calibrate.ts")).CALIBRATE],
  ["depth", async (): Promise<Verb> => (await import("./verbs/depth.ts")).DEPTH],
  ["letout", async (): Promise<Verb> => (await import("./verbs/letout.ts")).LETOUT],
  ["serve", async (): Promise<Verb> => (await import("./verbs/serve.ts")).SERVE],
]);
