/** `deepwake format`: the canonical form, written in place. */
import { formatText } from "../../../grammar/format.ts";
import { parse } from "../../../grammar/parse.ts";
import { GEAR_ENDING, TRIP_ENDING } from "../../../server/files/find-books.ts";
import { countWords } from "../../../server/model/figures.ts";
import { complain } from "../complain.ts";
import { envelopeText } from "../envelope.ts";
import { type ExitCode, FINE, FOUND, gravest, UNUSABLE } from "../exit-codes.ts";
import { textOf } from "../journals.ts";
import type { FormatFileJson } from "../output-schemas.ts";
import { askedFor, type NamedFile } from "../paths.ts";
import { progressOf } from "../progress.ts";
import { printable } from "../render/printable.ts";
import { widthOf } from "../render/terminal.ts";
import { wrap } from "../render/wrap.ts";
import { type Call, INPUT_OPTIONS, type Verb } from "../verb.ts";
import type { World } from "../world.ts";

export const FORMAT: Verb = {
  name: "format",
  summary: "write journals and gear books the one canonical way",
  usage: ["format [FILE or FOLDER]...", "format --check [FILE or FOLDER]...", "format -"],
  about: [
    "Changes blanks and the spelling of words and units, line by line. Numbers, names, comments and notes stay as typed, and so does any line with a mistake in it.",
    "A file is replaced whole or not at all, and left alone when nothing changes or it isn't text. Without a path it is the folder you are in; - reads standard input and prints the result.",
  ],
  options: {
    check: { doc: "Change nothing; list what would change, and end with 1 if anything would." },
    ...INPUT_OPTIONS,
  },
  examples: [
    ["deepwake format trips/2031-06-21.trip", "one journal, in place"],
    ["deepwake format --check .", "in a commit hook"],
    ["deepwake format - < draft.trip > clean.trip", "as a filter"],
  ],
  run: formatVerb,
};

async function formatVerb(call: Call, world: World): Promise<ExitCode> {
  const found = askedFor(call, [TRIP_ENDING, GEAR_ENDING], world);
  const isInput = found.files.some((file) => file.isInput);
  if (isInput && call.paths.length > 1) {
    complain(world, "- stands alone: standard input is printed, files are changed in place.");
    return UNUSABLE;
  }
  const isCheck = call.switches.has("check");
  const entries: FormatFileJson[] = [];
  const progress = progressOf(world, found.files.length);
  for (const file of found.files) {
    progress.step();
    entries.push(await formatFile(file, isCheck, world));
  }
  progress.done();
  entries.push(...found.unusable.map(({ shown, why }) => unusable(shown, why)));
  report(entries, isInput && !isCheck, call, world);
  return gravest(
    isCheck && entries.some((entry) => entry.isChanged) ? FOUND : FINE,
    entries.some((entry) => entry.error !== undefined) ? UNUSABLE : FINE,
  );
}

const unusable = (path: string, error: string): FormatFileJson => ({
  path,
  isChanged: false,
  isWritten: false,
  linesLeft: 0,
  error,
});

async function formatFile(file: NamedFile, isCheck: boolean, world: World): Promise<FormatFileJson> {
  const before = await textOf(file, world);
  if (!before.ok) return unusable(file.shown, before.why);
  const parsed = parse(before.text);
  const text = formatText(parsed);
  const isChanged = text !== before.text;
  const linesLeft = parsed.issues.filter((issue) => issue !== null).length;
  const seen = { path: file.shown, isChanged, isWritten: false, linesLeft };
  if (file.isInput) return { ...seen, text };
  if (!isChanged || isCheck) return seen;
  const why = world.files.replaceText(file.path, before.text, text);
  return why === undefined ? { ...seen, isWritten: true } : { ...unusable(file.shown, why), isChanged };
}

function report(entries: readonly FormatFileJson[], isFilter: boolean, call: Call, world: World): void {
  for (const { path, error } of entries) {
    if (error !== undefined) complain(world, `${path} is left as it is: ${error}`);
  }
  if (call.switches.has("json")) {
    world.out.write(envelopeText("format", world, { files: entries }));
    return;
  }
  if (isFilter) {
    for (const { text } of entries) world.out.write(text ?? "");
    return;
  }
  const lines = formatReport(entries, call.switches.has("check"));
  world.out.write(
    lines.flatMap((line) => wrap(line, widthOf(world.out), 2).map((one) => `${one}\n`)).join(""),
  );
}

/** The files that changed or would, one a line, and how many; then the lines that nothing could be done for. */
function formatReport(entries: readonly FormatFileJson[], isCheck: boolean): string[] {
  const usable = entries.filter((entry) => entry.error === undefined);
  if (usable.length === 0) return [];
  const changed = usable.filter((entry) => entry.isChanged);
  const files = countWords(usable.length, "file");
  const count = changed.length === 0 ? "none" : String(changed.length);
  const last = isCheck ? `${count} of ${files} would change.` : `${count} of ${files} changed.`;
  const left = usable.reduce((sum, entry) => sum + entry.linesLeft, 0);
  return [...changed.map((entry) => printable(entry.path)), last, ...(left === 0 ? [] : [leftLine(left)])];
}

function leftLine(count: number): string {
  const what =
    count === 1 ? "1 line is left as it is: it can't" : `${count} lines are left as they are: they can't`;
  return `${what} be read (deepwake check says why).`;
}
