/** Questions asked of a file's lines, opener by opener; a trip that stayed the very same is not asked again. */
import { isRead } from "../../grammar/is-read.ts";
import type { ReadLine } from "../../grammar/journal.ts";
import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import type { Gear } from "../model/gear-types.ts";
import { type Owner, ownersOf } from "./owners.ts";
import type { SoundLine } from "./sound-lines.ts";

/** The lines under an opener, or those above the first. */
export interface Stretch {
  readonly analysis: JournalAnalysis;
  readonly owner: Owner | undefined;
  /** Line numbers, half-open. */
  readonly start: number;
  readonly stop: number;
}

/**
 * Looks for something in a stretch. What it finds under a trip may depend on nothing but the trip's lines, their
 * numbers, its gear and whether a book describes its boat.
 */
export type Question<T> = (stretch: Stretch) => T;

const answersOfOwner = new WeakMap<Owner, Map<Question<unknown>, unknown>>();

/** The answers for each opener of the file, in order. */
function underOpeners<T>(analysis: JournalAnalysis, question: Question<T>): T[] {
  const owners = ownersOf(analysis);
  const starts = [0, ...owners.map((owner) => owner.openerIndex)];
  return starts.map((start, n) => {
    const owner = owners[n - 1];
    const stop = starts[n + 1] ?? analysis.parse.journal.lines.length;
    return answerIn({ analysis, owner, start, stop }, question);
  });
}

function answerIn<T>(stretch: Stretch, question: Question<T>): T {
  const { owner } = stretch;
  return owner?.trip === undefined ? question(stretch) : answerKept(owner, question, () => question(stretch));
}

/** The same where each answer is a list, as one list. */
export function allUnderOpeners<T>(
  analysis: JournalAnalysis,
  question: Question<readonly T[]>,
): readonly T[] {
  return underOpeners(analysis, question).flat();
}

function answerKept<T>(owner: Owner, question: Question<T>, ask: () => T): T {
  let answers = answersOfOwner.get(owner);
  if (answers === undefined) {
    answers = new Map();
    answersOfOwner.set(owner, answers);
  }
  if (!answers.has(question)) answers.set(question, ask());
  return answers.get(question) as T;
}

/**
 * Looks for something on each line by itself. What it finds on a trip's line may depend on nothing but the line, its
 * number and the trip's gear; most lines hold nothing, and are not looked at again while that is the same.
 */
export function onEachLine<T>(
  look: (sound: SoundLine, stretch: Stretch) => readonly T[],
): Question<readonly T[]> {
  const empty = new WeakMap<ReadLine, Gear>();
  return (stretch) => {
    const { owner } = stretch;
    const gear = owner?.trip !== undefined && owner.isDescribed ? owner.gear : undefined;
    const found: T[] = [];
    for (const sound of soundLinesIn(stretch)) {
      if (gear !== undefined && empty.get(sound.line) === gear) continue;
      const here = look(sound, stretch);
      if (here.length > 0) found.push(...here);
      else if (gear !== undefined) empty.set(sound.line, gear);
    }
    return found;
  };
}

/** The lines of a stretch whose words were read without an issue. */
export function soundLinesIn(stretch: Stretch): readonly SoundLine[] {
  return answerIn(stretch, readSoundLines);
}

function readSoundLines({ analysis: { parse }, start, stop }: Stretch): SoundLine[] {
  const found: SoundLine[] = [];
  for (let lineIndex = start; lineIndex < stop; lineIndex++) {
    const line = parse.journal.lines[lineIndex];
    if (line !== undefined && isRead(line) && parse.issues[lineIndex] === null)
      found.push({ lineIndex, line });
  }
  return found;
}

/** The property lines of a file that were read without an issue, in order. */
export function soundProperties(analysis: JournalAnalysis): readonly SoundLine[] {
  return allUnderOpeners(analysis, propertiesIn);
}

function propertiesIn(stretch: Stretch): SoundLine[] {
  return soundLinesIn(stretch).filter(({ line }) => line.kind === "property");
}
