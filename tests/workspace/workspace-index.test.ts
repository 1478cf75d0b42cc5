/** The index follows its files; what it costs grows with them and with nothing else. */
import { describe, expect, test } from "vitest";
import { parse } from "../../grammar/parse.ts";
import { readSavedIndex, saveIndex } from "../../server/workspace/saved-index.ts";
import type { StoredParts } from "../../server/workspace/workspace-files.ts";
import { MOST_FILES } from "../../server/workspace/workspace-index.ts";
import { makeTrip } from "../bench/make-trip.ts";
import { tripText } from "../bench/write-journal.ts";
import { at, bookOf, dayOf, NO_PAUSE, Season } from "./season.ts";

const TEXTS = {
  "penny.gear": bookOf("Bright Penny"),
  "a.trip": dayOf("2031-06-21", "Bright Penny"),
  "old/b.trip": dayOf("2030-06-22", "Bright Penny"),
  "old/c.trip": dayOf("2030-06-23", "Bright Penny"),
  "older.trip": dayOf("2029-06-23", "Bright Penny"),
};

async function scanned(): Promise<Season> {
  const season = new Season(TEXTS);
  await season.index.scan(NO_PAUSE);
  return season;
}

const names = (season: Season): string[] =>
  [...season.index.records()].map(({ uri }) => uri.slice(at("").length)).sort();

describe("follows", () => {
  test("files that come, change and go", async () => {
    const season = await scanned();
    season.files.put(at("new.trip"), dayOf("2031-06-25", "Bright Penny"));
    season.files.put(at("a.trip"), dayOf("2031-06-21", "Grey Gull"));
    season.files.remove(at("older.trip"));
    expect(await season.index.scan(NO_PAUSE)).toEqual({
      changed: [at("a.trip"), at("new.trip")],
      removed: [at("older.trip")],
      isCut: false,
    });
    expect(names(season)).toEqual(["a.trip", "new.trip", "old/b.trip", "old/c.trip", "penny.gear"]);
    expect(season.index.record(at("a.trip"))?.boats).toEqual(["Grey Gull"]);
  });

  test("one file, told of by whoever watches it", async () => {
    const season = await scanned();
    expect(await season.index.update(at("a.trip"))).toBe(false);
    season.files.put(at("a.trip"), dayOf("2031-06-21", "Grey Gull"));
    expect(await season.index.update(at("a.trip"))).toBe(true);
    expect(season.index.record(at("a.trip"))?.boats).toEqual(["Grey Gull"]);
    season.files.remove(at("a.trip"));
    expect(await season.index.update(at("a.trip"))).toBe(true);
    expect(season.index.record(at("a.trip"))).toBeUndefined();
  });

  test("a folder that is gone, and not its namesakes", async () => {
    const season = await scanned();
    expect(season.index.remove(at("old")).sort()).toEqual([at("old/b.trip"), at("old/c.trip")]);
    expect(names(season)).toEqual(["a.trip", "older.trip", "penny.gear"]);
  });

  test("a document as it stands in the editor, saved or not", async () => {
    const season = await scanned();
    season.open.set(at("a.trip"), parse(dayOf("2031-06-21", "Grey Gull")));
    season.open.set("untitled:x", parse(dayOf("2031-06-21", "Cove Runner")));
    expect(season.index.record(at("a.trip"))?.boats).toEqual(["Grey Gull"]);
    expect([...season.index.records()].filter(({ uri }) => uri === at("a.trip"))).toHaveLength(1);
    expect([...season.index.records()].map(({ boats }) => boats[0])).toContain("Cove Runner");
    season.open.clear();
    expect(season.index.record(at("a.trip"))?.boats).toEqual(["Bright Penny"]);
  });
});

