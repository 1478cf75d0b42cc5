/** The published temperature bands, one row a species, each with the source it is from. */
import { describe, expect, test } from "vitest";
import { PUBLISHED_BANDS, publishedBand } from "../../server/model/species-bands.ts";

/** Of 50 and 55 F: (F - 32) / 1.8, to a tenth. */
const PRESS_C: readonly [number, number] = [10, 12.8];

/** Species, lowest and highest in C, who says so, and whether that was read or is recalled. */
const ROWS: readonly (readonly [string, readonly [number, number], RegExp, "seen" | "memory"])[] = [
  ["chinook", PRESS_C, /50 to 55 F, regional press 2014, a weak source/u, "seen"],
  ["coho", PRESS_C, /50 to 55 F, regional press 2014, a weak source/u, "seen"],
  ["pink-salmon", [12, 14], /Brett 1952, J\. Fish\. Res\. Board Can\. 9:265-323/u, "seen"],
  ["steelhead", [11, 16], /Garside & Tait 1958, Can\. J\. Zool\. 36:563/u, "seen"],
  ["lake-trout", [6, 13], /Snucins & Gunn 1995/u, "seen"],
  ["brown-trout", [17, 18], /summer's warmest only, Lake Michigan study 1972-77/u, "seen"],
  ["yellow-perch", [19.7, 21.2], /Ferguson 1958, J\. Fish\. Res\. Board Can\. 15:607-624/u, "seen"],
  ["atlantic-salmon", [13, 16], /Jobling 1981; Wismer & Christie 1987/u, "memory"],
  ["walleye", [18, 22], /Christie & Regier 1988, Can\. J\. Fish\. Aquat\. Sci\. 45:301-314/u, "memory"],
];

describe("published bands", () => {
  test.each(ROWS)("%s keeps to %j C", (species, [low, high], source, standing) => {
    const band = publishedBand(species);
    expect(band?.tempC).toEqual({ low, high });
    expect(band?.source).toMatch(source);
    expect(band?.standing).toBe(standing);
  });

  test("no species has a band that isn't held above", () => {
    expect(PUBLISHED_BANDS.map(({ species }) => species)).toEqual(ROWS.map(([species]) => species));
    expect(publishedBand("burbot")).toBeUndefined();
  });
});
