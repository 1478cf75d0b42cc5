/** The helpers can fail: each is given something that is not so. */
import { describe, expect, test } from "vitest";
import { checkCanonical, checkFormat, checkIssues, checkTree, parseClean } from "./check-grammar.ts";

describe("each helper fails when", () => {
  test.each([
    ["a line has an issue", () => parseClean("pull P1\npul P1")],
    ["a tree is another", () => checkTree("pull P1", "fact pull P2")],
    ["a tree is of a line with an issue", () => checkTree("pul P1", "unreadable")],
    ["a tree lacks an item", () => checkTree("set P1 out 5 ft", "fact set P1")],
    ["an issue is not expected", () => checkIssues("pul P1")],
    ["an expected issue is not there", () => checkIssues("pull P1\n^^^^ unknown-word")],
    ["an issue has other facts", () => checkIssues("pul P1\n^^^ unknown-word verb pull")],
    ["a format is another", () => checkFormat("pull  P1", "pull  P1")],
    ["a line is not canonical", () => checkCanonical("pull  P1")],
    ["a canonical line has an issue", () => checkCanonical("pul P1")],
  ])("%s", (_, check) => {
    expect(check).toThrow();
  });
});
