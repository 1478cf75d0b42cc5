/** The JSON part of a kept index, checked by hand: a schema library would read it three times as slowly. */
import type { Place, RelatedPlace } from "../checks/check.ts";
import type { Outline } from "./file-record.ts";
import type { FishCount, TripHeading } from "./index-view.ts";
import type { NameEntry } from "./name-table.ts";
import type { CheckedFile, KeptFinding } from "./workspace-checks.ts";

/** Names by their numbers, files with the length of their packed places, and what was found in them. */
export interface SavedBody {
  readonly names: readonly (readonly [kind: NameEntry["kind"], name: string, role: NameEntry["role"]])[];
  readonly files: readonly SavedFile[];
  readonly checked: readonly (readonly [uri: string, checked: CheckedFile])[];
}

interface SavedFile {
  readonly stamp: string;
  /** Bytes of its packed places. */
  readonly length: number;
  readonly outline: Outline;
}

/** True for what `SavedBody` says. Kinds, roles and severities are any word: they are only handed on. */
export function isSavedBody(value: unknown): value is SavedBody {
  return hasShape<SavedBody>(value, {
    names: listOf(isName),
    files: listOf(isFile),
    checked: listOf(isChecked),
  });
}

type Check = (value: unknown) => boolean;

/** What each member has to be. */
type Shape<T> = { readonly [Key in keyof T]-?: Check };

function hasShape<T>(value: unknown, shape: Shape<T>): boolean {
  if (typeof value !== "object" || value === null) return false;
  const members = value as Readonly<Record<string, unknown>>;
  for (const key in shape) if (!shape[key](members[key])) return false;
  return true;
}

function listOf(check: Check): Check {
  return (value) => Array.isArray(value) && value.every(check);
}

const isText: Check = (value) => typeof value === "string";
const isTextOrNull: Check = (value) => value === null || typeof value === "string";
const isFlag: Check = (value) => typeof value === "boolean";
const isCount: Check = (value) => Number.isSafeInteger(value) && Number(value) >= 0;

const isName: Check = (value) => Array.isArray(value) && value.length === 3 && value.every(isText);

const isFile: Check = (value) =>
  hasShape<SavedFile>(value, { stamp: isText, length: isCount, outline: isOutline });

const isOutline: Check = (value) =>
  hasShape<Outline>(value, {
    uri: isText,
    kind: (kind) => kind === "trip" || kind === "gear",
    hash: isText,
    bom: isFlag,
    boats: listOf(isText),
    describes: listOf(isText),
    hasLooseGear: isFlag,
    trips: listOf(isTrip),
  });

const isTrip: Check = (value) =>
  hasShape<TripHeading>(value, {
    lineIndex: isCount,
    date: isText,
    boat: isText,
    harbor: isTextOrNull,
    departs: isTextOrNull,
    returns: isTextOrNull,
    fish: listOf((fish) => hasShape<FishCount>(fish, { species: isText, count: isCount })),
  });

const isChecked: Check = (value) =>
  Array.isArray(value) &&
  isText(value[0]) &&
  hasShape<CheckedFile>(value[1], { key: isText, findings: listOf(isFinding) });

const PLACE: Shape<Place> = { lineIndex: isCount, start: isCount, stop: isCount };

const isFinding: Check = (value) =>
  hasShape<KeptFinding>(value, {
    ...PLACE,
    slug: isText,
    severity: isText,
    message: isText,
    related: listOf((one) => hasShape<RelatedPlace>(one, { ...PLACE, uri: isText, message: isText })),
  });
