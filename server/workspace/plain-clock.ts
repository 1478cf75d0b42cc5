/** Lines that start with a plain clock at the margin: what they say hangs on no line above. */

const SPACE = 32;
const ZERO = 48;
const COLON = 58;

/** As long as `05:14`. */
export const CLOCK_LENGTH = 5;

/** `05:14 ` and such at `start` of a text, of a minute that there is: the line is an event, whatever block it is in. */
export function hasPlainClock(text: string, start: number): boolean {
  if (text.charCodeAt(start + 2) !== COLON || text.charCodeAt(start + CLOCK_LENGTH) !== SPACE) return false;
  const hour = digitAt(text, start) * 10 + digitAt(text, start + 1);
  return hour < 24 && digitAt(text, start + 3) < 6 && digitAt(text, start + 4) < 10;
}

/** What is no digit is larger than any. */
function digitAt(text: string, at: number): number {
  const digit = text.charCodeAt(at) - ZERO;
  return digit >= 0 && digit <= 9 ? digit : Number.POSITIVE_INFINITY;
}
