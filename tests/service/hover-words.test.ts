/** Every word of the example journal says something when it is pointed at. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { openService, URI } from "./open-service.ts";

const EXAMPLE = join(import.meta.dirname, "../../examples/bright-penny");
const book = readFileSync(join(EXAMPLE, "bright-penny.gear"), "utf8");
const read = (folder: string): [string, string][] =>
  readdirSync(join(EXAMPLE, folder))
    .filter((name) => /\.(?:trip|gear)$/u.test(name))
    .map((name) => [name, readFileSync(join(EXAMPLE, folder, name), "utf8")]);

test.each([...read("trips"), ...read("wrong"), ...read(".")])("%s", (name, text) => {
  const service = openService(text, { book: name.endsWith(".gear") ? "" : book });
  const { lines } = service.snapshot(URI)?.parse.journal ?? { lines: [] };
  const silent = lines.flatMap((line, index) => {
    if (line.kind !== "fact" && line.kind !== "property") return [];
    const words = line.raw.slice(0, line.raw.length - (line.comment?.length ?? 0));
    return [...words.matchAll(/\S+/gu)]
      .filter((word) => service.hover(URI, { line: index, character: word.index }) === null)
      .map((word) => `${index + 1}: ${word[0]}`);
  });
  expect(silent).toEqual([]);
});
