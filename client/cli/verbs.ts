/** The verbs by name. Each but the one asked for most is loaded when it is asked for, so that none waits for what only another needs. */
import type { Verb } from "./verb.ts";
import { CHECK } from "./verbs/check.ts";

/** Every verb, in the order of the help. */
export const VERBS: ReadonlyMap<string, () => Promise<Verb>> = new Map([
  ["check", async (): Promise<Verb> => CHECK],
  ["format", async (): Promise<Verb> => (await import("./verbs/format.ts")).FORMAT],
  ["summary", async (): Promise<Verb> => (await import("./verbs/summary.ts")).SUMMARY],
  ["calibrate", async (): Promise<Verb> => (await import("./verbs/calibrate.ts")).CALIBRATE],
  ["depth", async (): Promise<Verb> => (await import("./verbs/depth.ts")).DEPTH],
  ["letout", async (): Promise<Verb> => (await import("./verbs/letout.ts")).LETOUT],
  ["serve", async (): Promise<Verb> => (await import("./verbs/serve.ts")).SERVE],
]);
