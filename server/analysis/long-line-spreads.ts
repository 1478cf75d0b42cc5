/** How well the inputs of a long line are known, from its material, its counting and what was measured. */
import type { Cable, Calibration } from "../model/gear-types.ts";
import type { Setting } from "../model/setting.ts";
import { DEFAULTS } from "../physics/defaults.ts";
import { defaultLongLineSpreads, type LongLineSpreads } from "../physics/long-line-parameters.ts";
import { CALIBRATED_SD } from "./calibration-used.ts";
import type { WaterAndSpeed } from "./downrigger-input.ts";

/** What a calibrate line that names a cable may hold. */
export type CableCalibration = Pick<Calibration, "dragRatio" | "dragError" | "massPerLengthKgM">;

/** What the spreads depend on besides calibrations. */
interface SpreadFacts {
  readonly setting: Setting;
  /** `undefined` where an ordinary leadcore or nylon is taken. */
  readonly cable: Cable | undefined;
  readonly jointIs: "diver" | "weight" | undefined;
  readonly water: Pick<WaterAndSpeed, "speedSdMS" | "surfaceSpeedSdMS">;
}

/** The spreads of one line's inputs. */
export function longLineSpreads(
  { setting, cable, jointIs, water }: SpreadFacts,
  own: Calibration | undefined,
  ofCable: CableCalibration | undefined,
): LongLineSpreads {
  const isWeighed = (ofCable?.massPerLengthKgM ?? cable?.massPerLengthKgM) !== undefined;
  return {
    ...defaultLongLineSpreads(water.speedSdMS),
    ...(water.surfaceSpeedSdMS === undefined ? {} : { surfaceSpeedMS: water.surfaceSpeedSdMS }),
    ...dragSpreads(own?.dragRatio === undefined ? ofCable : own),
    weightShare: isWeighed ? DEFAULTS.weighedLineScale.sd : weightShare(cable),
    ...lengthSpreads(setting, own),
    jointShare: jointIs === "diver" ? DEFAULTS.diverAreaScale.sd : DEFAULTS.inlineWeightScale.sd,
  };
}

/** A fitted multiplier has what all lines share in it. */
function dragSpreads(fitted: CableCalibration | undefined): Partial<LongLineSpreads> {
  if (fitted?.dragRatio === undefined) return {};
  const { dragRatio, dragError } = fitted;
  return {
    lnDragShared: 0,
    lnDragMain: dragError === undefined ? CALIBRATED_SD.dragShare : dragError / dragRatio,
  };
}

function weightShare(cable: Cable | undefined): number {
  if (cable?.material === "copper") return DEFAULTS.copperWeightScale.sd;
  return cable?.material === "leadcore" || cable === undefined
    ? DEFAULTS.leadcoreWeightScale.sd
    : DEFAULTS.lineWeightScale.sd;
}

/** Colors are counted by eye, to half a color; feet are read off a counter. */
function lengthSpreads(
  { outM, outColorsM }: Setting,
  own: Calibration | undefined,
): Pick<LongLineSpreads, "counterScale" | "outM"> {
  if (outColorsM !== undefined) {
    const isAllColors = outColorsM === outM;
    return {
      counterScale: isAllColors ? 0 : DEFAULTS.lineCounterScale.sd,
      outM: DEFAULTS.colorsOutM.sd,
    };
  }
  return {
    counterScale:
      own?.counterScale === undefined
        ? DEFAULTS.lineCounterScale.sd
        : (own.counterScaleError ?? CALIBRATED_SD.counterScale),
    outM:
      own?.counterOffsetM === undefined
        ? DEFAULTS.lineOutsetM.sd
        : (own.counterOffsetErrorM ?? CALIBRATED_SD.counterOffsetM),
  };
}
