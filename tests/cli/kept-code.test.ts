/** Compiled code kept between runs: it spares work and changes no answer. */
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeEach, describe, expect, test } from "vitest";

const LOADER = join(import.meta.dirname, "../../server/files/kept-code.ts");
const roots: string[] = [];
let folder = "";
let temporary = "";

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "deepwake kept-"));
  temporary = join(folder, "tmp");
  mkdirSync(temporary);
  roots.push(folder);
});

afterAll(() => {
  for (const root of roots) rmSync(root, { recursive: true, force: true });
});

function bundle(name: string, code: string): void {
  const stamp = createHash("sha256").update(code).digest("hex");
  writeFileSync(join(folder, name), `/*${stamp}*/${code}`);
}

/** Loads main.cjs in a process of its own, prints what its `say` answers, and gives all that was printed. */
function run({ use = "check", env = {} }: { use?: string; env?: Record<string, string> } = {}): string {
  const script = `import { loadKept } from ${JSON.stringify(LOADER)};
console.log(loadKept(${JSON.stringify(folder)}, "main.cjs", ${JSON.stringify(use)}).say());`;
  const args = ["--input-type=module", "--disable-warning=ExperimentalWarning", "-e", script];
  const paths = { TMPDIR: temporary, TEMP: temporary, TMP: temporary };
  const { stdout, stderr } = spawnSync(process.execPath, args, {
    encoding: "utf8",
    env: { ...process.env, ...paths, ...env },
  });
  return (stdout + stderr).trim();
}

/** What is kept, oldest name first. */
function kept(): string[] {
  const [store] = readdirSync(temporary).map((name) => join(temporary, name));
  return store === undefined ? [] : readdirSync(store).map((name) => join(store, name));
}

const SAY = (word: string): string => `function far() { return "${word}" + [1, 2, 3].map((n) => n * 2); }
exports.say = () => far();`;

describe("kept code", () => {
  test("is made by the first run and used by the next, which leaves it", () => {
    bundle("main.cjs", SAY("deep"));
    expect(run()).toBe("deep2,4,6");
    const [file = ""] = kept();
    utimesSync(file, new Date(), new Date(Date.now() - 60_000));
    const { mtimeMs } = statSync(file);
    expect(run()).toBe("deep2,4,6");
    expect(kept()).toEqual([file]);
    expect(statSync(file).mtimeMs).toBe(mtimeMs);
  });

  test("holds the functions that ran", () => {
    const idle = SAY("deep").replace("=> far()", '=> "idle"');
    bundle("main.cjs", idle);
    run();
    const [file = ""] = kept();
    const { size } = statSync(file);
    bundle("main.cjs", SAY("deep"));
    run();
    const [other = ""] = kept().filter((name) => name !== file);
    expect(statSync(other).size).toBeGreaterThan(size);
  });

  test("of another text of the same length is not taken", () => {
    bundle("main.cjs", SAY("deep"));
    run();
    bundle("main.cjs", SAY("high"));
    expect(run()).toBe("high2,4,6");
    expect(kept()).toHaveLength(2);
  });

  test("is made for each use", () => {
    bundle("main.cjs", SAY("deep"));
    run({ use: "check" });
    run({ use: "depth" });
    expect(kept()).toHaveLength(2);
  });

  test("that is broken is made anew", () => {
    bundle("main.cjs", SAY("deep"));
    run();
    const [file = ""] = kept();
    writeFileSync(file, "no code");
    expect(run()).toBe("deep2,4,6");
    expect(statSync(file).size).toBeGreaterThan(100);
  });

  test("is made anew after a day, and gone after a month without use", () => {
    bundle("main.cjs", SAY("deep"));
    run();
    const [file = ""] = kept();
    const daysAgo = (days: number): Date => new Date(Date.now() - days * 24 * 3600 * 1000);
    utimesSync(file, daysAgo(2), daysAgo(2));
    run();
    expect(statSync(file).mtimeMs).toBeGreaterThan(daysAgo(1).getTime());
    utimesSync(file, daysAgo(32), daysAgo(32));
    bundle("main.cjs", SAY("high"));
    run();
    expect(kept()).not.toContain(file);
  });
});

describe("nothing is kept and all works", () => {
  test("where the folder may be written by others", () => {
    bundle("main.cjs", SAY("deep"));
    run();
    const [file = ""] = kept();
    rmSync(file);
    chmodSync(join(file, ".."), 0o777);
    expect(run()).toBe("deep2,4,6");
    expect(kept()).toEqual([]);
  });

  test("where there is no folder to keep it in", () => {
    bundle("main.cjs", SAY("deep"));
    const nowhere = join(folder, "main.cjs");
    expect(run({ env: { TMPDIR: nowhere, TEMP: nowhere, TMP: nowhere } })).toBe("deep2,4,6");
  });

  test("where Node is told to keep none", () => {
    bundle("main.cjs", SAY("deep"));
    expect(run({ env: { NODE_DISABLE_COMPILE_CACHE: "1" } })).toBe("deep2,4,6");
    expect(kept()).toEqual([]);
  });

  test("of a bundle without a stamp", () => {
    writeFileSync(join(folder, "main.cjs"), SAY("deep"));
    expect(run()).toBe("deep2,4,6");
    expect(kept()).toEqual([]);
  });
});

test("bundles that ask for one another get the one that is loaded", () => {
  bundle("main.cjs", 'exports.count = 0; exports.say = () => require("./late.cjs").add() + exports.count;');
  bundle("late.cjs", 'exports.add = () => { require("./main.cjs").count += 1; return "counted "; };');
  expect(run()).toBe("counted 1");
  expect(kept()).toHaveLength(2);
});
