/** What is said when a name can't be given. */
import { quote } from "../../../grammar/print.ts";

/** Where something stands, as a person looks for it. */
export interface NamedSpot {
  /** The file's name without its folders. */
  readonly file: string;
  /** From 1. */
  readonly line: number;
}

const at = ({ file, line }: NamedSpot): string => `${file}, line ${line}`;

/** What things are called by their kind. */
const KIND_WORDS: Readonly<Record<string, string>> = {
  ball: "a ball",
  boat: "a boat",
  cable: "a cable",
  contest: "a tournament",
  grid: "a grid",
  group: "a limit",
  guest: "a guest",
  harbor: "a harbor",
  lure: "a lure",
  mast: "a mast",
  person: "somebody aboard",
  rig: "a rig",
  species: "a fish",
  spot: "a place",
  upkeep: "something on the upkeep list",
};

/** Sentences of a rename that is not done. */
export const RENAME_REFUSALS = {
  empty: "A name needs at least one letter, digit or sign.",
  manyLines: "A name stands on one line: take the line break or tab out.",
  controls: "The new name holds invisible characters that change its reading direction; type it again.",
  reserved: (name: string, kind: string, meaning: string): string =>
    `${quote(name)} can't be the name of ${wordsOf(kind)}: in a log it means ${meaning}.`,
  crew: (name: string): string =>
    `${quote(name)} can't be a guest's: behind "by" it means the ${name} of the trip.`,
  fish: (name: string): string =>
    `${quote(name)} is what this fish is called everywhere. For a word of your own write a line in the gear book: nickname WORD ${name}`,
  otherFish: (name: string, species: string): string =>
    `${quote(name)} already means ${species} everywhere; as a nickname for another fish it would be misread.`,
  taken: (name: string, kind: string, spot: NamedSpot): string =>
    `${quote(name)} is already the name of ${wordsOf(kind)}: ${at(spot)}. Two things with one name could not be told apart.`,
  alike: (name: string, other: string, kind: string, spot: NamedSpot): string =>
    `${quote(name)} differs only in capitals from ${quote(other)}, ${wordsOf(kind)}: ${at(spot)}. One would be read for the other.`,
  misread: (name: string, spot: NamedSpot): string =>
    `With the name ${quote(name)} a line would read differently: ${at(spot)}. Nothing was changed.`,
  unread: (file: string): string =>
    `${file} can't be read just now and would keep the old name. Nothing was changed.`,
} as const;

function wordsOf(kind: string): string {
  return KIND_WORDS[kind] ?? `a ${kind}`;
}
