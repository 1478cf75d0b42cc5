/** What the reader found wrong with lines, each under its own check, with the ways to mend it. */

import { isRead } from "../../grammar/is-read.ts";
import type { Issue } from "../../grammar/issues.ts";
import type { Line } from "../../grammar/journal.ts";
import { VOCABULARY } from "../../grammar/vocabulary.ts";
import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import { amountAfter } from "./amount-after.ts";
import { carriedOver } from "./carried-over.ts";
import { NUMBER_FORMAT, SYNTAX, UNIT_MISMATCH, UNKNOWN_WORD } from "./catalog/language.ts";
import { FIX_TITLES } from "./catalog/titles.ts";
import type { CheckContext, Fix, Place, Rule } from "./check.ts";
import { issueAfter, mendsLine, renameFixes, replace } from "./edits.ts";
import { nearest } from "./nearest.ts";
import { ownerOf } from "./owners.ts";
import { dimensionAt, mismatchFixes, nearUnits, unitOf } from "./read-issue-units.ts";
import { rowOf } from "./sound-lines.ts";
import { isMending, measuresMeant, textMeant } from "./stray-words.ts";
import { syntaxFixes } from "./syntax-fixes.ts";
import { verbLess, verbOfTrade } from "./verb-meant.ts";
import { writeFixes } from "./way.ts";
import { wordOfTrade } from "./words-behind.ts";

/** Longer lists of words are no help in a message. */
const MOST_CHOICES = 8;

type IssueOf<Code extends Issue["code"]> = Extract<Issue, { code: Code }>;

/** Reports the one issue a line may have. */
export const readIssues: Rule = (context) => {
  const { parse } = context.analysis;
  parse.issues.forEach((issue, lineIndex) => {
    const line = parse.journal.lines[lineIndex];
    if (issue === null || line === undefined) return;
    const place = { lineIndex, start: issue.span[0], stop: Math.max(issue.span[1], issue.span[0] + 1) };
    if (issue.code === "syntax") reportSyntax(context, issue, line, place);
    else if (issue.code === "unknown-word") reportWord(context, issue, line, place);
    else if (issue.code === "number-format") reportNumber(context, issue, place);
    else reportMismatch(context, issue, line, place);
  });
};

function reportSyntax(context: CheckContext, issue: IssueOf<"syntax">, line: Line, place: Place): void {
  const carried = issue.reason === "repeated" ? carriedOver(context.analysis, line, place) : undefined;
  if (carried !== undefined) {
    const { typed, way } = carried;
    const data = { ...issue, typed, meant: [way.text], isOneMeasure: true };
    context.report(SYNTAX, place, data, { fixes: writeFixes([way]) });
    return;
  }
  const measures =
    amountAfter(context.analysis, issue, line, place) ?? measuresMeant(context.analysis, issue, line, place);
  const typed = measures?.typed ?? line.raw.slice(place.start, place.stop);
  const meant = measures?.ways.map((way) => way.text) ?? [];
  const fixes =
    meant.length > 0 ? writeFixes(measures?.ways ?? []) : syntaxFixes(context.analysis, issue, place);
  const isParted = issue.reason === "out-of-place" && isPartedFrom(context.analysis, issue.belongs, place);
  context.report(SYNTAX, place, { ...issue, typed, meant, isParted }, { fixes });
}

/** True for an indented line whose opener stands above, with lines between that ended what may be said under it. */
function isPartedFrom({ parse }: JournalAnalysis, opener: string, { lineIndex, start }: Place): boolean {
  if (start === 0 || parse.blocks[lineIndex] !== "margin") return false;
  const above = parse.journal.lines.slice(0, lineIndex);
  const last = above.findLast((line) => line.kind === "fact" && ["boat", "trip"].includes(line.verb));
  return last?.kind === "fact" && last.verb === opener;
}

