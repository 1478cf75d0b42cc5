/**
 * Named places packed into bytes: lines from the place before, column, length, number of the name; seven bits a byte,
 * the high bit set where more follow. About five bytes a place, where objects would take a hundred.
 */
import type { NamedPlace } from "../model/named-places.ts";
import type { NameEntry, NameTable } from "./name-table.ts";

const MORE = 0x80;
const LOW = 0x7f;

/** Packs places one after the other. */
export class PlacePacker {
  #bytes = new Uint8Array(1024);
  #length = 0;
  #line = 0;

  /** Lines may not go back. `start` and `length` are UTF-16 code units of the line. */
  add(lineIndex: number, start: number, length: number, nameId: number): void {
    if (this.#length + 20 > this.#bytes.length) this.#grow();
    this.#put(lineIndex - this.#line);
    this.#put(start);
    this.#put(length);
    this.#put(nameId);
    this.#line = lineIndex;
  }

  /** What was packed since the last time; the packer is empty again. */
  take(): Uint8Array {
    const packed = this.#bytes.slice(0, this.#length);
    this.#length = 0;
    this.#line = 0;
    return packed;
  }

  #put(value: number): void {
    let rest = value;
    while (rest >= MORE) {
      this.#bytes[this.#length++] = (rest & LOW) | MORE;
      rest >>>= 7;
    }
    this.#bytes[this.#length++] = rest;
  }

  #grow(): void {
    const larger = new Uint8Array(this.#bytes.length * 2);
    larger.set(this.#bytes);
    this.#bytes = larger;
  }
}

/** The places again, or the wanted of them; undefined where the bytes are not what a packer made with these names. */
export function unpackPlaces(
  bytes: Uint8Array,
  names: NameTable,
  isWanted: (entry: NameEntry) => boolean = () => true,
): NamedPlace[] | undefined {
  const places: NamedPlace[] = [];
  let at = 0;
  const next = (): number => {
    let value = 0;
    for (let scale = 1; at < bytes.length; scale *= MORE) {
      const byte = bytes[at++] ?? 0;
      value += (byte & LOW) * scale;
      if (byte < MORE) return value;
    }
    return Number.NaN;
  };
  let lineIndex = 0;
  while (at < bytes.length) {
    lineIndex += next();
    const start = next();
    const stop = start + next();
    const entry = names.entry(next());
    if (entry === undefined || !Number.isSafeInteger(lineIndex + stop)) return undefined;
    if (isWanted(entry)) places.push({ ...entry, range: { lineIndex, start, stop } });
  }
  return places;
}
