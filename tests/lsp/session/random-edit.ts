/** Edits as a captain, a paste or a cat on the keyboard makes them: mostly sound lines, sometimes anything. */
import type { Range, TextDocument } from "vscode-languageserver-textdocument";
import type { Random } from "../../bench/random.ts";

/** One replaced stretch of a text. */
export interface Edit {
  readonly range: Range;
  readonly text: string;
}

/** A text that grew past this is cut down by the next edit, lines. */
const LONGEST = 50;

const TRIP_LINES = [
  "05:20 set P1 out 84 ft setback 15 ft lure glow-spoon",
  '05:25 set C1 out 120 ft setback 20 ft lure "Ash Wednesday"',
  "05:30 probe C1 depth 82 ft temp 45.5 F speed 2.6 mph",
  "05:32 surface speed 2.3 mph temp 61 F",
  "05:40 sonar bottom 140 ft",
  "05:41 gps speed 2.4 mph heading 310 at 44 44.1N 086 26.2W",
  "05:50 strike P1",
  "05:52 catch P1 king 18 lb 35 in kept",
  "05:55 again P1",
  "06:00 move C1 out 95 ft",
  "06:05 change P1 lure pearl-flasher",
  "~06:10 lost C1",
  "06:15 pull P1",
  "06:20 set PB out 8 colors",
  "06:21 profile 0 ft 62 F, 60 ft 50 F, 110 ft 42 F",
  "06:30 turn port heading 120",
  "07:00 touch C1 bottom 118 ft",
  'note "bait thick"',
  "04:00 back",
  "06:40 sett P1 out 72,5 ft",
  "06:41 set Q9 out 1e999 ft",
  '06:42 catch P1 "',
  "# nothing",
  'trip 2031-07-02 "Bright Penny" charter',
  "  target chinook",
];
const GEAR_LINES = [
  "lure orange-flake spoon 3.5 in",
  "rig P2 downrigger port cable rigger-wire ball round-12",
  "2031-06-01 ball round-15 sphere 15 lb",
  "calibrate C1 drag 1.1 counter 0.98",
  "nickname laker lake-trout",
  "  threshold gps-age 5 min",
  'boat "Second Wind"',
  "  units m kn C kg cm",
  "rig P1U stacked P1U",
  "rig rig rig",
];
const SCRAPS = [
  "",
  " ",
  "\n",
  "\r\n",
  "\r",
  "5",
  ".",
  '"',
  "#",
  "é",
  "🐟",
  "\u0000",
  "\ud800",
  "\ufeff",
  "ft",
  "\t",
  "~",
  "06:",
];

/** A text to begin a file with. */
export function randomText(random: Random, uri: string): string {
  const lines = linesOf(uri);
  const head = uri.endsWith(".gear") ? 'boat "Bright Penny"' : 'trip 2031-06-21 "Bright Penny" charter';
  const end = random.pick(["\n", "\n", "\n", "\r\n", "\r"]);
  const some = Array.from({ length: Math.floor(random.between(0, 12)) }, () => random.pick(lines));
  return [head, ...some].join(end) + random.pick(["", end]);
}

/** The next edit of a text. */
export function randomEdit(random: Random, document: TextDocument): Edit {
  const text = document.getText();
  const at = (offset: number) => document.positionAt(offset);
  const somewhere = () => Math.floor(random.next() * (text.length + 1));
  if (document.lineCount > LONGEST) {
    return { range: { start: at(somewhere()), end: at(text.length) }, text: "" };
  }
  const line = Math.floor(random.next() * document.lineCount);
  const start = { line, character: 0 };
  switch (random.pick(["line", "line", "line", "scrap", "scrap", "word", "cut", "drop"])) {
    case "line":
      return { range: { start, end: start }, text: `${random.pick(linesOf(document.uri))}\n` };
    case "scrap": {
      const position = at(somewhere());
      return { range: { start: position, end: position }, text: random.pick(SCRAPS) };
    }
    case "word": {
      const from = somewhere();
      const words = random.pick(linesOf(document.uri)).split(" ");
      return { range: { start: at(from), end: at(from + 3) }, text: random.pick(words) };
    }
    case "cut": {
      const from = somewhere();
      return { range: { start: at(from), end: at(from + Math.floor(random.between(0, 30))) }, text: "" };
    }
    default:
      return { range: { start, end: { line: line + 1, character: 0 } }, text: "" };
  }
}

function linesOf(uri: string): readonly string[] {
  return uri.endsWith(".gear") ? GEAR_LINES : TRIP_LINES;
}
