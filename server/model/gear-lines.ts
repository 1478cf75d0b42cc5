/** Finds the gear lines of a boat in the files within reach, and picks those that hold on a day. */
import type { FactLine, PropertyLine } from "../../grammar/journal.ts";
import type { Parse } from "../../grammar/parse.ts";
import { slotName } from "./quantities.ts";

/** A file within reach of a trip: the trip's own file or a gear book. */
export interface BookFile {
  readonly uri: string;
  readonly parse: Parse;
}

/** Kinds of gear, by the verb whose lines define them. */
const KINDS = new Set([
  "cable",
  "ball",
  "lure",
  "rig",
  "nickname",
  "band",
  "limit",
  "upkeep",
  "spot",
  "calibrate",
]);

/** The kind of gear that a verb's lines define; a `line` is a cable by another word. Undefined for other verbs. */
export function kindDefined(verb: string): string | undefined {
  const kind = verb === "line" ? "cable" : verb;
  return KINDS.has(kind) ? kind : undefined;
}

/** One gear line and where it stands. */
export interface GearLine {
  readonly uri: string;
  readonly lineIndex: number;
  readonly line: FactLine;
  /** The boat opened above it in its file; null above any. */
  readonly boat: string | null;
}

/** The gear lines and boat properties of one file. */
export interface FileGear {
  readonly lines: readonly GearLine[];
  readonly properties: readonly { boat: string; lineIndex: number; line: PropertyLine }[];
  readonly boats: readonly { boat: string; lineIndex: number; line: FactLine }[];
}

const gearOfParse = new WeakMap<Parse, FileGear>();
/** What most trips hold. One value for all, so that whatever is kept by it is kept over all their versions. */
const NO_GEAR: FileGear = { lines: [], properties: [], boats: [] };
/** The latest gear of each file, given again while an edit leaves the gear's lines as they were. */
const latestGear = new Map<string, FileGear>();

/** The gear of one file. The very same value comes back for a newer parse whose gear lines are the very same. */
export function fileGear(file: BookFile): FileGear {
  const known = gearOfParse.get(file.parse);
  if (known !== undefined) return known;
  const gear = sameAsLatest(file.uri, readGear(file));
  gearOfParse.set(file.parse, gear);
  return gear;
}

function sameAsLatest(uri: string, gear: FileGear): FileGear {
  const isNone = gear.lines.length + gear.properties.length + gear.boats.length === 0;
  if (isNone) return NO_GEAR;
  const latest = latestGear.get(uri);
  if (latest !== undefined && isSameGear(latest, gear)) return latest;
  latestGear.set(uri, gear);
  return gear;
}

function isSameGear(a: FileGear, b: FileGear): boolean {
  return (["boats", "properties", "lines"] as const).every((part) => {
    const [one, other] = [a[part], b[part]];
    if (one.length !== other.length) return false;
    return one.every(({ line, lineIndex, boat }, index) => {
      const twin = other[index];
      return twin?.line === line && twin.lineIndex === lineIndex && twin.boat === boat;
    });
  });
}

function readGear(file: BookFile): FileGear {
  const lines: GearLine[] = [];
  const properties: FileGear["properties"][number][] = [];
  const boats: FileGear["boats"][number][] = [];
  let boat: string | null = null;
  file.parse.journal.lines.forEach((line, lineIndex) => {
    if (line.kind === "property" && line.block === "boat" && boat !== null) {
      properties.push({ boat, lineIndex, line });
    }
    if (line.kind !== "fact") return;
    if (line.verb === "boat") {
      boat = slotName(line) ?? null;
      if (boat !== null) boats.push({ boat, lineIndex, line });
    } else if (kindDefined(line.verb) !== undefined && line.slots.length > 0) {
      lines.push({ uri: file.uri, lineIndex, line, boat });
    }
  });
  return { lines, properties, boats };
}

/** Gear lines that speak of a boat: those under its opener, and those above any opener. */
export function linesOfBoat(files: readonly BookFile[], boat: string): GearLine[] {
  return files.flatMap((file) =>
    fileGear(file).lines.filter((line) => line.boat === null || line.boat === boat),
  );
}

/** The key under which a gear line defines something: kind and name. */
export function definitionKey(line: FactLine): string {
  return `${kindDefined(line.verb) ?? line.verb} ${slotName(line) ?? ""}`;
}

/**
 * Picks for every name the line that holds on a day: the latest that starts on or before it, undated lines first of
 * all; among equals the nearest file's first line.
 */
export function holdingLines(lines: readonly GearLine[], date: string): Map<string, GearLine> {
  const holding = new Map<string, GearLine>();
  for (const candidate of lines) {
    const from = candidate.line.date ?? "";
    if (from > date) continue;
    const key = definitionKey(candidate.line);
    const best = holding.get(key);
    if (best === undefined || from > (best.line.date ?? "")) holding.set(key, candidate);
  }
  return holding;
}
