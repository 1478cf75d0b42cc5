/** Generated parts of a page stand between two comments; the prose around them is written by hand. */

/** What goes into a page's parts, by name. */
export type Parts = Readonly<Record<string, () => string>>;

const PART = /<!-- generated: (.+?) -->\n[\s\S]*?<!-- end of \1 -->/gu;

/** Fills every part of a page anew. Throws when a part is unknown, is missing or does not end. */
export function fillParts(page: string, parts: Parts): string {
  const filled = new Set<string>();
  const text = page.replaceAll(PART, (_, name: string) => {
    const part = parts[name];
    if (part === undefined) throw new Error(`nothing generates "${name}"`);
    filled.add(name);
    return `<!-- generated: ${name} -->\n\n${part().trim()}\n\n<!-- end of ${name} -->`;
  });
  const missing = Object.keys(parts).filter((name) => !filled.has(name));
  if (missing.length > 0) throw new Error(`the page has no part "${missing.join('", "')}"`);
  if (text.split("<!-- generated: ").length - 1 !== filled.size)
    throw new Error("a part does not end, or is there twice");
  return text;
}

/** A table in Markdown. Bars in cells are escaped. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string =>
    `| ${cells.map((cell) => cell.replaceAll("|", "\\|")).join(" | ")} |`;
  return [line(head), `|${head.map(() => "---|").join("")}`, ...rows.map(line)].join("\n");
}
