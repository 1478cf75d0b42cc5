/** Which pictures are taken: what a picture is asked for with, and those that are taken when nothing is asked for. */
import { readFileSync } from "node:fs";
import type { Pose } from "./suite/pose.ts";

/** A picture as it is asked for; the place to hover over is a text of the file or LINE:COLUMN. */
export interface Shot {
  readonly file: string;
  readonly hover: string | undefined;
  readonly commands: readonly string[];
  readonly expect: string | undefined;
  readonly name: string;
}

/** What is photographed when nothing is asked for. */
export const usualShots: readonly Shot[] = [
  {
    file: "trips/2031-06-21.trip",
    hover: "06:18 ag",
    commands: [],
    expect: "↓ ball",
    name: "journal",
  },
  {
    file: "wrong/2031-07-04.trip",
    hover: undefined,
    commands: ["workbench.actions.view.problems"],
    expect: "↓ ball",
    name: "wrong",
  },
];

/** Answers the place that `text` means in the file: LINE:COLUMN, or the first occurrence of the text. */
export function readPlace(text: string, file: string): Pose["cursor"] {
  const numbers = /^(\d+):(\d+)$/.exec(text);
  if (numbers !== null) return { line: Number(numbers[1]) - 1, character: Number(numbers[2]) - 1 };
  const content = readFileSync(file, "utf8");
  const index = content.indexOf(text);
  if (index < 0) throw new Error(`${file} holds no ${JSON.stringify(text)}.`);
  const before = content.slice(0, index).split(/\r\n|\n|\r/);
  return { line: before.length - 1, character: before.at(-1)?.length ?? 0 };
}
