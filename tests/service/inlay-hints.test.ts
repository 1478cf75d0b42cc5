/** The depth beside a line: where it stands, and where there is none. */
import { describe, expect, test } from "vitest";
import { ALL_HINTS, HINT_KINDS } from "../../server/service/hint-kinds.ts";
import { EVERYTHING, MORNING, openService, URI } from "./open-service.ts";

/** The line with its hints drawn in as `‹hint›`, figures as `#`. */
function drawHints(line: string): string {
  const text = MORNING + line;
  const index = text.split("\n").length - 1;
  const range = { start: { line: index, character: 0 }, end: { line: index, character: line.length } };
  const hints = openService(text).inlayHints(URI, range);
  return hints.reduceRight((drawn, { label, position }) => {
    expect(position.line).toBe(index);
    const hint = `‹${String(label).replaceAll(/\d+/gu, "#")}›`;
    return drawn.slice(0, position.character) + hint + drawn.slice(position.character);
  }, line);
}

function checkHints(line: string, drawn: string): void {
  expect(drawHints(line)).toBe(drawn);
}

describe("right behind the last word", () => {
  test.each([
    ["06:18 again P1", "06:18 again P1‹↓ ball # ft, lure # ft, # F›"],
    ["06:20 move C1 out 95 ft", "06:20 move C1 out 95 ft‹↓ ball # ft, lure # ft, # F›"],
    ["06:18 again P1  # a good one", "06:18 again P1‹↓ ball # ft, lure # ft, # F›  # a good one"],
    ['06:18 again P1 "slow"', '06:18 again P1 "slow"‹↓ ball # ft, lure # ft, # F›'],
    ["06:20 set P1U above 20 ft setback 25 ft", "06:20 set P1U above 20 ft setback 25 ft‹↓ lure # ft, # F›"],
    [
      "06:20 set P1U above 20 ft lure glow-spoon",
      "06:20 set P1U above 20 ft lure glow-spoon‹↓ release # ft, # F›",
    ],
    ["06:20 change C1 setback 40 ft", "06:20 change C1 setback 40 ft‹↓ ball # ft, lure # ft, # F›"],
    ["06:20 change C1 out 95 ft", "06:20 change C1 out 95 ft‹↓ ball # ft, lure # ft, # F›"],
    ["06:20 set PB out 5 colors", "06:20 set PB out 5 colors‹↓ lure # ft, # F›"],
  ])("%s", checkHints);
});

describe("none", () => {
  test.each([
    "06:20 strike C1",
    '06:20 change C1 "cut bait"',
    "06:20 move C1 out 72,5 ft",
    "06:20 move X9 out 5 ft",
  ])("%s", (line) => checkHints(line, line));
});

test("only lines in the range are answered, each with its reasons", () => {
  const service = openService(MORNING);
  const at = (from: number, to: number) =>
    service.inlayHints(URI, { start: { line: from, character: 0 }, end: { line: to, character: 0 } });
  expect(at(0, 99).map((hint) => hint.position.line)).toEqual([6, 7]);
  expect(at(7, 7).map((hint) => hint.position.line)).toEqual([7]);
  expect(String(at(7, 7)[0]?.tooltip)).toMatch(/^Ball about[\s\S]*\nDepths are estimates/u);
});

test("a tooltip may be left out and asked for later", () => {
  const service = openService(MORNING);
  const lazy = service.inlayHints(URI, EVERYTHING, { parts: ALL_HINTS, isLazy: true });
  expect(lazy.map(({ tooltip }) => tooltip)).toEqual([undefined, undefined]);
  const eager = service.inlayHints(URI, EVERYTHING);
  expect(lazy.map((hint) => service.resolveInlayHint(hint).tooltip)).toEqual(
    eager.map(({ tooltip }) => tooltip),
  );
  service.update(URI, 2, "");
  expect(lazy.map(service.resolveInlayHint)).toEqual(lazy);
});

test.each(HINT_KINDS.map(({ name }) => name))("%s can be switched off", (name) => {
  const service = openService(MORNING);
  const without = service.inlayHints(URI, EVERYTHING, {
    parts: { ...ALL_HINTS, [name]: false },
    isLazy: false,
  });
  expect(without).not.toEqual(service.inlayHints(URI, EVERYTHING));
});
