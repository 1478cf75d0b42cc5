/** A file's names as they are held while one question about names is answered. */
import type { FileRecord } from "../../workspace/index-view.ts";

/** What a record says of names and of whose they are. */
export type NamedFile = Pick<FileRecord, "uri" | "kind" | "boats" | "trips" | "places">;

/** The names of a record, unpacked once. */
export function namedFile({ uri, kind, boats, trips, places }: FileRecord): NamedFile {
  return { uri, kind, boats, trips, places };
}
