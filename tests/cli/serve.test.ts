/** `deepwake serve`: what it hands to the server; the server itself is spoken to in tests/lsp/spawned.test.ts. */
import { expect, test } from "vitest";
import { deepwake } from "./fake-world.ts";

test.each([
  ["serve", ["--stdio"]],
  ["serve --stdio", ["--stdio"]],
  ["serve --socket 5007", ["--socket=5007"]],
  ["serve --socket=5007", ["--socket=5007"]],
  ["serve --pipe talk.sock", ["--pipe=talk.sock"]],
  ["serve --stdio --clientProcessId=77", ["--stdio", "--clientProcessId=77"]],
])("%s talks over %j", async (words, ways) => {
  const { code, out, err, served } = await deepwake(words);
  expect({ code, out, err, served }).toEqual({ code: 0, out: "", err: "", served: [ways] });
});

test.each([
  ["serve trips", 'serve takes no files, and "trips" was given'],
  ["serve --stdio --socket 5007", "not over 2"],
  ["serve --socket here", '--socket needs the number of a port, not "here"'],
  ["serve --socket 70000", '--socket needs the number of a port, not "70000"'],
  ["serve --tcp", "there is no option --tcp"],
])("%s starts nothing and says why", async (words, why) => {
  const { code, err, served } = await deepwake(words);
  expect(code).toBe(2);
  expect(err).toContain(why);
  expect(served).toEqual([]);
});

test("a person who starts it by hand is told what it waits for", async () => {
  const { err, out } = await deepwake("serve", { isWatched: true });
  expect(err).toMatch(/waits for an editor/u);
  expect(out).toBe("");
});
