/**
 * The example journal through the command line, kept as files in golden/ to be read as a diff. How deep a line runs is
 * the solver's business and left out here, digits and all.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { depthOutput, summaryOutput } from "../../client/cli/output-schemas.ts";
import { type Circumstances, deepwake } from "./fake-world.ts";

const EXAMPLE = join(import.meta.dirname, "../../examples/bright-penny");
const names = readdirSync(EXAMPLE, { recursive: true, encoding: "utf8" }).filter((name) =>
  /\.(trip|gear)$/u.test(name),
);
const files = Object.fromEntries(
  names.map((name) => [name.replaceAll("\\", "/"), readFileSync(join(EXAMPLE, name), "utf8")]),
);
const trips = Object.keys(files).filter((name) => name.startsWith("trips/"));

function withoutDepths(out: string): string {
  return out
    .replaceAll(/ *\d+ ft \(\d+ to \d+\)/gu, " N ft")
    .replaceAll(/(?<= N ft)( +|, )\d+ ft/gu, "$1N ft")
    .replaceAll(/(?<=Caught at about .*)\d+ ft(?= \()/gu, "N ft");
}

async function checkGolden(name: string, args: string, given: Circumstances = {}): Promise<void> {
  const { out, err } = await deepwake(args, { files, ...given });
  expect(err).toBe("");
  await expect(withoutDepths(out)).toMatchFileSnapshot(`golden/${name}.txt`);
}

test("check: the sound files have nothing, the wrong ones what they are made for", async () => {
  await checkGolden("check", "check");
});
test("check on a terminal of 60 columns", async () => {
  await checkGolden("check-60", "check wrong", { columns: 60, env: { NO_COLOR: "1" } });
});
test("summary", async () => {
  await checkGolden("summary", "summary trips");
});
test("depth", async () => {
  await checkGolden("depth", "depth trips");
});
test("depth on a terminal of 40 columns", async () => {
  await checkGolden("depth-40", "depth trips/2031-06-21.trip", { columns: 40, env: { NO_COLOR: "1" } });
});

test("the sound files are in canonical form", async () => {
  const { code, out } = await deepwake(["format", "--check", "bright-penny.gear", ...trips], { files });
  expect([code, out]).toEqual([0, "none of 6 files would change.\n"]);
});

test("depth --json has each set, move and again line once, and each change of a lure or length", async () => {
  const { out } = await deepwake("depth --json trips", { files });
  for (const { path, lines } of depthOutput.parse(JSON.parse(out)).files) {
    const written = (files[path] ?? "")
      .split("\n")
      .flatMap((line, index) => (/^\S+ (?:set|move|again|change) /u.test(line) ? [index] : []));
    expect(
      lines.map((line) => line.line),
      path,
    ).toEqual(written);
  }
});

test("summary --json", async () => {
  const { out } = await deepwake("summary --json trips", { files });
  const days = summaryOutput
    .parse(JSON.parse(out))
    .files.flatMap((file) => file.trips.map((trip) => trip.date));
  expect(days).toEqual(["2031-04-26", "2031-06-21", "2031-07-19", "2031-08-16", "2031-11-01", "2031-11-02"]);
});
