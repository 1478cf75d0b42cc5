/** A language service over one document and the books around it, for the tests of its features. */
import type { Position } from "vscode-languageserver-types";
import { parse } from "../../grammar/parse.ts";
import type { SeverityChoices } from "../../server/checks/run-checks.ts";
import { LanguageService, type ServiceHost } from "../../server/service/language-service.ts";

/** Where the document stands. */
export const URI = "file:///season/2031-06-21.trip";
/** Where its book stands. */
export const BOOK_URI = "file:///season/bright-penny.gear";

/** A small boat: two downriggers, a stacked rod, a leadcore. */
export const BOOK = `boat "Bright Penny"
  units ft mph F lb in
  zone America/Detroit

cable rigger-wire steel diameter 0.9 mm
ball round-12 sphere 12 lb
lure glow-spoon spoon 4 in
lure "Ash Wednesday" spoon 3.75 in
lure pearl-flasher flasher 11 in

rig C1 downrigger center cable rigger-wire ball round-12 probe 1.25 ft
rig P1 downrigger port cable rigger-wire ball round-12 release 2 ft
rig P1U stacked P1
rig PB leadcore port holds 10 colors

nickname king chinook
spot "Anvil Bank" at 44 44.0N 086 25.9W
upkeep engine-oil every 100 h engine
2031-06-30 rig P1 downrigger port cable rigger-wire ball round-12 release 3 ft
`;

/** A morning with a probe reading, so that depths are known. */
export const MORNING = `trip 2031-06-21 "Bright Penny" charter
  anglers 4
  guest G1 "Marv Tessler"
  target lake-trout

05:00 profile 0 ft 61 F, 50 ft 52 F, 100 ft 43 F
05:14 set C1 out 90 ft setback 20 ft lure "Ash Wednesday"
05:18 set P1 out 72 ft setback 15 ft lure glow-spoon
05:45 probe C1 depth 82 ft temp 45.5 F speed 2.6 mph
05:58 strike P1
06:14 catch P1 king 18 lb 35 in kept by G1
`;

/** Opens a text as the one document, with a book in its folder. */
export function openService(
  text: string,
  { book = BOOK, severities = new Map(), ...host }: ServiceSetup = {},
): LanguageService {
  const books = book === "" ? [] : [{ uri: BOOK_URI, parse: parse(book) }];
  const service = new LanguageService({ booksNear: () => books, severities: () => severities, ...host });
  service.update(URI, 1, text);
  return service;
}

/** The book beside the document, the severities chosen, and what else the world around the service tells. */
interface ServiceSetup extends Pick<ServiceHost, "now" | "thresholds" | "today"> {
  readonly book?: string;
  readonly severities?: SeverityChoices;
}

/** The position of an offset in a text with any line ends. */
export function positionAt(text: string, offset: number): Position {
  const before = text.slice(0, offset).split(/\r\n|\n|\r/u);
  return { line: before.length - 1, character: before.at(-1)?.length ?? 0 };
}

/** A range of every line. */
export const EVERYTHING = { start: { line: 0, character: 0 }, end: { line: 1_000_000, character: 0 } };
