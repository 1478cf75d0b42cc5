/** Rigs told apart by value, so that what is reckoned of one serves for every equal one. */
import type { Downrigger } from "./downrigger.ts";
import type { FlowProfile } from "./flow-profile.ts";

/** The latest rig with the very same rods, which rigs of one setting share, and its setting as a text. */
const ofRods = new WeakMap<Downrigger["rods"], { readonly rig: Downrigger; readonly text: string }>();

/** What a rig is at, whatever stream and temperature it is in: the same text for equal settings only. */
export function settingText(rig: Downrigger): string {
  const known = ofRods.get(rig.rods);
  if (known !== undefined && isVerySameSetting(known.rig, rig)) return known.text;
  const { flow, waterTemperatureC, ...setting } = rig;
  const text = JSON.stringify(setting);
  ofRods.set(rig.rods, { rig, text });
  return text;
}

function isVerySameSetting(one: Downrigger, other: Downrigger): boolean {
  return (
    one.cable === other.cable &&
    one.ball === other.ball &&
    one.outM === other.outM &&
    one.counterScale === other.counterScale &&
    one.counterOffsetM === other.counterOffsetM &&
    one.salinityPsu === other.salinityPsu &&
    one.probeAboveBallM === other.probeAboveBallM
  );
}

/** Settings numbered at a time; past it they are numbered anew, so that a key of before is met no more. */
const MOST_NUMBERS = 5000;
const numbers = new Map<string, number>();
let latest = 0;

/** A rig as a short part of a key that is kept in memory: the same for equal ones only. */
export function rigKey(rig: Downrigger): string {
  const text = settingText(rig);
  let number = numbers.get(text);
  if (number === undefined) {
    if (numbers.size >= MOST_NUMBERS) numbers.clear();
    number = ++latest;
    numbers.set(text, number);
  }
  return `${number} ${flowKey(rig.flow)} ${rig.waterTemperatureC}`;
}

/** A stream as part of a key. */
export function flowKey(flow: FlowProfile): string {
  if (flow.type === "uniform") return `${flow.speedMS}`;
  return flow.type === "piecewise" ? `${flow.depthsM} ${flow.speedsMS}` : JSON.stringify(flow);
}
