import { areas, isAreaName } from "./areas.ts";

/** Measures the one area that is named; run.ts starts this as a process of its own for each. */
const [name = "", speed] = process.argv.slice(2);
if (!isAreaName(name)) throw new Error(`There is no area named ${name}.`);
const area = await areas[name]({ quick: speed === "quick" });
process.send?.(area, () => process.exit(0));
