/** Every verb on terminals of several widths: no line is wider than the screen, but for lines that are for pasting. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { textWidth } from "../../client/cli/render/text-width.ts";
import { deepwake } from "./fake-world.ts";

const EXAMPLE = join(import.meta.dirname, "../../examples/bright-penny");
const files = Object.fromEntries(
  readdirSync(EXAMPLE, { recursive: true, encoding: "utf8" })
    .filter((name) => /\.(trip|gear)$/u.test(name))
    .map((name) => [name.replaceAll("\\", "/"), readFileSync(join(EXAMPLE, name), "utf8")]),
);

const RUNS = [
  "check",
  "check --explain touching-bottom",
  "depth trips wrong",
  "depth --rig C1 --out 120ft --speed 2.4mph --setback 20ft",
  "summary",
  "letout --speed 2.5mph",
  "calibrate trips",
  "format --check",
  "calibrate --help",
  "--help",
];

describe.each([40, 60, 80])("%s columns", (columns) => {
  test.each(RUNS)("%s", async (args) => {
    const { out } = await deepwake(args, { files, columns, env: { NO_COLOR: "1" } });
    const lines = out.split("\n").filter((line) => !/^\d{4}-\d\d-\d\d calibrate /u.test(line));
    expect(lines.length).toBeGreaterThan(2);
    expect(lines.filter((line) => textWidth(line) > columns)).toEqual([]);
    expect(lines.filter((line) => line !== line.trimEnd())).toEqual([]);
    // A number at the end of a line has lost its unit to the next one.
    expect(
      lines.filter((line, at) => /\s\d+$/u.test(line) && /^\s*(ft|mph|F|h|min)\b/u.test(lines[at + 1] ?? "")),
    ).toEqual([]);
  });
});

test("colors take no room", async () => {
  const plain = await deepwake("depth trips", { files, columns: 60, env: { NO_COLOR: "1" } });
  const colored = await deepwake("depth trips", { files, columns: 60, env: { FORCE_COLOR: "1" } });
  // biome-ignore lint/suspicious/noControlCharactersInRegex: the color codes start with one.
  expect(colored.out.replaceAll(/\u001b\[[0-9;]*m/gu, "")).toBe(plain.out);
  expect(colored.out).not.toBe(plain.out);
});

test.each(RUNS.filter((args) => !/help|explain/u.test(args)))("%s --json asks for no width", async (args) => {
  const narrow = await deepwake(`${args} --json`, { files, columns: 40 });
  const piped = await deepwake(`${args} --json`, { files });
  expect(narrow.out).toBe(piped.out);
  expect(() => JSON.parse(narrow.out)).not.toThrow();
});
