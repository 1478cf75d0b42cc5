/** The files that names are looked up in. */
import type { Range } from "vscode-languageserver-types";
import type { Parse } from "../../../grammar/parse.ts";
import type { BookFile } from "../../model/gear-lines.ts";
import type { LineRange } from "../../model/named-places.ts";
import type { IndexView } from "../../workspace/index-view.ts";
import { withMark } from "../byte-order-mark.ts";
import { rangeOf } from "../positions.ts";

/** Every journal and gear book within reach; open ones as they stand in the editor. */
export interface Journals {
  readonly index: IndexView;
  /** Gear books within reach of a file, nearest first, itself left out. */
  booksNear(uri: string): readonly BookFile[];
  /** A file as it is now; undefined when it can't be read. */
  read(uri: string): Parse | undefined;
  /** The text of a file that isn't open, where it can be had without reading what it says. */
  text(uri: string): string | undefined;
  /** The version of an open document; null for a file that isn't open. */
  version(uri: string): number | null;
  /** True for an open document whose text starts with a byte order mark: there it counts as a column. */
  hasMark(uri: string): boolean;
}

/** A place of any file as its client counts columns. */
export function rangeIn(journals: Journals, uri: string, place: LineRange): Range {
  const range = rangeOf(place);
  return journals.hasMark(uri) ? withMark(range, uri) : range;
}
