/** Findings that speak of another line point to it. */
import { describe, expect, test } from "vitest";
import { readMarks } from "../harness/markers.ts";
import { findingsIn, OPENER, TRIP_URI } from "./check-findings.ts";

/** The finding of a check points to the marked places, and to no others. */
function checkRelated(slug: string, source: string): void {
  const { text, ranges } = readMarks(OPENER + source);
  const finding = findingsIn(text).find((one) => one.slug === slug);
  if (finding === undefined) throw new Error(`no ${slug} in:\n${text}`);
  const starts = text
    .split("\n")
    .map((_, line, lines) => lines.slice(0, line).join("\n").length + (line > 0 ? 1 : 0));
  const related = finding.related.map(({ uri, lineIndex, start, stop }) => {
    expect(uri).toBe(TRIP_URI);
    return text.slice((starts[lineIndex] ?? 0) + start, (starts[lineIndex] ?? 0) + stop);
  });
  expect(related).toEqual(ranges.map(([start, stop]) => text.slice(start, stop)));
}

const SPEED = "04:59 surface speed 2.4 mph\n05:00 set P1 <|out 60 ft|> setback 15 ft\n";

describe("how much cable is out", () => {
  test.each([
    ["blowback-exceeds-out", `${SPEED}05:34 probe P1 behind 80 ft`],
    ["deeper-than-out", `${SPEED}05:34 probe P1 depth 80 ft`],
    [
      "depth-disagrees",
      `${SPEED.replace("60", "90").replaceAll("P1", "C1")}05:34 probe C1 depth 40 ft speed 2.4 mph`,
    ],
    ["blowback-exceeds-out", "05:34 touch P1 out 70 ft behind 80 ft"],
    ["deeper-than-out", "05:00 set P1 out 40 ft\n05:10 move P1 <|out 60 ft|>\n05:34 probe P1 depth 90 ft"],
  ])("%s", (slug, source) => {
    const rig = "2031-01-01 rig C1 downrigger cable rigger-wire ball round-12 probe 1.25 ft\n";
    checkRelated(slug, source.includes("C1") ? `${source}\n${rig}` : source);
  });
});

describe("the line before", () => {
  test.each([
    ["already-set", "05:00 <|set|> P1 out 60 ft\n05:10 set P1 out 70 ft"],
    [
      "time-backwards",
      "<|05:10|> set P1 out 60 ft\n05:00 move P1 out 70 ft\n05:12 move P1 out 75 ft\n05:14 pull P1",
    ],
    ["duplicate-definition", "lure <|fly|> fly\nlure fly fly"],
  ])("%s", checkRelated);
});
