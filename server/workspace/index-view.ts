/** What is known of every file of the workspace, the open ones as they stand in the editor; what searches read. */
import type { NamedPlace } from "../model/named-places.ts";

/** A count of landed fish. */
export interface FishCount {
  /** A known species by its own name, else as it is written: nicknames are the gear book's to say. */
  readonly species: string;
  readonly count: number;
}

/** A trip as a list of trips shows it. */
export interface TripHeading {
  /** Line of its opener, from 0. */
  readonly lineIndex: number;
  /** `YYYY-MM-DD`, or whatever stands there. */
  readonly date: string;
  readonly boat: string;
  /** The port left from; null where the trip doesn't say. */
  readonly harbor: string | null;
  /** Clocks of the departure and the return, `HH:MM` or `HH:MM:SS`; null where the trip doesn't say. */
  readonly departs: string | null;
  readonly returns: string | null;
  readonly fish: readonly FishCount[];
}

/** What is kept of a file whose lines are not. */
export interface FileRecord {
  readonly uri: string;
  readonly kind: "trip" | "gear";
  /** Equal for equal texts. */
  readonly hash: string;
  /** The text starts with a byte order mark, which a client counts as a column of the first line. */
  readonly bom: boolean;
  /** The boats that it opens or whose trips it holds, each once. */
  readonly boats: readonly string[];
  /** Those of them whose gear it opens. */
  readonly describes: readonly string[];
  /** Gear stands in it above any opener. */
  readonly hasLooseGear: boolean;
  /** Every name in it, in the order of its lines; unpacked each time it is asked for. */
  readonly places: readonly NamedPlace[];
  /** Those of them that say what something is called from there on: few in a log of many lines. */
  readonly definitions: readonly NamedPlace[];
  readonly trips: readonly TripHeading[];
}

/** Every file known; an open document as it stands in the editor. */
export interface IndexView {
  records(): Iterable<FileRecord>;
  record(uri: string): FileRecord | undefined;
}
