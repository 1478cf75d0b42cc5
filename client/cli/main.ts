/** The entry. Nothing else ends the process or sets its exit code. */
import module from "node:module";

// Compiled code is kept between runs where this Node can; the rest is loaded after that is switched on.
module.enableCompileCache?.();
const { start } = await import("./program.ts");
process.exitCode = await start(process, () => process.exit());
