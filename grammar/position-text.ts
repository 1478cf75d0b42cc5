/** Positions as they are typed: `44 46.1N 086 21.7W`, `44.768N 86.361W`, `44.7683 -86.3617`, `44°46.1'N`. */

/** A position read from pieces: canonical texts, and how many pieces it took. */
interface PositionText {
  readonly latitude: string;
  readonly longitude: string;
  readonly taken: number;
}

const SIGNED_DECIMAL = /^[+-]?\d{1,3}\.\d+$/u;
const HALF = /^(\d{1,3}(?:\.\d+)?)(?:\s+(\d{1,2}(?:\.\d+)?))?(?:\s+(\d{1,2}(?:\.\d+)?))?\s*([NSEW])$/iu;

/** Reads a position from the start of the pieces; undefined when there is none. */
export function readPositionText(pieces: readonly string[]): PositionText | undefined {
  const [first = "", second = ""] = pieces;
  if (SIGNED_DECIMAL.test(first) && SIGNED_DECIMAL.test(second)) {
    const inRange = Math.abs(Number(first)) <= 90 && Math.abs(Number(second)) <= 180;
    return inRange ? { latitude: first, longitude: second, taken: 2 } : undefined;
  }
  const north = readHalf(pieces, "NS");
  if (north === undefined) return undefined;
  const east = readHalf(pieces.slice(north.taken), "EW");
  if (east === undefined) return undefined;
  return { latitude: north.text, longitude: east.text, taken: north.taken + east.taken };
}

function readHalf(pieces: readonly string[], letters: string): { text: string; taken: number } | undefined {
  let joined = "";
  for (let taken = 1; taken <= 4 && taken <= pieces.length; taken++) {
    joined += ` ${pieces[taken - 1] ?? ""}`;
    const last = joined.at(-1)?.toUpperCase() ?? "";
    if (!"NSEW".includes(last)) continue;
    const match = HALF.exec(
      joined
        .replaceAll(/[°'′"″]/gu, " ")
        .replaceAll(/\s+/gu, " ")
        .trim(),
    );
    if (match === null || !letters.includes(last)) return undefined;
    const [, degrees = "", minutes, seconds] = match;
    const limit = letters === "NS" ? 90 : 180;
    if (degreesOf(degrees, minutes, seconds) > limit) return undefined;
    if (Number(minutes ?? 0) >= 60 || Number(seconds ?? 0) >= 60) return undefined;
    const text = [degrees, minutes, seconds].filter((part) => part !== undefined).join(" ");
    return { text: `${text}${last}`, taken };
  }
  return undefined;
}

function degreesOf(degrees: string, minutes = "0", seconds = "0"): number {
  return Number(degrees) + Number(minutes) / 60 + Number(seconds) / 3600;
}

/** Degrees of a canonical latitude or longitude text; south and west are negative. */
export function positionDegrees(text: string): number {
  const hemisphere = text.at(-1)?.toUpperCase() ?? "";
  if (!"NSEW".includes(hemisphere)) return Number(text);
  const [degrees = "0", minutes, seconds] = text.slice(0, -1).split(" ");
  const size = degreesOf(degrees, minutes, seconds);
  return hemisphere === "S" || hemisphere === "W" ? -size : size;
}
