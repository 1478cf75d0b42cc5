/** The water a lure runs in: its temperature, the bands of the day's species, and where they lie now. */
import type { SiRange } from "../model/quantities.ts";
import { slotName } from "../model/quantities.ts";
import { publishedBand } from "../model/species-bands.ts";
import { propertiesOf, type Trip } from "../model/trip.ts";
import { speciesName } from "./bites.ts";
import type { LineDepth } from "./line-depth.ts";
import type { ProfileStore } from "./profile-store.ts";
import { type BandDepths, type TempAtDepth, temperatureAt } from "./temperature-at.ts";
import type { WaterProfile } from "./water-profile.ts";

/** A band that a day's species keeps to. */
export interface TargetBand {
  readonly species: string;
  readonly tempC: SiRange;
  /** The captain's own, or published work. */
  readonly from: "captain" | "published";
  /** The published source; empty for the captain's own. */
  readonly source: string;
  readonly standing: "seen" | "memory";
}

/** The bands of a trip's targets: the captain's own where he has one, else published work. */
export function targetBands(trip: Trip): TargetBand[] {
  const species = propertiesOf(trip, "target").flatMap((line) => {
    const written = slotName(line);
    return written === undefined ? [] : [speciesName(trip, written)];
  });
  return [...new Set(species)].flatMap((name) => bandOf(trip, name) ?? []);
}

function bandOf(trip: Trip, species: string): TargetBand | undefined {
  const own = [...trip.gear.bands.values()].find((band) => speciesName(trip, band.species) === species);
  if (own !== undefined) return { species, tempC: own.tempC, from: "captain", source: "", standing: "seen" };
  const published = publishedBand(species);
  return published === undefined ? undefined : { ...published, from: "published" };
}

/** A band as it lies at one minute. */
export interface BandNow {
  readonly band: TargetBand;
  /** The lure against it; undefined where its temperature isn't known. */
  readonly lure: "inside" | "too-cold" | "too-warm" | undefined;
  /** False where the other side of the band's edge would fit as well. */
  readonly isSure: boolean;
  /** Where the band lies; undefined without a lowered profile, which alone can tell. */
  readonly depths: readonly BandDepths[] | undefined;
  /** How much deeper its middle lies than by the readings before the last, m. */
  readonly movedM: number | undefined;
  readonly movedSinceMs: number | undefined;
}

/** The water at one line's lure. */
export interface LureWater {
  readonly depthM: number;
  readonly at: TempAtDepth | undefined;
  readonly profile: WaterProfile;
  readonly bands: readonly BandNow[];
}

/** Half of the depth's 80 % band in standard deviations. */
const BAND_TO_SD = 1 / (2 * 1.2816);

/** The depth that a line's lure runs at, else that of its release, else of its ball. */
export function fishingDepth({
  lure,
  ball,
  releaseDepthM,
}: LineDepth): { readonly depthM: number; readonly sdM: number } | undefined {
  const place = lure ?? ball;
  if (place === null) return undefined;
  const depthM = lure === null ? (releaseDepthM ?? place.depthM) : place.depthM;
  return {
    depthM,
    /** Asked for only where it is shown: the depth's own range takes its time. */
    get sdM() {
      return (place.highM - place.lowM) * BAND_TO_SD;
    },
  };
}

/** The water at a depth, and the bands there, found when first asked for. */
export function lureWater(
  store: ProfileStore,
  profile: WaterProfile,
  bands: readonly TargetBand[],
  { depthM, sdM }: { readonly depthM: number; readonly sdM: number },
): LureWater {
  const at = temperatureAt(profile, depthM, sdM);
  return {
    depthM,
    at,
    profile,
    get bands() {
      return bands.map((band) => bandNow(store, profile, band, at));
    },
  };
}

/** A band at one minute, against a temperature where one is known. */
export function bandNow(
  store: ProfileStore,
  profile: WaterProfile,
  band: TargetBand,
  at: TempAtDepth | undefined,
): BandNow {
  const { low, high } = band.tempC;
  const before = store.before(profile);
  const depths = mapped(store, profile, band);
  const moved = movedM(depths, mapped(store, before, band));
  const known = at?.kind === "known" ? at : undefined;
  const edgeC = known === undefined ? 0 : Math.min(Math.abs(known.tempC - low), Math.abs(known.tempC - high));
  return {
    band,
    lure: known === undefined ? undefined : sideOf(known.tempC, band.tempC),
    isSure: known !== undefined && edgeC > known.sdC,
    depths,
    movedM: moved,
    movedSinceMs: moved === undefined ? undefined : before?.timeMs,
  };
}

function mapped(
  store: ProfileStore,
  profile: WaterProfile | undefined,
  { tempC }: TargetBand,
): readonly BandDepths[] | undefined {
  return profile?.cast === undefined ? undefined : store.bandIn(profile, tempC.low, tempC.high);
}

function sideOf(tempC: number, { low, high }: SiRange): "inside" | "too-cold" | "too-warm" {
  if (tempC < low - 0.005) return "too-cold";
  return tempC > high + 0.005 ? "too-warm" : "inside";
}

/** Compared where both have one whole stretch, or one whose lower end lies too deep in both. */
function movedM(
  now: readonly BandDepths[] | undefined,
  before: readonly BandDepths[] | undefined,
): number | undefined {
  const [one, other] = [now?.[0], before?.[0]];
  if (
    now === undefined ||
    before === undefined ||
    one === undefined ||
    other === undefined ||
    now.length > 1 ||
    before.length > 1
  )
    return undefined;
  if (one.isOpenBelow !== other.isOpenBelow) return undefined;
  if (one.isOpenBelow) return one.topM - other.topM;
  return (one.topM + one.bottomM - other.topM - other.bottomM) / 2;
}
