/** What fixes are called, and what is said at the other places a finding points to. */

/** Titles of fixes. */
export const FIX_TITLES = {
  change: (word: string): string => `Change to ${word}`,
  write: (text: string): string => `Write ${text}`,
  add: (line: string): string => `Add "${line}" to the gear book`,
  addAndCheck: (line: string): string => `Add "${line}" to the gear book, and check what it says`,
  addBoat: (line: string): string => `Open its gear here: ${line}`,
  remove: (text: string): string => `Take "${text}" out`,
  closeQuote: "Close the quote",
  indent: "Indent it",
  unindent: "Move it to the margin",
  toComment: (text: string): string => `Move ${text} into a comment`,
  commentOut: "Make this line a comment",
  removeControls: "Take the invisible characters out",
} as const;

/** Remarks at related places. */
export const RELATED = {
  book: (boat: string): string => `the gear of "${boat}"`,
  nearest: "this one?",
  firstDefinition: "first defined here",
  otherOpener: "also opened here",
  heldFrom: "defined here",
  ring: "part of the ring",
} as const;

/** Names that can't be given, and what they mean in a log. */
export const RESERVED_NAMES: ReadonlyMap<string, string> = new Map([
  ["rig all", "every rig in the water"],
  ["rig unknown", "that nobody saw which rod it was"],
  ["lure none", "that there is none on"],
  ["ball none", "that there is none on"],
]);
