/** Gathers the headings of a file's trips and whose gear stands in it, from its lines one after the other. */
import type { Line } from "../../grammar/journal.ts";
import { kindDefined } from "../model/gear-lines.ts";
import { slotName } from "../model/quantities.ts";
import { findSpecies } from "../model/species.ts";
import type { FileRecord, FishCount, TripHeading } from "./index-view.ts";

/** What one line says about its file; its clock is told apart, so that equal lines of different minutes say the same. */
export type LineFact =
  | { readonly verb: "trip"; readonly date: string; readonly boat: string }
  | { readonly verb: "boat"; readonly boat: string }
  | { readonly verb: "gear" }
  | { readonly verb: "harbor"; readonly harbor: string }
  | { readonly verb: "depart" | "return" }
  | { readonly verb: "catch"; readonly species: string };

/** What a line says about its file; most say nothing. */
export function lineFact(line: Line): LineFact | undefined {
  if (line.kind === "property" && line.block === "trip")
    return line.verb === "harbor" ? { verb: "harbor", harbor: slotName(line) ?? "" } : undefined;
  if (line.kind !== "fact") return undefined;
  switch (line.verb) {
    case "trip":
      return { verb: "trip", date: slotName(line) ?? "", boat: slotName(line, 1) ?? "" };
    case "boat":
      return { verb: "boat", boat: slotName(line) ?? "" };
    case "depart":
    case "return":
      return { verb: line.verb };
    case "catch": {
      const species = slotName(line, 1) ?? "";
      return { verb: "catch", species: findSpecies(species)?.name ?? species };
    }
    default:
      return kindDefined(line.verb) === undefined || line.slots.length === 0 ? undefined : { verb: "gear" };
  }
}

type Gathered = Pick<FileRecord, "boats" | "describes" | "hasLooseGear" | "trips">;
type Writable = { -readonly [Key in keyof TripHeading]: TripHeading[Key] };

/** Takes the facts of a file in the order of its lines. */
export class HeadingGatherer {
  readonly #boats = new Set<string>();
  readonly #describes = new Set<string>();
  readonly #trips: Writable[] = [];
  #hasOpener = false;
  #hasLooseGear = false;
  #fish = new Map<string, number>();

  /** `clock` is the line's, where it has one. */
  add(lineIndex: number, fact: LineFact, clock: string | null): void {
    const trip = this.#trips.at(-1);
    switch (fact.verb) {
      case "trip":
        this.#openTrip(lineIndex, fact.date, fact.boat);
        break;
      case "boat":
        this.#hasOpener = true;
        if (fact.boat !== "") this.#boats.add(fact.boat);
        if (fact.boat !== "") this.#describes.add(fact.boat);
        break;
      case "gear":
        if (!this.#hasOpener) this.#hasLooseGear = true;
        break;
      case "harbor":
        if (trip !== undefined) trip.harbor ??= fact.harbor;
        break;
      case "depart":
        if (trip !== undefined) trip.departs ??= clock;
        break;
      case "return":
        if (trip !== undefined) trip.returns = clock ?? trip.returns;
        break;
      case "catch":
        if (fact.species !== "") this.#fish.set(fact.species, (this.#fish.get(fact.species) ?? 0) + 1);
    }
  }

  /** Everything gathered. */
  end(): Gathered {
    this.#endTrip();
    return {
      boats: [...this.#boats],
      describes: [...this.#describes],
      hasLooseGear: this.#hasLooseGear,
      trips: this.#trips,
    };
  }

  #openTrip(lineIndex: number, date: string, boat: string): void {
    this.#endTrip();
    this.#hasOpener = true;
    if (boat !== "") this.#boats.add(boat);
    this.#trips.push({ lineIndex, date, boat, harbor: null, departs: null, returns: null, fish: [] });
  }

  #endTrip(): void {
    const trip = this.#trips.at(-1);
    if (trip !== undefined)
      trip.fish = [...this.#fish].map(([species, count]): FishCount => ({ species, count }));
    this.#fish = new Map();
  }
}
