/** Checks of names: whether something is defined under them, and once only. */
import { check } from "../check.ts";
import { didYouMean, shown } from "./sentences.ts";

/** A name that no book in reach defines. */
export interface UnknownName {
  readonly name: string;
  /** Undefined in a book without a boat. */
  readonly boat: string | undefined;
  readonly near: readonly string[];
  /** The book has it from that day on, after the line's. */
  readonly from: string | undefined;
  /** The one name that differs in capitals alone, as which it is read. */
  readonly meant?: string | undefined;
}

const inBook = (boat: string | undefined): string =>
  boat === undefined ? "in the gear books in reach" : `in the gear of ${shown(boat)}`;

const unknownName =
  (kind: string) =>
  ({ name, boat, near, from, meant }: UnknownName): string => {
    if (meant !== undefined)
      return `The ${kind} is called ${shown(meant)} ${inBook(boat)}; ${shown(name)} is read as that.`;
    return from === undefined
      ? `No ${kind} ${shown(name)} ${inBook(boat)}.${didYouMean(near)}`
      : `The ${kind} ${shown(name)} is ${inBook(boat)} only from ${from} on, after this line's day.`;
  };

const undefinedName = { isDoubt: false, isFixable: true, since: "0.1.0" } as const;

/** A rig that the boat doesn't have. */
export const UNKNOWN_RIG = check<UnknownName & { mistakenFor?: "all" | "species"; verb?: string }>({
  slug: "unknown-rig",
  severities: ["error", "warning", "hint"],
  summary: "A rig is not defined in the gear books in reach.",
  quietWhen: "no book in reach describes the boat",
  ...undefinedName,
  message: ({ mistakenFor, verb, ...use }) => {
    if (mistakenFor === "all") return `Only pull takes all; ${verb} needs one rig's name.`;
    if (mistakenFor === "species") return `${verb} needs the rig before ${use.name}.`;
    return unknownName("rig")(use);
  },
});

/** A cable that the boat doesn't have. */
export const UNKNOWN_CABLE = check<UnknownName>({
  slug: "unknown-cable",
  severities: ["error", "warning", "hint"],
  summary: "A cable or line is not defined in the gear books in reach.",
  quietWhen: "no book in reach describes the boat",
  ...undefinedName,
  message: unknownName("cable"),
});

/** A ball that the boat doesn't have. */
export const UNKNOWN_BALL = check<UnknownName>({
  slug: "unknown-ball",
  severities: ["error", "warning", "hint"],
  summary: "A ball is not defined in the gear books in reach.",
  quietWhen: "no book in reach describes the boat",
  ...undefinedName,
  message: unknownName("ball"),
});

/** A lure that isn't written down. */
export const UNKNOWN_LURE = check<UnknownName>({
  slug: "unknown-lure",
  severities: ["hint"],
  summary: "A lure is not defined in the gear books in reach.",
  quietWhen: "the books in reach list no lures at all",
  ...undefinedName,
  message: unknownName("lure"),
});

/** A trip of a boat that no book describes. */
export const UNKNOWN_BOAT = check<{ boat: string; near: readonly string[] }>({
  slug: "unknown-boat",
  severities: ["error"],
  summary: "No gear book in reach describes the trip's boat.",
  quietWhen: "rigs are defined without any boat, or the name lacks its quotes, which is told instead",
  ...undefinedName,
  message: ({ boat, near }) =>
    `No gear book in reach describes ${shown(boat)}: its rigs and units can't be checked, and no depth computed.${didYouMean(near.map(shown))}`,
});

/** A fish that the language and the book don't know. */
export const UNKNOWN_SPECIES = check<{
  name: string;
  verb: string;
  near: readonly string[];
  /** The name's place was taken by something that is none. */
  isMissing: boolean;
}>({
  slug: "unknown-species",
  severities: ["warning"],
  summary: "A species is neither known nor a nickname of the book.",
  quietWhen: "the book has a band, limit or nickname for it",
  isDoubt: true,
  isFixable: true,
  since: "0.1.0",
  message: ({ name, verb, near, isMissing }) =>
    isMissing
      ? `${verb} needs the species${verb === "lost" ? ", or the word fish," : ""} before ${shown(name)}.`
      : `${shown(name)} is no species known here, and no nickname in the gear book.${didYouMean(near)}`,
});

