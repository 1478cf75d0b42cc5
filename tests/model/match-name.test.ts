import { expect, test } from "vitest";
import { matchName } from "../../server/model/match-name.ts";

const names = new Map(["Port", "star", "Star", "C1"].map((name) => [name, name]));

test.each([
  ["Port", "Port"],
  ["port", "Port"],
  ["PORT", "Port"],
  ["star", "star"],
  ["Star", "Star"],
  ["STAR", "STAR"],
  ["c1", "C1"],
  ["c2", "c2"],
])("%s is %s", (written, meant) => {
  expect(matchName(names, written)).toBe(meant);
});
