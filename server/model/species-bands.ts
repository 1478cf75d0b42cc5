/**
 * Temperatures that species keep to, from published work. A captain's own `band` line wins over them. `seen` rows were
 * read in the source or its abstract; `memory` rows are recalled and wait for someone who has the source.
 */
import type { SiRange } from "./quantities.ts";

/** One species' published band. */
export interface PublishedBand {
  readonly species: string;
  readonly tempC: SiRange;
  readonly source: string;
  readonly standing: "seen" | "memory";
}

const row = (
  species: string,
  low: number,
  high: number,
  source: string,
  standing: PublishedBand["standing"] = "seen",
): PublishedBand => ({ species, tempC: { low, high }, source, standing });

const PRESS_RULE = "rule of thumb, 50 to 55 F, regional press 2014, a weak source";

/** The table, one row a species. */
export const PUBLISHED_BANDS: readonly PublishedBand[] = [
  row("chinook", 10, 12.8, PRESS_RULE),
  row("coho", 10, 12.8, PRESS_RULE),
  row("pink-salmon", 12, 14, "young fish, Brett 1952, J. Fish. Res. Board Can. 9:265-323"),
  row("steelhead", 11, 16, "Garside & Tait 1958, Can. J. Zool. 36:563"),
  row("lake-trout", 6, 13, "Snucins & Gunn 1995, thermal regulation of lake trout"),
  row("brown-trout", 17, 18, "chosen at summer's warmest only, Lake Michigan study 1972-77"),
  row("yellow-perch", 19.7, 21.2, "in the field, Ferguson 1958, J. Fish. Res. Board Can. 15:607-624"),
  row("atlantic-salmon", 13, 16, "Jobling 1981; Wismer & Christie 1987", "memory"),
  row("walleye", 18, 22, "Christie & Regier 1988, Can. J. Fish. Aquat. Sci. 45:301-314", "memory"),
];

/** The published band of a species by its canonical name. */
export function publishedBand(species: string): PublishedBand | undefined {
  return PUBLISHED_BANDS.find((band) => band.species === species);
}
