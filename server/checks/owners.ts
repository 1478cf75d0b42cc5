/** Whose a line is: the trip or boat opened above it, with the gear that speaks for it. */

import type { JournalAnalysis, TripAnalysis } from "../analysis/journal-analysis.ts";
import { type BookFile, fileGear } from "../model/gear-lines.ts";
import type { Gear } from "../model/gear-types.ts";
import { countUpTo } from "../model/sorted.ts";
import type { GearResolver } from "../model/trip.ts";

/** The opener a line stands under. */
export interface Owner {
  readonly openerIndex: number;
  readonly boat: string;
  /** The trip, where the opener is one. */
  readonly trip: TripAnalysis | undefined;
  /** The trip's gear on its day; a boat's latest. */
  readonly gear: Gear;
  /** A book within reach describes the boat, or rigs are written without any boat. */
  readonly isDescribed: boolean;
}

/** After every date a journal can hold: the latest gear. */
const LATEST = "9999-12-31";

const ownersOfAnalysis = new WeakMap<JournalAnalysis, readonly Owner[]>();

/** The owner of a line; undefined above the first opener. */
export function ownerOf(analysis: JournalAnalysis, lineIndex: number): Owner | undefined {
  const owners = ownersOf(analysis);
  return owners[countUpTo(owners, lineIndex, ({ openerIndex }) => openerIndex) - 1];
}

/** Every opener of the file, in order. */
export function ownersOf(analysis: JournalAnalysis): readonly Owner[] {
  const known = ownersOfAnalysis.get(analysis);
  if (known !== undefined) return known;
  const isDescribed = describedBoats(analysis.files);
  const [own] = analysis.files;
  const owners = [
    ...analysis.trips.map((trip) => tripOwner(trip, isDescribed)),
    ...(own === undefined ? [] : fileGear(own).boats.map((one) => boatOwner(one, analysis.gearOf))),
  ].sort((a, b) => a.openerIndex - b.openerIndex);
  ownersOfAnalysis.set(analysis, owners);
  return owners;
}

/** The owner of a gear line: where nothing is opened above it, the first trip below says whose it is. */
export function ownerNear(analysis: JournalAnalysis, lineIndex: number): Owner | undefined {
  return ownerOf(analysis, lineIndex) ?? ownersOf(analysis).find((owner) => owner.trip !== undefined);
}

const ownerOfTrip = new WeakMap<TripAnalysis, Owner>();

/** The very same owner for the very same trip. */
function tripOwner(trip: TripAnalysis, describes: (boat: string) => boolean): Owner {
  const { openerIndex, boat, gear } = trip.trip;
  const isDescribed = describes(boat);
  const known = ownerOfTrip.get(trip);
  if (known?.isDescribed === isDescribed) return known;
  const owner = { openerIndex, boat, trip, gear, isDescribed };
  ownerOfTrip.set(trip, owner);
  return owner;
}

function boatOwner(opener: { boat: string; lineIndex: number }, resolve: GearResolver): Owner {
  const { boat, lineIndex: openerIndex } = opener;
  return {
    openerIndex,
    boat,
    trip: undefined,
    get gear(): Gear {
      return resolve(boat, LATEST);
    },
    isDescribed: true,
  };
}

function describedBoats(files: readonly BookFile[]): (boat: string) => boolean {
  const gears = files.map(fileGear);
  const boats = new Set(gears.flatMap((gear) => gear.boats.map((opener) => opener.boat)));
  const hasLooseRig = gears.some((gear) =>
    gear.lines.some((one) => one.boat === null && one.line.verb === "rig"),
  );
  return (boat) => hasLooseRig || boats.has(boat);
}
