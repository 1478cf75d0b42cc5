/** A short name for a text: equal texts have equal names, in every run of the program. */

/** Two rounds of FNV-1a, 32 bits each, and the length: public domain, by Fowler, Noll and Vo. */
export function contentHash(text: string): string {
  let [one, other] = [0x811c9dc5, 0xcbf29ce4];
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    one = Math.imul(one ^ code, 0x01000193);
    other = Math.imul(other ^ (code + at), 0x01000193);
  }
  return `${(one >>> 0).toString(36)}-${(other >>> 0).toString(36)}-${text.length.toString(36)}`;
}

/** The same over bytes. */
export function bytesHash(bytes: Uint8Array): string {
  let [one, other] = [0x811c9dc5, 0xcbf29ce4];
  for (let at = 0; at < bytes.length; at++) {
    const byte = bytes[at] ?? 0;
    one = Math.imul(one ^ byte, 0x01000193);
    other = Math.imul(other ^ (byte + at), 0x01000193);
  }
  return `${(one >>> 0).toString(36)}-${(other >>> 0).toString(36)}-${bytes.length.toString(36)}`;
}
