/** Edits as hands make them: of amounts, clocks, names and whole lines, in any order; each a new text from the one before. */
import fc from "fast-check";
import { VOCABULARY } from "../../grammar/vocabulary.ts";

/** One edit: what is done, with numbers that choose where and with what, so that it fits any text. */
export interface Edit {
  readonly what: keyof typeof KINDS;
  readonly at: number;
  readonly other: number;
}

/** What may stand at the end of any line. */
const ATTRIBUTES = [
  ...[
    "sure",
    "sure",
    "out 60 ft",
    "out 300 ft",
    "out 0 ft",
    "above 20 ft",
    "setback 150 ft",
    "dial 2",
    "on-bottom",
  ],
  ...[
    "shallow",
    "down 5 min",
    "down 90 min",
    "slider",
    "with S1",
    "with P1",
    "ball round-12",
    "lure glow-spoon",
  ],
  ...[
    "leader 4 ft",
    "anglers 2",
    "behind 30 ft",
    "behind 400 ft",
    "depth 60 ft",
    "depth 200 ft",
    "temp 45 F",
  ],
  ...[
    "temp 95 F",
    "speed 0 mph",
    "speed 2.4 mph",
    "speed 9 mph",
    "bottom 50 ft",
    "bottom 300 ft",
    "course 090",
  ],
  ...[
    "course 270",
    "at 44 46.1N 086 21.7W",
    "at 45 46.1N 086 21.7W",
    "marks 65 to 80 ft",
    "left",
    "magnetic",
  ],
  ...[
    "weight 90 lb",
    "8 lb",
    "length 30 in",
    "by G1",
    "by G9",
    "engine 1243.6 h",
    "engine 12 h",
    '"a remark"',
  ],
  ...["# a comment", "60", "ft"],
];

const LINES = [
  ...VOCABULARY.rows.filter((row) => row.place === "event").map((row) => row.example),
  ...[
    "  method deep",
    "  method shallow",
    "  guest G1",
    "  captain G9",
    "  target chinook",
    "  zone America/Chicago",
  ],
  ...[
    "",
    "# a comment",
    "  the text of a note",
    "06:",
    "06:15 se",
    "07:10 set S1",
    "pull all",
    "set P1 out 60 ft",
  ],
  ...[
    "05:00 set P1 out 90 ft",
    "05:40 pull P1",
    "06:30 probe C1 depth 60 ft speed 2.5 mph temp 50 F",
    "touch P1",
    "set P1U above 20 ft out 40 ft",
    "05:20 set P1U above 20 ft",
    "05:10 pull P1",
  ],
  ...[
    "05:50 surface speed 2.4 mph temp 62 F",
    "06:31 gps speed 2.6 mph course 180",
    "06:00 sonar bottom 40 ft",
  ],
];
const RIGS = ["P1", "S1", "C1", "P1U", "S2", "S2U", "SD", "PD", "PB", "SB", "all", "unknown", "XX"];
/** Every verb of a day, so that a new one is edited too. */
const VERBS = VOCABULARY.rows.flatMap(({ place, verb }) => (place === "event" ? verb : []));
const VERB = new RegExp(`\\b(?:${VERBS.join("|")})\\b`, "u");
const STAMP = /^(\s*)(~?)(\d\d):(\d\d)/u;

/** What becomes of a line, given a number that chooses and the other lines. */
const KINDS = {
  digit: (line, n) => [digitChanged(line, n)],
  digitMore: (line, n) => [line.replace(/(\d)(?=\D*$)/u, `$1${n % 10}`)],
  minute: (line, n) => [
    line.replace(STAMP, (_, blank, approx, hour) => `${blank}${approx}${hour}:${two(n % 60)}`),
  ],
  hour: (line, n) => [
    line.replace(
      STAMP,
      (_, blank, approx, hour, minute) =>
        `${blank}${approx}${two((Number(hour) + pick([1, 12, 23], n)) % 24)}:${minute}`,
    ),
  ],
  dark: (line, n) => [
    line.replace(STAMP, (_, blank, approx) => `${blank}${approx}0${1 + (n % 2)}:${two(n % 60)}`),
  ],
  approximate: (line) => [
    line.replace(STAMP, (stamp, blank, approx) =>
      approx ? stamp.replace("~", "") : `${blank}~${stamp.trim()}`,
    ),
  ],
  unclocked: (line) => [line.replace(/^~?\d\d:\d\d(:\d\d)? /u, "")],
  rig: (line, n) => [line.replace(/\b(P1|S1|C1|P1U|SD|PD|PB|SB|all)\b/u, pick(RIGS, n))],
  verb: (line, n) => [line.replace(VERB, pick(VERBS, n))],
  attribute: (line, n) => [`${line} ${pick(ATTRIBUTES, n)}`],
  shorter: (line) => [line.replace(/ ?\S+\s*$/u, "")],
  cut: (line, n) => [line.slice(0, n % (line.length + 1))],
  indent: (line) => [line.startsWith(" ") ? line.trimStart() : ` ${line}`],
  silent: (line) => [`# ${line}`],
  delete: () => [],
  twice: (line) => [line, line],
  insert: (line, n) => [pick(LINES, n), line],
  insertBelow: (line, n) => [line, pick(LINES, n)],
  replace: (_, n) => [pick(LINES, n)],
  insertOther: (line, n, lines) => [pick(lines, n), line],
  carriage: (line) => [line.endsWith("\r") ? line.slice(0, -1) : `${line}\r`],
} satisfies Record<string, (line: string, n: number, lines: readonly string[]) => string[]>;

const pick = <T>(list: readonly T[], n: number): T => list[n % list.length] as T;
const two = (n: number): string => String(n).padStart(2, "0");

function digitChanged(line: string, n: number): string {
  const at = [...line.matchAll(/\d/gu)].map(({ index }) => index);
  if (at.length === 0) return line;
  const index = pick(at, n);
  return `${line.slice(0, index)}${(n >> 3) % 10}${line.slice(index + 1)}`;
}

/** Amounts and lines are what is edited most. */
const WHAT = Object.keys(KINDS) as Edit["what"][];
export const anyEdit: fc.Arbitrary<Edit> = fc.record({
  what: fc.constantFrom<Edit["what"]>(...WHAT, "digit", "digit", "digit", "attribute", "attribute", "insert"),
  at: fc.nat(1_000_000),
  other: fc.nat(1_000_000),
});

/** A text after an edit. */
export function edited(text: string, { what, at, other }: Edit): string {
  const lines = text.split("\n");
  const index = at % lines.length;
  const change: (line: string, n: number, lines: readonly string[]) => string[] = KINDS[what];
  return lines.toSpliced(index, 1, ...change(lines[index] ?? "", other, lines)).join("\n");
}
