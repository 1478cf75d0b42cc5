/** The water's and light's part of a trip's summary for programs: SI, instants in UTC. */
import type { LegCurrent, WaterSummary } from "../../../server/analysis/water-summary.ts";
import { instantText } from "../depth-lines.ts";
import type { WaterSummaryJson } from "../output-schemas.ts";

/** The summary with nothing left undefined. Without a known time zone there are no instants, and so no such rows. */
export function waterSummaryJson(water: WaterSummary, zone: string | undefined): WaterSummaryJson {
  const text = (ms: number | undefined): string | null => (ms === undefined ? null : instantText(ms, zone));
  const { sun } = water;
  return {
    profiles: water.layers.flatMap(({ timeMs, layers, bands, lines }) =>
      timed(text(timeMs), (instant) => ({
        instant,
        thermoclineM: layers.kind === "layers" ? layers.thermoclineM : null,
        metalimnionTopM: layers.kind === "layers" ? layers.topM : null,
        metalimnionBottomM: layers.kind === "layers" ? layers.bottomM : null,
        lines: [...lines],
        bands: bands.map(({ species, depths }) => ({ species, depths: depths.map((one) => ({ ...one })) })),
      })),
    ),
    legs: water.legs.flatMap((one) => timed(text(one.leg.fromMs), (from) => legJson(one, from, text))),
    distanceM: water.distanceM,
    sunrise: text(sun?.sunriseMs),
    sunset: text(sun?.sunsetMs),
    civilDawn: text(sun?.civilDawnMs),
    civilDusk: text(sun?.civilDuskMs),
    nauticalDawn: text(sun?.nauticalDawnMs),
    nauticalDusk: text(sun?.nauticalDuskMs),
    moon: water.moon === null ? null : { ...water.moon },
    landedByHour: water.landedByHour.flatMap(({ fromMs, landed, rodHours }) =>
      timed(text(fromMs), (from) => ({ from, landed, rodHoursFishing: rodHours })),
    ),
  };
}

function timed<T>(instant: string | null, build: (instant: string) => T): T[] {
  return instant === null ? [] : [build(instant)];
}

function legJson(
  { leg, onTop, atProbe, lines }: LegCurrent,
  from: string,
  text: (ms: number) => string | null,
): WaterSummaryJson["legs"][number] {
  return {
    from,
    to: text(leg.toMs) ?? from,
    courseDeg: leg.course?.deg ?? null,
    isCourseMagnetic: leg.course?.isMagnetic ?? false,
    madeGoodM: leg.madeGoodM ?? null,
    madeGoodDeg: leg.madeGoodDeg ?? null,
    madeGoodMS: leg.madeGoodMS ?? null,
    currentOnTopMS: onTop?.alongMS ?? null,
    currentOnTopSdMS: onTop?.sdMS ?? null,
    currentAtProbeMS: atProbe?.alongMS ?? null,
    currentAtProbeSdMS: atProbe?.sdMS ?? null,
    currentLines: [...lines],
  };
}