describe("work", () => {
  const seasonOf = (count: number): Season =>
    new Season(
      Object.fromEntries(Array.from({ length: count }, (_, n) => [`${n}.trip`, tripText(makeTrip(n))])),
    );

  test("a second look reads only what changed", async () => {
    const season = await scanned();
    const { files } = season.index.work;
    expect(files).toBe(Object.keys(TEXTS).length);
    await season.index.scan(NO_PAUSE);
    expect(season.index.work.files).toBe(files);
    season.files.put(at("a.trip"), TEXTS["a.trip"]);
    await season.index.scan(NO_PAUSE);
    expect(season.index.work.files).toBe(files + 1);
  });

  test("grows no faster than the files do", async () => {
    const [few, many] = [seasonOf(10), seasonOf(40)];
    await few.index.scan(NO_PAUSE);
    await many.index.scan(NO_PAUSE);
    expect(many.index.work.files).toBe(4 * few.index.work.files);
    expect(many.index.work.lines).toBeLessThanOrEqual(4 * few.index.work.lines);
  });

  test("a place costs a few bytes", async () => {
    const season = seasonOf(10);
    await season.index.scan(NO_PAUSE);
    const records = [...season.index.kept().values()].map(({ record }) => record);
    const places = records.reduce((count, record) => count + record.places.length, 0);
    const bytes = records.reduce((count, record) => count + record.packed.length, 0);
    expect(places).toBeGreaterThan(1000);
    expect(bytes).toBeLessThan(6 * places);
  });
});

test("more files than anybody has are not all looked at", async () => {
  const season = new Season();
  for (let n = 0; n <= MOST_FILES; n++) season.files.put(at(`${n}.trip`), "");
  expect((await season.index.scan(NO_PAUSE)).isCut).toBe(true);
  expect(season.index.kept().size).toBe(MOST_FILES);
});

describe("kept between runs", () => {
  const save = (season: Season): StoredParts =>
    saveIndex("build 1", {
      names: season.index.names,
      files: season.index.kept().values(),
      checked: season.checks.checked(),
    });

  test("is what it was, and reads nothing again", async () => {
    const before = new Season({ ...TEXTS, "bad.trip": dayOf("2031-06-29", "Bright Penny", "P7") });
    await before.settle();
    const saved = readSavedIndex("build 1", save(before));
    const after = new Season();
    for (const { uri } of before.index.records()) after.files.put(uri, before.files.read(uri) ?? "");
    if (saved === undefined) throw new Error("it could not be read");
    after.index.restore(saved.names, saved.files);
    after.checks.restore(saved.checked);
    expect(await after.settle()).toEqual([]);
    expect(after.index.work.files).toBe(0);
    expect(after.checks.runs).toBe(0);
    for (const record of before.index.records()) {
      const again = after.index.record(record.uri);
      expect([again?.hash, again?.trips, again?.places]).toEqual([record.hash, record.trips, record.places]);
    }
    expect(after.checks.checked()).toEqual(before.checks.checked());
    expect(after.found("bad.trip")).toContain("unknown-rig");
  });

  test("by another build is not used", async () => {
    const season = await scanned();
    expect(readSavedIndex("build 2", save(season))).toBeUndefined();
  });

  test.each<[string, (parts: StoredParts) => StoredParts]>([
    ["cut short", ({ text, bytes }) => ({ text: text.slice(0, -20), bytes })],
    ["with bytes lost", ({ text, bytes }) => ({ text, bytes: bytes.slice(1) })],
    [
      "with a byte turned",
      ({ text, bytes }) => ({ text, bytes: bytes.map((byte, n) => (n === 9 ? byte ^ 1 : byte)) }),
    ],
    ["with a word turned", ({ text, bytes }) => ({ text: text.replace("Bright", "Brjght"), bytes })],
    ["of another format", ({ text, bytes }) => ({ text: text.replace("index/1", "index/9"), bytes })],
    ["empty", () => ({ text: "", bytes: new Uint8Array() })],
  ])("%s is not used", async (_, damage) => {
    const parts = save(await scanned());
    expect(readSavedIndex("build 1", parts)).toBeDefined();
    expect(readSavedIndex("build 1", damage(parts))).toBeUndefined();
  });
});
