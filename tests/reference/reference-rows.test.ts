import { describe, expect, test } from "vitest";
import { expectBand, expectRow } from "./reference-rows.ts";

const row = { name: "a row", input: 0, expected: 10, tolerance: 0.5, source: "arithmetic" };
const band = { name: "a band", input: 0, low: 9, high: 11, source: "arithmetic" };

describe("the assertions of reference rows can fail", () => {
  test("inside passes", () => {
    expectRow(row, 10.5);
    expectBand(band, 11);
  });
  test.each([10.51, 9.49, Number.NaN, Number.POSITIVE_INFINITY])("a row rejects %s", (actual) => {
    expect(() => expectRow(row, actual)).toThrow(/a row/);
  });
  test.each([11.01, 8.99, Number.NaN])("a band rejects %s", (actual) => {
    expect(() => expectBand(band, actual)).toThrow(/a band/);
  });
});
