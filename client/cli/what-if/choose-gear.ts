/** Which gear a what-if is about: the books, the boat, the day. */
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { parse } from "../../../grammar/parse.ts";
import { isCalendarDate } from "../../../grammar/stamp.ts";
import { nearest } from "../../../server/checks/nearest.ts";
import { GEAR_ENDING } from "../../../server/files/find-books.ts";
import { type BookFile, fileGear, linesOfBoat } from "../../../server/model/gear-lines.ts";
import { findJournals } from "../paths.ts";
import type { World } from "../world.ts";

/** The gear, or why it isn't clear. */
export type ChosenGear =
  | {
      readonly ok: true;
      readonly books: readonly BookFile[];
      readonly boat: string;
      readonly date: string;
      /** Another day might have other gear. */
      readonly isDated: boolean;
    }
  | { readonly ok: false; readonly why: string };

type Options = ReadonlyMap<string, string>;

/** A book without any dated line holds on this day, as on every other. */
const ANY_DAY = "2000-01-01";
/** For a book that names no boat, whose rigs are anybody's. */
const NAMELESS = "boat";

/** Chooses by the options, else the only boat of the books in reach and the latest day they speak of. */
export function chooseGear(options: Options, world: World): ChosenGear {
  const read = booksOf(options.get("book"), world);
  if (!read.ok) return read;
  const { books } = read;
  const boat = chooseBoat(books, options.get("boat")?.normalize("NFC"));
  if (!boat.ok) return boat;
  const named = options.get("date") ?? latestDay(books, boat.boat);
  const date = named ?? ANY_DAY;
  if (!isCalendarDate(date))
    return { ok: false, why: `--date: "${date}" is no day, write it like 2031-06-21.` };
  return { ok: true, books, boat: boat.boat, date, isDated: named !== undefined };
}

function booksOf(
  named: string | undefined,
  world: World,
): { ok: true; books: BookFile[] } | { ok: false; why: string } {
  if (named !== undefined) return namedBook(named, world);
  const { books, unread } = world.files.booksNear(join(world.cwd, "what-if.trip"));
  const [first] = unread;
  if (first !== undefined) return { ok: false, why: `${first.path} can't be used: ${first.why}` };
  if (books.length > 0) return { ok: true, books };
  const below = findJournals(["."], { endings: [GEAR_ENDING] }, world).files.map((file) => file.shown);
  const hint =
    below.length === 0
      ? "Name one: --book FILE"
      : `Name one, like --book ${/\s/u.test(below[0] ?? "") ? `"${below[0]}"` : below[0]}`;
  return { ok: false, why: `there is no gear book in this folder or above. ${hint}` };
}

function namedBook(named: string, world: World): ReturnType<typeof booksOf> {
  const path = resolve(world.cwd, named);
  const text = world.files.readText(path);
  return text.ok
    ? { ok: true, books: [{ uri: pathToFileURL(path).href, parse: parse(text.text) }] }
    : { ok: false, why: `${named} can't be used: ${text.why}` };
}

function chooseBoat(
  books: readonly BookFile[],
  asked: string | undefined,
): { ok: true; boat: string } | { ok: false; why: string } {
  const boats = [...new Set(books.flatMap((book) => fileGear(book).boats.map(({ boat }) => boat)))];
  const [only = NAMELESS, ...others] = boats;
  if (asked === undefined) {
    if (others.length === 0) return { ok: true, boat: only };
    return {
      ok: false,
      why: `which boat? Say --boat and one of ${boats.map((boat) => `"${boat}"`).join(", ")}.`,
    };
  }
  if (boats.length === 0 || boats.includes(asked)) return { ok: true, boat: asked };
  const [near = only] = nearest(asked, boats);
  return { ok: false, why: `--boat: no gear book describes "${asked}"; there is "${near}".` };
}

function latestDay(books: readonly BookFile[], boat: string): string | undefined {
  const days = linesOfBoat(books, boat).flatMap(({ line }) => line.date ?? []);
  return days.sort().at(-1);
}
