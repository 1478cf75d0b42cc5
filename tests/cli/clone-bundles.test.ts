/** What a clone bundles before a verb runs is all that the verb needs. */
import { expect, test } from "vitest";
import { cloneBundles } from "../../client/cli/clone-bundles.ts";
import { COMMAND_LINE } from "../../esbuild.command-line.ts";
import { SERVER } from "../../esbuild.server.ts";

test.each([
  ["check trips", COMMAND_LINE],
  ["serve --stdio", [...COMMAND_LINE, ...SERVER]],
])("%s", (args, bundles) => {
  const { names, files } = cloneBundles(args.split(" "));
  const outfiles = bundles.map(({ outfile }) => outfile);
  expect(outfiles.filter((file) => !names.some((name) => file.startsWith(name)))).toEqual([]);
  expect([...files].sort()).toEqual([...outfiles].sort());
});
