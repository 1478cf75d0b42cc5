/** `deepwake letout`: the table in every form it has, and what is refused. */
import { describe, expect, test } from "vitest";
import { letOutOutput } from "../../client/cli/letout-schemas.ts";
import { type Circumstances, deepwake } from "./fake-world.ts";

const BOOK = `boat "Bright Penny"
  units ft mph F lb in

cable rigger-wire steel diameter 0.9 mm
cable lead-27 leadcore diameter 0.85 mm
cable copper-45 copper diameter 0.95 mm
cable mono-12 mono diameter 0.36 mm
cable backing-30 braid diameter 0.3 mm
ball round-12 sphere 12 lb
lure glow-spoon spoon 4 in
rig C1 downrigger center cable rigger-wire ball round-12
rig P1 downrigger port cable rigger-wire ball round-12
rig S1 downrigger starboard cable rigger-wire ball round-12
rig P1U stacked P1
rig PB leadcore port cable lead-27 backing backing-30 leader 30 ft holds 10 colors
rig CU copper center cable copper-45 leader 30 ft holds 300 ft
rig FL flat center cable mono-12 leader 6 ft inline-weight 2 oz
rig SD diver starboard cable mono-12
rig J1 jig cable backing-30
2031-06-01 calibrate C1 drag 1.31 counter-scale 1.02 counter-offset -1.5 ft
`;
const given: Circumstances = { files: { "penny.gear": BOOK } };
const LURE = ["--lure", "glow-spoon", "--setback", "20ft"];
const ask = (...more: string[]) => ["letout", "--speed", "2.5mph", ...more];

async function answer(args: readonly string[]) {
  const { out } = await deepwake([...args, "--json"], given);
  return letOutOutput.parse(JSON.parse(out));
}

/** Lengths and depths are the solver's business. */
const bare = (out: string): string =>
  out
    .replaceAll(/½|\d+(?= (?:ft (?:with|out|down)|colors?|to))|(?<=to |and |\+ )\d+/gu, "N")
    .replaceAll(/\d*N+/gu, "N");

test("length that runs on into backing is told, leadcore's in its cells", async () => {
  const book = BOOK.replace("copper-45 leader", "copper-45 backing backing-30 leader");
  const table = async (depths: string): Promise<string> =>
    (await deepwake(ask("--rigs", "CU,PB", "--depths", depths), { files: { "penny.gear": book } })).out;
  expect(await table("80ft")).toContain("\nCU holds 300 ft; beyond that is its backing.\n");
  expect(await table("40ft")).not.toContain("backing.");
});

