/** The entry. Nothing else ends the process or sets its exit code. */
import { start } from "./program.ts";

process.exitCode = await start(process, () => process.exit());
