/** What is known of every file of the workspace, the open ones as they stand in the editor; what searches read. */
import type { NameKind } from "../../grammar/vocabulary.ts";
import type { Place } from "../checks/check.ts";

/** A name where it is written: a line number and columns of that line, in UTF-16 code units, a byte order mark left out. */
export interface NamedPlace extends Place {
  readonly kind: NameKind;
  /** In Unicode NFC, without quotes. */
  readonly name: string;
  readonly role: "definition" | "use";
  /** The boat opened above it, by a trip or a gear book; null above any. */
  readonly boat: string | null;
}

/** A count of landed fish. */
export interface FishCount {
  /** A known species by its own name, else as it is written: nicknames are the gear book's to say. */
  readonly species: string;
  readonly count: number;
}

/** A trip as a list of trips would show it. */
export interface TripHeading extends Place {
  /** `YYYY-MM-DD`. */
  readonly date: string;
  readonly boat: string;
  readonly harbor: string | null;
  /** Clocks of the departure and the return as written, `HH:MM` or `HH:MM:SS`. */
  readonly depart: string | null;
  readonly return: string | null;
  readonly fish: readonly FishCount[];
}

/** What is kept of a file whose lines are not. */
export interface FileRecord {
  readonly uri: string;
  readonly kind: "trip" | "gear";
  /** Hash of the text; equal for equal texts. */
  readonly hash: string;
  /** The file starts with a byte order mark: a client counts it as the first column of the first line. */
  readonly bom: boolean;
  /** The boats it opens trips or gear of, each once. */
  readonly boats: readonly string[];
  readonly trips: readonly TripHeading[];
  /** Every name of it, in the order of its lines; unpacked anew each time it is asked for. */
  readonly places: readonly NamedPlace[];
  /** The places of one name; costs next to nothing where the file doesn't have it. */
  placesOf(name: string): readonly NamedPlace[];
}

/** The records of the workspace. */
export interface IndexView {
  records(): Iterable<FileRecord>;
  record(uri: string): FileRecord | undefined;
}
