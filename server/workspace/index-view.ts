/** What is known of every file of the workspace: enough to find names and trips without reading the files again. */
import type { NamedPlace } from "../model/named-places.ts";

/** A trip as lists show it. */
export interface TripHeading {
  /** Line of its opener, from 0. */
  readonly lineIndex: number;
  /** `YYYY-MM-DD`, or whatever stands there. */
  readonly date: string;
  readonly boat: string;
  /** The port left from; null where the trip doesn't say. */
  readonly harbor: string | null;
}

/** One file. */
export interface FileRecord {
  readonly uri: string;
  readonly kind: "trip" | "gear";
  /** The boats that it opens or whose trips it holds. */
  readonly boats: readonly string[];
  readonly places: readonly NamedPlace[];
  readonly trips: readonly TripHeading[];
}

/** Every file known; an open document as it stands in the editor. */
export interface IndexView {
  records(): Iterable<FileRecord>;
  record(uri: string): FileRecord | undefined;
}
