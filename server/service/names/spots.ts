/** Files and lines as people speak of them. */
import type { NamedSpot } from "../../checks/catalog/rename-sentences.ts";

/** A line of a file, counted from 1. */
export function spotOf(uri: string, lineIndex: number): NamedSpot {
  return { file: fileName(uri), line: lineIndex + 1 };
}

/** A file's name without its folders. */
export function fileName(uri: string): string {
  const last = uri.split("/").at(-1) ?? uri;
  try {
    return decodeURIComponent(last);
  } catch {
    return last;
  }
}
