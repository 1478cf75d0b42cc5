/** Text for hovers. Names come from the file: nothing in them may act as Markdown. */

/** Plain text in Markdown. */
export function plainMarkdown(text: string): string {
  return text.replaceAll(/[\\`*_[\]<>~#|&!]/gu, "\\$&");
}

/** Text as code; the fence is longer than any in the text. */
export function code(text: string): string {
  const longest = Math.max(0, ...[...text.matchAll(/`+/gu)].map((run) => run[0].length));
  const fence = "`".repeat(longest + 1);
  return longest === 0 ? `${fence}${text}${fence}` : `${fence} ${text} ${fence}`;
}
