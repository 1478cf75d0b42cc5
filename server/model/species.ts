/**
 * Species the language knows by name, with the band of lengths and weights outside which an entry is doubted.
 * Bands reach well beyond the biggest fish on record for the Great Lakes region; they are recalled from memory, rounded
 * outward, and only serve to catch slips. Any other name is kept as it is, with a warning.
 */

/** One species. */
export interface Species {
  readonly name: string;
  /** Words anglers use for it anywhere on the lakes (common practice). */
  readonly aliases: readonly string[];
  /** Heaviest and longest entry believed, kg and m (from memory, rounded outward). */
  readonly maxMassKg: number;
  readonly maxLengthM: number;
}

const LB = 0.45359237;
const IN = 0.0254;
const species = (name: string, aliases: string, maxLb: number, maxIn: number): Species => ({
  name,
  aliases: aliases === "" ? [] : aliases.split(" "),
  maxMassKg: maxLb * LB,
  maxLengthM: maxIn * IN,
});

/** The species table. */
export const SPECIES: readonly Species[] = [
  species("chinook", "king", 50, 52),
  species("coho", "silver", 35, 42),
  species("pink-salmon", "pink humpy", 14, 32),
  species("atlantic-salmon", "atlantic", 35, 48),
  species("steelhead", "rainbow rainbow-trout", 40, 46),
  species("brown-trout", "brown", 48, 46),
  species("lake-trout", "laker", 75, 58),
  species("brook-trout", "brookie", 16, 34),
  species("splake", "", 26, 40),
  species("walleye", "", 22, 38),
  species("whitefish", "lake-whitefish", 18, 36),
  species("cisco", "lake-herring", 8, 28),
  species("burbot", "lawyer", 26, 44),
  species("yellow-perch", "perch", 4.5, 20),
  species("smallmouth-bass", "smallmouth", 12, 28),
  species("northern-pike", "pike", 48, 58),
  species("muskellunge", "musky", 75, 64),
  species("freshwater-drum", "drum sheepshead", 40, 42),
];

/** Written instead of a species when the fish was not seen. */
export const UNSEEN_FISH = "fish";

const bySpelling = new Map<string, Species>();
for (const row of SPECIES) for (const spelling of [row.name, ...row.aliases]) bySpelling.set(spelling, row);

/** Finds a species by name or common nickname, in any case. */
export function findSpecies(word: string): Species | undefined {
  return bySpelling.get(word.normalize("NFC").toLowerCase());
}
