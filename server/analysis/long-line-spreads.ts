/** How well the inputs of a long line are known, from its material, its counting and what was measured. */
import type { Cable, Calibration } from "../model/gear-types.ts";
import type { Setting } from "../model/setting.ts";
import { DEFAULTS } from "../physics/defaults.ts";
import { defaultLongLineSpreads, type LongLineSpreads } from "../physics/long-line-parameters.ts";
import { CALIBRATED_SD, linkOf } from "./calibration-used.ts";
import type { WaterAndSpeed } from "./downrigger-input.ts";

/** What a calibrate line that names a cable may hold. */
export type CableCalibration = Pick<Calibration, "dragRatio" | "dragError" | "massPerLengthKgM">;

/** What the spreads depend on besides calibrations. */
interface SpreadFacts {
  readonly setting: Setting;
  /** `undefined` where an ordinary leadcore or nylon is taken. */
  readonly cable: Cable | undefined;
  readonly jointIs: "diver" | "weight" | undefined;
  readonly water: Pick<WaterAndSpeed, "speedSdMS" | "surfaceSpeedSdMS" | "shape">;
}

/** The spreads of one line's inputs. */
export function longLineSpreads(
  { setting, cable, jointIs, water }: SpreadFacts,
  own: Calibration | undefined,
  ofCable: CableCalibration | undefined,
  lnSharedSd: number,
): LongLineSpreads {
  const isWeighed = (ofCable?.massPerLengthKgM ?? cable?.massPerLengthKgM) !== undefined;
  return {
    ...defaultLongLineSpreads(water.speedSdMS),
    ...(water.surfaceSpeedSdMS === undefined ? {} : { surfaceSpeedMS: water.surfaceSpeedSdMS }),
    ...(water.shape === undefined ? {} : { shape: water.shape }),
    lnDragShared: lnSharedSd,
    weightShare: isWeighed ? DEFAULTS.weighedLineScale.sd : weightShare(cable),
    ...dragSpreads(own?.dragRatio === undefined ? ofCable : own),
    ...lengthSpreads(setting, own),
    ...tiedSpreads(own, setting),
    jointShare: jointIs === "diver" ? DEFAULTS.diverAreaScale.sd : DEFAULTS.inlineWeightScale.sd,
    ...(jointIs === "diver" ? diverSpreads(own) : {}),
  };
}

/** Errors beyond these are slips of the pen: a line that is known so badly is not known at all. */
const MOST = { ln: 1, scale: 0.3, offsetM: 10 } as const;

/** The size of a stated error, no smaller than a covariance can hold and no larger than is believed. */
function within(error: number, most: number): number {
  return Math.min(most, Math.max(1e-4, Math.abs(error)));
}

/** Drag and counter that were fitted together, where the line says how their errors hang together. */
function tiedSpreads(own: Calibration | undefined, setting: Setting): Partial<LongLineSpreads> {
  const { dragRatio, dragError, counterScaleError, counterOffsetErrorM } = own ?? {};
  if (dragRatio === undefined || dragError === undefined || setting.outColorsM !== undefined) return {};
  if (counterScaleError === undefined || counterOffsetErrorM === undefined) return {};
  return {
    calibration: {
      lnDragSd: within(dragError / dragRatio, MOST.ln),
      counterScaleSd: within(counterScaleError, MOST.scale),
      counterOffsetSdM: within(counterOffsetErrorM, MOST.offsetM),
      dragWithScale: linkOf(own?.dragScaleLink),
      dragWithOffset: linkOf(own?.dragOffsetLink),
      scaleWithOffset: linkOf(own?.scaleOffsetLink),
    },
  };
}

/** Fitted areas took in what the drag of the diver's line is off; areas without errors keep the usual spreads. */
function diverSpreads(own: Calibration | undefined): Partial<LongLineSpreads> {
  const { liftAreaM2, liftAreaErrorM2, dragAreaM2, dragAreaErrorM2, areaLink } = own ?? {};
  if (liftAreaErrorM2 === undefined || dragAreaErrorM2 === undefined) return {};
  if (!((liftAreaM2 ?? 0) > 0) || !((dragAreaM2 ?? 0) > 0)) return {};
  return {
    lnDragShared: 0,
    lnDragMain: 0,
    weightShare: 0,
    diver: {
      lnLiftSd: within(liftAreaErrorM2 / (liftAreaM2 ?? 1), MOST.ln),
      lnDragSd: within(dragAreaErrorM2 / (dragAreaM2 ?? 1), MOST.ln),
      link: linkOf(areaLink),
    },
  };
}

/** A fitted multiplier has what all lines share in it, and what the line's weight is off. */
function dragSpreads(fitted: CableCalibration | undefined): Partial<LongLineSpreads> {
  if (fitted?.dragRatio === undefined) return {};
  const { dragRatio, dragError } = fitted;
  return {
    lnDragShared: 0,
    weightShare: 0,
    lnDragMain: dragError === undefined ? CALIBRATED_SD.dragShare : within(dragError / dragRatio, MOST.ln),
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
        : within(own.counterScaleError ?? CALIBRATED_SD.counterScale, MOST.scale),
    outM:
      own?.counterOffsetM === undefined
        ? DEFAULTS.lineOutsetM.sd
        : within(own.counterOffsetErrorM ?? CALIBRATED_SD.counterOffsetM, MOST.offsetM),
  };
}
