/** The assertions used inside the editor can fail. */
import { expect, test } from "vitest";
import assert from "../editor/suite/assert.ts";

test.each([
  ["ok", () => assert.ok(0, "none"), "none: 0 is not true"],
  ["equal", () => assert.equal(1, 2), "1 is not 2"],
  ["notEqual", () => assert.notEqual("a", "a"), 'still "a"'],
  ["deepEqual", () => assert.deepEqual([1], [2]), "is not"],
  ["match", () => assert.match("a", /b/u), "doesn't match /b/u"],
])("%s fails", (_, state, said) => {
  expect(state).toThrow(said);
});

test("and hold what holds", () => {
  assert.ok("x");
  assert.equal(undefined, undefined);
  assert.notEqual(1, "1");
  assert.deepEqual({ a: [1] }, { a: [1] });
  assert.match("ab", /b/u);
});
