/** The one form of every verb's JSON. */
import type { World } from "./world.ts";

/** `{ "format": "deepwake-<verb>/1", "version", … }`, indented, with a line end. */
export function envelopeText(verb: string, world: World, content: object): string {
  return `${JSON.stringify({ format: `deepwake-${verb}/1`, version: world.version, ...content }, null, 2)}\n`;
}
