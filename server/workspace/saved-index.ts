/** The index as it is kept between runs. What is not exactly what the same program wrote is not used at all. */
import { bytesHash, contentHash } from "./content-hash.ts";
import { PackedRecord } from "./file-record.ts";
import { NameTable } from "./name-table.ts";
import { isSavedBody, type SavedBody } from "./saved-body.ts";
import type { CheckedFile } from "./workspace-checks.ts";
import type { StoredParts } from "./workspace-files.ts";
import type { KeptFile } from "./workspace-index.ts";

/** What is kept. */
export interface SavedIndex {
  readonly names: NameTable;
  readonly files: Iterable<KeptFile>;
  readonly checked: Iterable<readonly [uri: string, checked: CheckedFile]>;
}

/** Raised when what is written below changes its meaning. */
const FORMAT = "deepwake-index/1";

/** Writes an index. `program` tells one build from another: what one found, another may not. */
export function saveIndex(program: string, index: SavedIndex): StoredParts {
  const files = [...index.files];
  const body: SavedBody = {
    names: index.names.entries.map(({ kind, name, role }) => [kind, name, role]),
    files: files.map(({ stamp, record }) => {
      const { uri, kind, hash, bom, boats, describes, hasLooseGear, trips, packed } = record;
      const outline = { uri, kind, hash, bom, boats, describes, hasLooseGear, trips };
      return { stamp, length: packed.length, outline };
    }),
    checked: [...index.checked],
  };
  const json = JSON.stringify(body);
  const bytes = joined(files.map(({ record }) => record.packed));
  return { text: `${headLine(program, json, bytes)}\n${json}`, bytes };
}

/** Reads an index; undefined where it is another program's, cut short, or otherwise not what was written. */
export function readSavedIndex(program: string, { text, bytes }: StoredParts): SavedIndex | undefined {
  const lineEnd = text.indexOf("\n");
  const json = text.slice(lineEnd + 1);
  if (text.slice(0, lineEnd) !== headLine(program, json, bytes)) return undefined;
  const body = parsed(json);
  return isSavedBody(body) ? unpacked(body, bytes) : undefined;
}

/** Whose it is, and sums that tell damage. */
function headLine(program: string, json: string, bytes: Uint8Array): string {
  return [FORMAT, JSON.stringify(program), contentHash(json), bytesHash(bytes)].join(" ");
}

function unpacked(body: SavedBody, bytes: Uint8Array): SavedIndex | undefined {
  const names = new NameTable();
  const isInOrder = body.names.every(([kind, name, role], id) => names.idOf(kind, name, role) === id);
  let at = 0;
  const files = body.files.map(({ stamp, length, outline }): KeptFile => {
    const start = at;
    at += length;
    return { stamp, record: new PackedRecord(outline, bytes.subarray(start, at), names) };
  });
  return isInOrder && at === bytes.length ? { names, files, checked: body.checked } : undefined;
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(parts.reduce((length, part) => length + part.length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

function parsed(json: string): unknown {
  try {
    return JSON.parse(json);
  } catch {
    return undefined;
  }
}
