/** Text from files made safe to show: what would steer a terminal is spelled out. */

/** Control characters, lone surrogates, and the marks that turn the reading direction. */
const STEERING = /[\p{Cc}\p{Cs}\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;

/** The text with such characters as `\u{1b}`. */
export function printable(text: string): string {
  return text.replace(STEERING, (found) => `\\u{${(found.codePointAt(0) ?? 0).toString(16)}}`);
}
