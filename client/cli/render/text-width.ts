/** How many columns of a terminal a text takes. */

// biome-ignore lint/suspicious/noControlCharactersInRegex: the color codes start with one.
const COLORS = /\u001b\[[0-9;]*m/gu;
const NO_WIDTH = /[\p{Mn}\p{Me}\p{Cf}]/u;
const DOUBLE =
  /[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6]|\p{Emoji_Presentation}/u;
const PLAIN = /^[\x20-\x7e]*$/u;

/** Columns of a text; color codes and combining marks take none, wide characters two. */
export function textWidth(text: string): number {
  const bare = text.replace(COLORS, "");
  if (PLAIN.test(bare)) return bare.length;
  let width = 0;
  for (const char of bare) width += NO_WIDTH.test(char) ? 0 : DOUBLE.test(char) ? 2 : 1;
  return width;
}

/** A text filled up with blanks to a width. */
export function padded(text: string, width: number, side: "left" | "right" = "left"): string {
  const blanks = " ".repeat(Math.max(0, width - textWidth(text)));
  return side === "left" ? text + blanks : blanks + text;
}
