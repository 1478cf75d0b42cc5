/** The program. Builds the world and runs; nothing else ends the process or sets its exit code. */
import module from "node:module";

// Compiled code is kept between runs where this Node can; the rest is loaded after that is switched on.
module.enableCompileCache?.();
const [{ processWorld }, { run }] = await Promise.all([import("./process-world.ts"), import("./run.ts")]);

for (const stream of [process.stdout, process.stderr]) {
  stream.on("error", (error: NodeJS.ErrnoException) => {
    // Whoever reads has seen enough, as `| head` does.
    if (error.code === "EPIPE") process.exit();
    throw error;
  });
}
process.exitCode = await run(process.argv.slice(2), processWorld(process));