function reportWord(context: CheckContext, issue: IssueOf<"unknown-word">, line: Line, place: Place): void {
  const { role, word, verb, candidates } = issue;
  const traded =
    role === "item" ? wordOfTrade(line, word, place) : role === "verb" ? verbOfTrade(word) : undefined;
  const near =
    role === "unit"
      ? nearUnits(word, dimensionAt(line, place.start))
      : traded === undefined
        ? nearest(word, candidates.map(canonical))
        : [traded];
  const said = role === "verb" && traded === undefined ? verbLess(context.analysis, line, place) : undefined;
  if (said !== undefined && said.verbs.length > 0) {
    const { verbs, ways } = said;
    const data = { role, word, verb, choices: [], near: [], saidOn: verbs };
    context.report(UNKNOWN_WORD, place, data, { fixes: writeFixes(ways) });
    return;
  }
  const choices = role === "item" && candidates.length <= MOST_CHOICES ? candidates : [];
  const quoted = role === "item" && near.length === 0 ? textMeant(context.analysis, line, place) : undefined;
  const renames = renameFixes(context.analysis.uri, place, near);
  const fixes = traded === undefined ? renames : renames.filter((fix) => isMending(context.analysis, fix));
  const data = { role, word, verb, choices: quoted?.isName ? [] : choices, near, quoted };
  context.report(UNKNOWN_WORD, place, data, { fixes: [...fixes, ...writeFixes(quoted ? [quoted] : [])] });

  /** A verb's other spellings lead to the one that the formatter writes. */
  function canonical(candidate: string): string {
    if (role !== "verb") return candidate;
    const places = ["margin", "trip", "boat"] as const;
    return places.map((at) => VOCABULARY.find(at, candidate)?.verb).find((found) => found) ?? candidate;
  }
}

function reportNumber(context: CheckContext, issue: IssueOf<"number-format">, place: Place): void {
  const { analysis } = context;
  const { text } = issue;
  const mend = pointMeant(analysis, issue, place) ?? issue.mend;
  const edit = mend === null ? undefined : replace(analysis.uri, place, mend);
  const after = edit === undefined ? undefined : issueAfter(analysis, edit);
  const oneFigure = after?.code === "syntax" && after.reason === "no-range" ? after.word : undefined;
  const fixes: Fix[] =
    edit === undefined || oneFigure !== undefined || !mendsLine(analysis, edit)
      ? []
      : [{ title: FIX_TITLES.write(edit.text), edits: [edit], isPreferred: true }];
  context.report(NUMBER_FORMAT, place, { text, mend, example: "72.5", oneFigure }, { fixes });
}

/** `0-61` on a line of depths and temperatures, in the boat's units. */
function pointMeant(
  analysis: JournalAnalysis,
  { text }: IssueOf<"number-format">,
  { lineIndex }: Place,
): string | undefined {
  const line = analysis.parse.journal.lines[lineIndex];
  const isOfPoints = line !== undefined && isRead(line) && rowOf(line)?.needs.includes("point");
  const [, depth, temperature] = /^(\d+(?:\.\d+)?)[-–—/:](\d+(?:\.\d+)?)$/u.exec(text) ?? [];
  if (isOfPoints !== true || depth === undefined) return undefined;
  const units = ownerOf(analysis, lineIndex)?.gear.defaults.byDimension;
  const [length, degrees] = [units?.get("length")?.unit ?? "ft", units?.get("temperature")?.unit ?? "F"];
  return `${depth} ${length} ${temperature} ${degrees}`;
}

function reportMismatch(
  context: CheckContext,
  issue: IssueOf<"unit-mismatch">,
  line: Line,
  place: Place,
): void {
  const unit = unitOf(issue.unit);
  if (unit === undefined) return;
  const data = { word: issue.word, unit: issue.unit, found: unit.dimension, wants: issue.wants };
  context.report(UNIT_MISMATCH, place, data, { fixes: mismatchFixes(context, issue, line, place) });
}
