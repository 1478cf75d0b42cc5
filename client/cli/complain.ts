/** What goes wrong, told to the person at the terminal. */
import { printable } from "./render/printable.ts";
import type { World } from "./world.ts";

/** One clear line on the error stream. */
export function complain(world: World, line: string): void {
  world.err.write(`deepwake: ${printable(line)}\n`);
}
