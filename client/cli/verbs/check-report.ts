/** What `check` found, before it is printed one way or another. */
import type { Finding } from "../../../server/checks/check.ts";
import type { Unusable } from "../paths.ts";

/** One file that was read. */
export interface CheckedFile {
  readonly shown: string;
  readonly path: string;
  readonly findings: readonly Finding[];
}

/** A whole run. */
export interface CheckReport {
  readonly files: readonly CheckedFile[];
  /** Named files, and gear books in reach of one, that could not be read. */
  readonly unusable: readonly Unusable[];
}
