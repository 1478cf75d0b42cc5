/** Titles of the fixes of the day's checks, and what is said at the other lines they point to. */

/** What fixes are called. */
export const DAY_FIXES = {
  swap: "Swap the two numbers",
  onBottom: "It is meant to be on the bottom",
  write: (text: string): string => `Write ${text}`,
  writeOnAll: (text: string, count: number): string => `Write ${text} on all ${count} lines of that hour`,
  writeInTurn: (count: number): string =>
    `Write the offsets on all ${count} lines of that hour, in their turn`,
  writeLater: (text: string, count: number): string =>
    count === 1 ? `Write ${text}` : `Write ${text}, and the same on the ${count - 1} below`,
  dateBelow: (date: string, count: number): string =>
    count === 1 ? `Write ${date} before it` : `Write ${date} before the ${count} lines after midnight`,
  dateAbove: (date: string, count: number): string =>
    `Write ${date} before the ${count === 1 ? "line" : `${count} lines`} before midnight`,
  move: (count: number): string =>
    count === 1 ? "Move it to its place" : `Move the ${count} to their places`,
  sort: (count: number): string => `Move all ${count} lines that are out of order to their places`,
  writeKnots: (count: number): string => (count === 1 ? "Write it in knots" : `Write all ${count} in knots`),
  calibrate: (count: number): string => `Add what the ${count} readings of this trip say to the gear book`,
  giveRig: (piece: string, rig: string): string => `Write ${piece} on ${rig}'s line in the gear book`,
  addAbove: (line: string): string => `Add "${line}" above`,
} as const;

/** Remarks at related places. */
export const DAY_RELATED = {
  bottom: "bottom read here",
  lineAbove: "the line above",
  lineBelow: "the line below",
  depart: "left the dock here",
  return: "back at the dock here",
  putIn: "put in here",
  cameOut: "came out here",
  reading: "read here",
  otherTrip: "the other trip",
  out: "how much cable is out",
  holds: "what the rig holds",
  gearLine: (name: string): string => `${name} in the gear book`,
  statedHere: "said here",
  lineOf: (rig: string): string => `${rig} as it is out`,
} as const;
