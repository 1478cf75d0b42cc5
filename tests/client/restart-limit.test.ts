/** When a server that ended by itself is started again. */
import { describe, expect, test } from "vitest";
import { COUNTED_MS, RestartLimit } from "../../client/vscode/restart-limit.ts";

/** What is said of ends at these times, ms. */
const answersTo = (times: readonly number[]): boolean[] => {
  const limit = new RestartLimit();
  return times.map((time) => limit.mayRestart(time));
};

describe("a server that ends by itself", () => {
  test("is started again four times within three minutes, and not a fifth time", () => {
    expect(answersTo([0, 1, 2, 3, 4])).toEqual([true, true, true, true, false]);
  });

  test("has its ends forgotten when three minutes have passed", () => {
    expect(answersTo([0, 1, 2, 3, COUNTED_MS])).toEqual([true, true, true, true, true]);
    expect(answersTo([0, 1, 2, 3, COUNTED_MS - 1])).toEqual([true, true, true, true, false]);
  });

  test("begins anew when somebody has started it again", () => {
    expect(answersTo([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]).map(Number).join("")).toBe("1111011110");
  });
});
