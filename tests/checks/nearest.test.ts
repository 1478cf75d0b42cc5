import { expect, test } from "vitest";
import { nearest } from "../../server/checks/nearest.ts";

const RIGS = ["port", "star", "center", "high-diver"];

test.each([
  ["prot", ["port"]],
  ["PROT", ["port"]],
  ["satr", ["star"]],
  ["cetner", ["center"]],
  ["hgih-dievr", ["high-diver"]],
  ["cetnr", []],
  ["tor", []],
  ["porto", ["port"]],
  ["trop", []],
])("%s → %j", (typed, near) => {
  expect(nearest(typed, RIGS)).toEqual(near);
});
