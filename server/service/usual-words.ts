/** Words that usually stand in places where the language takes any. */
import { nameOffer, type Offer } from "./offers.ts";

const COMPASS = "N NNE NE ENE E ESE SE SSE S SSW SW WSW W WNW NW NNW".split(" ");
const FINS = "adipose left-ventral right-ventral left-pectoral right-pectoral dorsal none".split(" ");
/** The zones of the Great Lakes' shores. */
const ZONES = "America/Detroit America/Chicago America/New_York America/Toronto".split(" ");

const USUAL: Readonly<Record<string, readonly (readonly [word: string, detail: string])[]>> = {
  sky: ["clear", "partly", "overcast", "fog", "rain", "snow"].map((word) => [word, "the sky"]),
  wind: [...COMPASS.map((word) => [word, "wind from there"] as const), ["calm", "no wind"]],
  barometer: ["rising", "steady", "falling"].map((word) => [word, "the barometer"]),
  clip: FINS.map((word) => [word, "clipped fin"]),
  flasher: [["none", "nothing there"]],
  slider: [["none", "nothing there"]],
  water: [
    ["fresh", "fresh water"],
    ["salt", "salt water"],
  ],
  zone: ZONES.map((word) => [word, "time zone"]),
};

/** Usual words after an attribute, or in the slot of a property; empty where there are none. */
export function usualWords(word: string): Offer[] {
  return (USUAL[word] ?? []).map(([name, detail]) => nameOffer(name, detail));
}