test("on a terminal: depths down, own rigs across, like ones in one column", async () => {
  const { out, code, err } = await deepwake(ask("--depths", "30,60,200ft", "--date", "2031-06-21"), {
    ...given,
    columns: 90,
    env: { NO_COLOR: "1" },
  });
  expect([code, err]).toEqual([0, ""]);
  const lines = out.split("\n");
  expect(lines.slice(0, 4)).toEqual([
    "Cable to set",
    "Bright Penny, gear of 2031-06-21.",
    "2.5 mph at every depth.",
    "Feet on the counter, leadcore in colors: so much brings the lure to the depth, or the ball",
  ]);
  const head = lines.findIndex((line) => line.startsWith(" depth"));
  expect(lines[head]?.trim().split(/\s{2,}/u)).toEqual([
    "depth",
    "C1 ball",
    "P1, S1 ball",
    "PB",
    "CU",
    "FL",
    "SD",
  ]);
  expect(lines[head + 1]).toMatch(/^ 30 ft +\d\d +\d\d +\d½? colors +\d+ +\d+ +—⁴$/u);
  expect(lines[head + 3]).toMatch(/^200 ft +\d{3} +\d{3} +—¹ +—² +—³ +—⁴$/u);
  expect(out).toMatch(/^⁴ SD's diver was never measured/mu);
  expect(out).toMatch(/^² CU: not reachable at this speed; the deepest is \d\d ft with 300 ft out\.$/mu);
  expect(out).toMatch(/^Calibrated: C1 \(2031-06-01\)\.$/mu);
  expect(out).toMatch(/^C1 with \d{3} ft out: ball about 200 ft down \(\d+ to \d+\)\.$/mu);
  expect(out).toContain("not for navigation");
});

test("on a narrow terminal the columns stand in blocks", async () => {
  const { out } = await deepwake(ask("--depths", "30,60ft"), {
    ...given,
    columns: 40,
    env: { NO_COLOR: "1" },
  });
  const lines = out.split("\n");
  expect(lines.filter((line) => /^ *depth /u.test(line)).length).toBeGreaterThan(1);
  expect(lines.filter((line) => /^ *30 ft /u.test(line)).length).toBeGreaterThan(1);
  expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(40);
});

test("as Markdown", async () => {
  const { out } = await deepwake(
    ask("--rigs", "C1,PB", "--depths", "30,200ft", "--format", "markdown", ...LURE),
    given,
  );
  expect(bare(out.replaceAll(/\| \d+ \|/gu, "| N |"))).toMatchInlineSnapshot(`
    "# Cable to set

    Bright Penny, gear of 2031-06-01.

    2.5 mph at every depth.

    glow-spoon, 20 ft behind the release.

    Feet on the counter, leadcore in colors: so much brings the lure to the depth.

    Calibrated: C1 (2031-06-01).

    Never checked on this boat, so less sure: PB.

    | depth | C1 | PB |
    | ---: | ---: | ---: |
    | 30 ft | N | N colors |
    | 200 ft | N | —¹ |

    1. PB: not reachable at this speed; the deepest is N ft with N colors and N ft out.

    How sure:

    - C1 with N ft out: lure about N ft down (N to N).
    - PB with N colors out: lure about N ft down (N to N).

    *Lengths are estimates for a straight tow: not for navigation, not for clearing the bottom.*
    "
  `);
});

test("as CSV: the table first, what is said of it below", async () => {
  const { out } = await deepwake(
    ask("--rigs", "C1,P1,CU", "--from", "30ft", "--to", "60ft", "--format", "csv"),
    given,
  );
  const [head, ...rows] = out.split("\n");
  expect(head).toBe("depth,C1 ball,P1 ball,CU");
  expect(rows.slice(0, 4).map((row) => row.split(",")[0])).toEqual(["30 ft", "40 ft", "50 ft", "60 ft"]);
  expect(rows[0]).toMatch(/^30 ft,\d+,\d+,\d+$/u);
  expect(out).toContain("not for navigation");
});

test("as one page to print: nothing to load, no script, names as text", async () => {
  const odd = `rig "<b>&" downrigger cable rigger-wire ball round-12\n`;
  const { out } = await deepwake(ask("--format", "html"), { files: { "penny.gear": BOOK + odd } });
  expect(out).toMatch(/^<!doctype html>\n/u);
  expect(out).not.toMatch(/<script|<link|<img|src=|url\(|@import|https?:/iu);
  expect(out).toContain("@media print");
  expect(out).toContain("&lt;b&gt;&amp;");
  expect(out).not.toContain("<b>");
  expect(out).toContain("not for navigation");
  expect(out.match(/<th scope="row">/gu)).toHaveLength(11);
});

describe("for programs", () => {
  test("every rig by itself, SI, and what it is counted in", async () => {
    const { asked, rigs, files } = await answer(ask("--rigs", "C1,PB,FL", "--depths", "30,200ft", ...LURE));
    expect(asked).toMatchObject({ boat: "Bright Penny", date: "2031-06-01", lure: "glow-spoon" });
    expect(asked.speedMS).toBeCloseTo(1.1176, 6);
    expect(rigs.map(({ rig, of }) => [rig, of])).toEqual([
      ["C1", "lure"],
      ["PB", "lure"],
      ["FL", "lure"],
    ]);
    expect(rigs[0]?.calibration).toEqual({ of: "C1", date: "2031-06-01" });
    const [near, far] = rigs[2]?.depths ?? [];
    expect(near).toMatchObject({ unit: "ft", why: null, deepest: null });
    expect(far).toMatchObject({ out: null, outM: null, band: null, why: "not reachable at this speed" });
    expect(far?.deepest?.depthM).toBeGreaterThan(5);
    expect(files).toEqual([{ path: "penny.gear" }]);
  });

  test("the forward verb agrees", async () => {
    const [rig] = (await answer(ask("--rigs", "C1", "--depths", "60ft", ...LURE))).rigs;
    const [cell] = rig?.depths ?? [];
    const back = ["depth", "--rig", "C1", "--out", `${cell?.out}ft`, "--speed", "2.5mph", ...LURE, "--json"];
    const { files } = JSON.parse((await deepwake(back, given)).out);
    expect(files[0].lines[0].lure.depthM).toBeCloseTo(cell?.band?.depthM ?? 0, 1);
    expect(Math.abs((cell?.band?.depthM ?? 0) - 60 * 0.3048)).toBeLessThan(0.3);
  });

  test("a slower stream on top lets the ball down deeper", async () => {
    const out = async (...more: string[]) =>
      (await answer(ask("--rigs", "C1", "--depths", "100ft", ...more))).rigs[0]?.depths[0]?.outM ?? 0;
    expect(await out("--surface-speed", "1.8mph")).toBeLessThan(await out());
    expect(await out("--surface-speed", "1.8mph", "--speed-at", "40ft")).toBeGreaterThan(
      await out("--surface-speed", "1.8mph"),
    );
  });

  test("--format json is --json; a stacked rod counts on its ball's counter", async () => {
    const args = ask("--rigs", "P1,P1U", "--depths", "60ft", "--above", "20ft", ...LURE);
    const { out } = await deepwake([...args, "--format", "json"], given);
    expect(out).toBe((await deepwake([...args, "--json"], given)).out);
    const [p1, p1u] = letOutOutput.parse(JSON.parse(out)).rigs;
    const upM = (p1u?.depths[0]?.outM ?? 0) - (p1?.depths[0]?.outM ?? 0);
    expect(upM / 0.3048).toBeGreaterThan(18);
    expect(upM / 0.3048).toBeLessThan(25);
  });
});

describe("refuses", () => {
  test.each([
    [["letout"], "at what speed? Say --speed 2.5mph."],
    [
      ["letout", "--speed", "40mph"],
      "--speed: 40 mph is no speed to troll at; it goes from 0 to 6 mph (threshold fastest-troll in the gear book).",
    ],
    [
      ask("--surface-speed", "12kn"),
      "--surface-speed: 13.8 mph is no speed to troll at; it goes from 0 to 6 mph (threshold fastest-troll in the gear book).",
    ],
    [ask("--temp", "200F"), "--temp: no water has 200 F."],
    [ask("--speed-at", "80F"), '--speed-at: "80F" is no length; write one like 80ft.'],
    [ask("--depths", "30,deep"), '--depths: "deep" is no length; write them like 30,40,50ft.'],
    [
      ask("--depths", "30ft", "--to", "50ft"),
      "--depths names the depths; --from, --to and --step don't go with it.",
    ],
    [ask("--depths", "0ft"), "the depths have to be below the surface and within 1000 m."],
    [ask("--from", "50ft", "--to", "20ft"), "--to has to be deeper than --from."],
    [ask("--step", "0ft"), "--step has to be more than nothing."],
    [ask("--step", "0.01ft"), "that makes 10001 rows; 200 are the most."],
    [ask("--rigs", "C1,C9"), '--rigs: there is no rig "C9" in the gear of Bright Penny; did you mean C1?'],
    [ask("--lure", "glow"), '--lure: there is no lure "glow" in the gear of Bright Penny.'],
    [ask("--format", "pdf"), '--format: "pdf" is none of table, markdown, csv, html, json.'],
    [ask("penny.gear"), "letout takes no file; the gear book is named by --book penny.gear"],
  ])("%j", async (args, complaint) => {
    const { code, out, err } = await deepwake(args, given);
    expect([code, out, err]).toEqual([2, "", `deepwake: ${complaint}\n`]);
  });

  test("a table without any answer is printed with its reasons, and ends with 2", async () => {
    const { code, out, err } = await deepwake(ask("--rigs", "SD,J1"), given);
    expect([code, err]).toEqual([2, "deepwake: none of these rigs comes to any of these depths.\n"]);
    expect(out).toMatch(/^² J1 is cast or jigged, and hangs where it is let down\.$/mu);
  });
});

test("its help has examples", async () => {
  const { out, code } = await deepwake("letout --help", given);
  expect(code).toBe(0);
  expect(out).toContain("deepwake letout --speed 2.5mph --rigs C1,P1,PB");
});
