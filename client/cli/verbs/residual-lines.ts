/** Each reading against the fit, for people: a row each, or two lines each where the screen is narrow. */
import type { FittedGroup } from "../../../server/analysis/fitted-group.ts";
import { lengthWords, speedWords } from "../../../server/model/figures.ts";
import { isBehind, momentWords, offWords } from "../../../server/reports/calibration-sentences.ts";
import { mostResidualM, residualStrip } from "../../../server/reports/residual-picture.ts";
import { table } from "../render/table.ts";
import { wrap } from "../render/wrap.ts";

/** More rows than this and only the farthest off are shown. */
const MOST_ROWS = 30;
/** A strip's columns, odd numbers: at most, at least beside the words of a row, and at least on a line below them. */
const STRIP = 21;
const LEAST_IN_ROW = 11;
const LEAST_BELOW = 7;

/** A reading in words, and its strip for a number of columns. */
interface Reading {
  readonly when: string;
  readonly out: string;
  readonly speed: string;
  readonly read: string;
  readonly off: string;
  readonly strip: (columns: number) => string;
}

/** The picture's title and lines; nothing where nothing was fitted. */
export function residualLines(group: FittedGroup, width: number, faint: (text: string) => string): string[] {
  const { fit, readings } = group;
  if (!fit.ok) return [];
  const { gear } = readings[0];
  const mostM = mostResidualM(group);
  const size = (one: (typeof fit.readings)[number]): number => Math.abs(one.residualM);
  const farthest = fit.readings.toSorted((a, b) => size(b) - size(a)).slice(0, MOST_ROWS);
  const shown = farthest
    .toSorted((a, b) => a.index - b.index)
    .map((one): Reading => {
      const reading = readings[one.index] ?? readings[0];
      return {
        when: momentWords(reading),
        out: lengthWords(gear, reading.counterM),
        speed: speedWords(gear, reading.speed.value),
        read: `${lengthWords(gear, reading.reading.measuredM)}${isBehind(reading) ? " back" : ""}`,
        off: offWords(gear, one.residualM, isBehind(reading)),
        strip: (columns) => residualStrip(one.residualM, mostM, columns, one.weight < 1),
      };
    });
  const some =
    shown.length < fit.readings.length ? `, the ${shown.length} farthest of ${fit.readings.length}` : "";
  const title = `  Measured against fitted, ${lengthWords(gear, mostM)} to each side${some}:`;
  const lines = rowLines(shown, width - 2, faint) ?? pairLines(shown, width - 2);
  return [...wrap(title, width, 4), ...lines.map((line) => `  ${line}`)];
}

/** A row a reading, with the widest strip that fits; undefined where not even a short one does. */
function rowLines(
  shown: readonly Reading[],
  width: number,
  faint: (text: string) => string,
): string[] | undefined {
  const columns = [
    { head: "" },
    { head: "out", side: "right" },
    { head: "speed", side: "right" },
    { head: "read", side: "right" },
    { head: "" },
    { head: "" },
  ] as const;
  const cells = ({ when, out, speed, read, strip, off }: Reading, size: number): string[] => [
    when,
    out,
    speed,
    read,
    strip(size),
    off,
  ];
  return widestStrip(LEAST_IN_ROW, (size) =>
    table(
      columns,
      shown.map((one) => ({ cells: cells(one, size) })),
      width,
      faint,
    ),
  );
}

/** When, how much was out and how fast it went; below it the strip, if there is room, what was read and how far off. */
function pairLines(shown: readonly Reading[], width: number): string[] {
  const plain = (text: string): string => text;
  const left = { head: "" } as const;
  const right = { head: "", side: "right" } as const;
  const heads = table(
    [left, right, right],
    shown.map(({ when, out, speed }) => ({ cells: [when, `${out} out`, speed] })),
    width,
    plain,
  )?.slice(1);
  const below = widestStrip(LEAST_BELOW, (size) =>
    table(
      [left, right, left],
      shown.map(({ strip, read, off }) => ({ cells: [strip(size), read, off] })),
      width - 2,
      plain,
    ),
  )?.slice(1);
  return shown.flatMap(({ when, out, speed, read, off }, i) => [
    ...wrap(heads?.[i] ?? `${when}  ${out} out  ${speed}`, width, 2),
    ...wrap(`  ${below?.[i] ?? `${read}, ${off}`}`, width, 4),
  ]);
}

/** What `made` answers for the widest strip with which it answers at all. */
function widestStrip(least: number, made: (columns: number) => string[] | undefined): string[] | undefined {
  for (let columns = STRIP; columns >= least; columns -= 2) {
    const lines = made(columns);
    if (lines !== undefined) return lines;
  }
  return undefined;
}