/** A check that there isn't. */
export const UNKNOWN_CHECK = check<{ name: string; near: readonly string[] }>({
  slug: "unknown-check",
  severities: ["warning"],
  summary: "A quiet line names a check that there isn't.",
  quietWhen: "",
  ...undefinedName,
  message: ({ name, near }) => `No check is called ${shown(name)}; nothing is silenced.${didYouMean(near)}`,
});

/** A threshold that there isn't. */
export const UNKNOWN_THRESHOLD = check<{ name: string; near: readonly string[] }>({
  slug: "unknown-threshold",
  severities: ["warning"],
  summary: "A threshold line names a threshold that there isn't.",
  quietWhen: "",
  ...undefinedName,
  message: ({ name, near }) =>
    `No threshold is called ${shown(name)}; nothing is changed.${didYouMean(near)}`,
});

/** A time zone that there isn't. */
export const UNKNOWN_ZONE = check<{ name: string; near: readonly string[] }>({
  slug: "unknown-zone",
  severities: ["error"],
  summary: "A time zone is not one of the known ones.",
  quietWhen: "",
  ...undefinedName,
  message: ({ name, near }) =>
    `${shown(name)} is no time zone; one is written like America/Detroit.${didYouMean(near)}`,
});

/** Where one of two definitions stands; null stands for the line that is marked. */
export interface DefinitionSpot {
  readonly line: number;
  /** Undefined in the same file. */
  readonly file: string | undefined;
}

const spotWords = (spot: DefinitionSpot | null): string => {
  if (spot === null) return "here";
  return spot.file === undefined ? `in line ${spot.line}` : `in line ${spot.line} of ${spot.file}`;
};

/** One name, two definitions. */
export const DUPLICATE_DEFINITION = check<{
  verb: string;
  name: string;
  from: string | null;
  places: readonly (DefinitionSpot | null)[];
}>({
  slug: "duplicate-definition",
  severities: ["error"],
  summary: "One name is defined twice for one boat and day, or one guest's id for one trip.",
  quietWhen: "the definitions hold from different days",
  ...undefinedName,
  message: ({ verb, name, from, places }) => {
    const since = from === null ? "" : ` from ${from} on`;
    const advice =
      verb === "boat"
        ? "Open it once, and write all of its gear below."
        : verb === "guest"
          ? "Give each guest an id of their own."
          : "Keep one, or start the newer with the date it holds from.";
    return `${verb} ${shown(name)} is defined twice${since}, ${places.map(spotWords).join(" and ")}. ${advice}`;
  },
});

/** Rigs that are stacked on each other. */
export const STACKED_IN_A_RING = check<{ ring: readonly string[] }>({
  slug: "stacked-in-a-ring",
  severities: ["error"],
  summary: "A rig is stacked on itself, directly or by way of others.",
  quietWhen: "",
  isDoubt: false,
  isFixable: false,
  since: "0.1.0",
  message: ({ ring: [rig = "", ...others] }) =>
    others.length === 0
      ? `${rig} is stacked on itself; name the rig whose cable it is clipped to.`
      : `${rig} is stacked on ${others.join(", that on ")}, that on ${rig} again: one of them has to have a cable of its own.`,
});

/** A name that means something else. */
export const RESERVED_NAME = check<{ name: string; verb: string; meaning: string }>({
  slug: "reserved-name",
  severities: ["error"],
  summary: "A rig, lure or ball is called by a word that means something else in a log.",
  quietWhen: "",
  isDoubt: false,
  isFixable: false,
  since: "0.1.0",
  message: ({ name, verb, meaning }) => `No ${verb} can be called ${name}: in a log it means ${meaning}.`,
});

/** Something happened on no trip. */
export const NO_TRIP = check<{ verb: string; count: number }>({
  slug: "no-trip",
  severities: ["error"],
  summary: "Events stand above the first trip line.",
  quietWhen: "the line is a note or serviced, which a gear book may hold",
  isDoubt: false,
  isFixable: false,
  since: "0.1.0",
  message: ({ verb, count }) =>
    count === 1
      ? `Which trip is this ${verb} from? Write the trip's line above it, like: trip 2031-06-21 "Bright Penny"`
      : `Which trip are these ${count} lines from? Write its line above them, like: trip 2031-06-21 "Bright Penny"`,
});
