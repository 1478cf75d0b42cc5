/** Where a slider's lure is on a downrigger's rod: pinned at a place, or free somewhere on the belly of its line. */
import type { Gear } from "../model/gear-types.ts";
import type { Setting } from "../model/setting.ts";
import { DEFAULTS } from "../physics/defaults.ts";
import type { Place } from "../physics/downrigger.ts";
import { speedAtDepthMS } from "../physics/flow-profile.ts";
import { solveSlider } from "../physics/slider.ts";
import { waterAt } from "../physics/water.ts";
import { type DepthMemo, kept } from "./depth-memo.ts";
import { type DownriggerTask, forcesOf } from "./downrigger-input.ts";

/** A slider's depth, m. A free one is only known to be in the range; `depthM` is where it would balance. */
export interface SliderPlace {
  readonly lure: string;
  readonly depthM: number;
  readonly lowM: number;
  readonly highM: number;
  readonly behindM: number;
  readonly isFree: boolean;
}

/** The slider on a rod whose release is solved; null without one, or where the model has no answer. */
export function sliderPlace(
  gear: Gear,
  setting: Setting,
  { downrigger }: DownriggerTask,
  solved: { readonly rod: string; readonly release: Place; readonly waterM: number | undefined },
  memo: DepthMemo,
): SliderPlace | null {
  const lure = setting.slider;
  const rod = downrigger.rods.find((one) => one.id === solved.rod);
  if (lure === undefined || rod === undefined) return null;
  const { flow, waterTemperatureC, salinityPsu } = downrigger;
  // A slider rides in the upper half of the line; what is known of it does not warrant more than one speed.
  const speedMS = speedAtDepthMS(flow, 0.5 * solved.release.depthM);
  const slider = {
    lure: forcesOf(gear.lures.get(lure), rod.lureLine),
    leaderM: DEFAULTS.sliderLeaderM.value,
    ...(setting.sliderFixedM === undefined ? {} : { fixedM: setting.sliderFixedM }),
  };
  const key = JSON.stringify([slider, rod, solved.release, speedMS, waterTemperatureC, salinityPsu]);
  const place = kept(memo.sliders, key, memo, () => {
    const water = waterAt(waterTemperatureC, salinityPsu);
    return water.ok ? solveSlider(slider, rod, solved.release, speedMS, water) : water;
  });
  if (!place.ok) return null;
  const limit = solved.waterM ?? Number.POSITIVE_INFINITY;
  const within = (depthM: number): number => Math.max(0, Math.min(depthM, limit));
  const { behindM, isFree } = place;
  return {
    lure,
    depthM: within(place.depthM),
    lowM: within(place.lowM),
    highM: within(place.highM),
    behindM,
    isFree,
  };
}
