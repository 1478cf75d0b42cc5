/** The let-out table for programs: SI, with each length also as it is counted. */
import type { DepthPlace } from "../../../server/analysis/depth-place.ts";
import type { LetOut } from "../../../server/analysis/let-out.ts";
import type { LetOutColumn } from "../../../server/analysis/let-out-columns.ts";
import { LET_OUT_CAUTION } from "../../../server/reports/let-out-table.ts";
import { envelopeText } from "../envelope.ts";
import type { LetOutAskedJson, LetOutCellJson, LetOutColumnJson } from "../letout-schemas.ts";
import type { AskedLetOut } from "../what-if/read-let-out.ts";
import type { World } from "../world.ts";

/** What goes into the JSON. */
interface LetOutAnswer {
  readonly boat: string;
  readonly date: string | undefined;
  readonly asked: AskedLetOut;
  readonly columns: readonly LetOutColumn[];
  readonly paths: readonly string[];
}

/** The whole envelope. */
export function letOutJson({ boat, date, asked, columns, paths }: LetOutAnswer, world: World): string {
  const { speeds, rigging, depthsM } = asked;
  const said: LetOutAskedJson = {
    boat,
    date: date ?? null,
    speedMS: speeds.speedMS,
    surfaceSpeedMS: speeds.surfaceSpeedMS ?? null,
    speedDepthM: speeds.speedDepthM ?? null,
    waterTempC: speeds.waterTempC ?? null,
    lure: rigging.lure ?? null,
    setbackM: rigging.setbackM ?? null,
    aboveM: rigging.aboveM ?? null,
  };
  const files = paths.map((path) => ({ path }));
  const rigs = columns.map((column) => columnJson(column, depthsM));
  return envelopeText("letout", world, { caution: LET_OUT_CAUTION, asked: said, rigs, files });
}

function columnJson(
  { line, cells, calibration }: LetOutColumn,
  depthsM: readonly number[],
): LetOutColumnJson {
  return {
    rig: line.rig.name,
    kind: line.rig.kind ?? null,
    of: cells.find((cell) => cell.of !== undefined)?.of ?? null,
    calibration: calibration === undefined ? null : { of: calibration.of, date: calibration.origin.from },
    depths: cells.map((cell, index) => cellJson(cell, depthsM[index] ?? 0)),
  };
}

function cellJson(cell: LetOut, depthM: number): LetOutCellJson {
  if (!cell.ok) {
    const { why, deepest } = cell;
    const reach = deepest === undefined ? null : { depthM: deepest.depthM, outM: deepest.outM };
    return { depthM, out: null, unit: null, backing: null, outM: null, band: null, why, deepest: reach };
  }
  const { out, unit, backing, outM, band } = cell;
  return {
    depthM,
    out,
    unit,
    backing,
    outM,
    band: band === undefined ? null : bandJson(band),
    why: null,
    deepest: null,
  };
}

function bandJson({ depthM, lowM, highM, behindM }: DepthPlace): LetOutCellJson["band"] {
  return { depthM, lowM, highM, behindM };
}
