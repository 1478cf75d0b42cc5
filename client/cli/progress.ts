/** A line on the terminal that says how far a long run has come. It goes to the error stream and leaves no trace. */
import type { World } from "./world.ts";

/** Shorter runs are over before anyone wonders. */
const MANY_FILES = 20;

interface Progress {
  step(): void;
  done(): void;
}

/** Counts files; silent for few of them, and where nobody looks on. */
export function progressOf({ err }: World, total: number): Progress {
  const isShown = total > MANY_FILES && err.isTerminal;
  let count = 0;
  return {
    step: () => {
      count++;
      if (isShown) err.write(`\rreading ${count} of ${total}`);
    },
    done: () => {
      if (isShown) err.write(`\r${" ".repeat(`reading ${total} of ${total}`.length)}\r`);
    },
  };
}
