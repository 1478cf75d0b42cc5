/** Markdown as plain text, for clients that show what they get as it is. */

/** The text without the marks of headings, emphasis, code, links and rules; tables and lists stay as they are typed. */
export function plainText(markdown: string): string {
  return markdown
    .replaceAll(/^```.*\n?/gmu, "")
    .replaceAll(/^#{1,6} /gmu, "")
    .replaceAll(/^---$\n?/gmu, "")
    .replaceAll(/\[([^\]]*)\]\([^)]*\)/gu, "$1")
    .replaceAll(/(\*\*|`)(.+?)\1/gu, "$2")
    .replaceAll(/(?<![\\*])\*(?=\S)([^*\n]+)(?<=\S)\*/gu, "$1")
    .replaceAll(/\\([\\`*_{}[\]()#+.!|<>~-])/gu, "$1")
    .replaceAll(/ {2}$/gmu, "")
    .replaceAll(/\n{3,}/gu, "\n\n")
    .trim();
}
