/** Bundles read late: when they are fetched, and what may be in them. */
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "esbuild";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { fetchLate, lateEntry } from "../esbuild.late.ts";
import { SERVER } from "../esbuild.server.ts";

let root = "";

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), "deepwake late-"));
});

afterAll(() => rmSync(root, { recursive: true, force: true }));

const LATE = { outfile: "dist/tides.cjs", modules: ["tides.ts"] };

/** Bundles a program with a late module and runs it; gives what it prints. */
async function run(tides: string, main: string, isLateThere = true): Promise<string> {
  mkdirSync(join(root, "dist"), { recursive: true });
  writeFileSync(join(root, "tides.ts"), tides);
  writeFileSync(join(root, "main.ts"), main);
  const shared = {
    bundle: true,
    platform: "node",
    format: "cjs",
    logLevel: "silent",
    absWorkingDir: root,
  } as const;
  await build({
    ...shared,
    entryPoints: ["main.ts"],
    outfile: "dist/main.cjs",
    plugins: [fetchLate([LATE], root)],
  });
  rmSync(join(root, LATE.outfile), { force: true });
  if (isLateThere) await build({ ...shared, ...lateEntry(LATE, root), outfile: LATE.outfile });
  const { stdout, stderr } = spawnSync(process.execPath, [join(root, "dist/main.cjs")], { encoding: "utf8" });
  return stdout + stderr;
}

const TIDES = `console.log("read");
export interface Tide { readonly high: number }
export function high(a: number, b: number): Tide { return { high: a + b }; }
`;

test("the packed extension holds every bundle that its server may ask for", () => {
  const held = readFileSync(join(import.meta.dirname, "../.vscodeignore"), "utf8").split("\n");
  const asked = SERVER.flatMap(({ outfile, late = [] }) => [
    outfile,
    ...late.map((bundle) => bundle.outfile),
  ]);
  expect(asked.length).toBeGreaterThan(3);
  expect(asked.filter((file) => !held.includes(`!${file}`))).toEqual([]);
});

describe("a late module", () => {
  test("is read when the first of its functions is called, and once", async () => {
    const main = `import { high } from "./tides.ts";
console.log("start");
console.log(high(1, 2).high, high(3, 4).high);`;
    expect(await run(TIDES, main)).toBe("start\nread\n3 7\n");
  });

  test("is not in the main bundle, and not asked for by a program that calls none", async () => {
    const main = `import { high } from "./tides.ts";
if (process.argv.length > 9) high(1, 2);
console.log("done");`;
    expect(await run(TIDES, main, false)).toBe("done\n");
    expect(readFileSync(join(root, "dist/main.cjs"), "utf8")).not.toContain('console.log("read")');
  });

  test("leaves its texts and numbers where they are used", async () => {
    const source = `${TIDES}export const LOW = -1.5;\nexport const NAMES = "ebb";\n`.replace(
      "-1.5",
      "1_000.5",
    );
    const main = `import { LOW, NAMES } from "./tides.ts";\nconsole.log(LOW, NAMES);`;
    expect(await run(source, main, false)).toBe("1000.5 ebb\n");
  });

  test.each([
    "export const HIGH = [3];",
    "export class Tide {}",
    "export default function high() {}",
    'export * from "./other.ts";',
    "const high = 3;\nexport { high };",
  ])("that says %s is refused", async (source) => {
    await expect(run(source, 'import "./tides.ts";')).rejects.toThrow("can't be loaded late");
  });
});
