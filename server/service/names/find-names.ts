/** Finds a thing by a place it is named at, and every other place that means it. */
import type { GearLine } from "../../model/gear-lines.ts";
import type { NamedKind, NamedPlace } from "../../model/named-places.ts";
import type { FileRecord } from "../../workspace/index-view.ts";
import type { Journals } from "./journals.ts";
import { nameOwner } from "./name-owner.ts";
import { type NamedFile, namedFile } from "./named-file.ts";
import { type Sight, Sights } from "./sight.ts";
import { definitionId, isSameThing, mayMean, type Thing, thingMeant } from "./thing.ts";

/** A boat's gear as seen from some file. */
interface View {
  readonly sight: Sight;
  readonly boat: string | null;
}

/** Looks names up in files; made anew for each question, so that nothing it keeps grows old. */
export class NameFinder {
  readonly files: readonly NamedFile[];
  readonly #sights: Sights;
  #views: readonly View[] | undefined;

  constructor(journals: Journals, records: Iterable<FileRecord>) {
    this.files = Array.from(records, namedFile);
    this.#sights = new Sights(journals);
  }

  /** What a place means; lines that are seen together from any file, like an older and a newer rig, are one thing. */
  thingAt(record: NamedFile, place: NamedPlace): Thing | undefined {
    const thing = thingMeant(record, place, this.#sights.of(record));
    if (thing === undefined || thing.definitions.size === 0) return thing;
    return { ...thing, definitions: this.#together(thing) };
  }

  /** The places of a file that mean a thing. */
  placesIn(record: NamedFile, thing: Thing): NamedPlace[] {
    return record.places.filter((place) => mayMean(thing, place) && this.means(record, place, thing));
  }

  means(record: NamedFile, place: NamedPlace, thing: Thing): boolean {
    const meant = thingMeant(record, place, this.#sights.of(record));
    return meant !== undefined && isSameThing(meant, thing);
  }

  /** True where a place belongs to a boat or trip that sees the thing, so that its name could be taken for it. */
  isInSight(record: NamedFile, { range }: NamedPlace, thing: Thing): boolean {
    const owner = nameOwner(record, range.lineIndex);
    if (thing.kind === "boat") return true;
    if (thing.kind === "guest") return thing.scope === `${owner?.openerIndex ?? -1} ${record.uri}`;
    if (thing.definitions.size === 0) return thing.scope === (owner?.boat ?? "");
    return this.#sees({ sight: this.#sights.of(record), boat: owner?.boat ?? null }, thing);
  }

  /** Lines that define something called so, or so but for capitals, wherever the thing is seen. */
  definedBeside(thing: Thing, kinds: Iterable<NamedKind>, name: string): GearLine[] {
    const views = this.#allViews().filter((view) =>
      thing.definitions.size === 0 ? view.boat === thing.scope : this.#sees(view, thing),
    );
    return [...kinds].flatMap((kind) =>
      views
        .flatMap(({ sight, boat }) => sight.known(boat).alike(kind, name))
        .filter((line) => !thing.definitions.has(definitionId(line))),
    );
  }

  /** The gear lines that define a thing. */
  definitions({ kind, name, definitions }: Thing): GearLine[] {
    return this.#allViews()
      .flatMap(({ sight, boat }) => sight.known(boat).definitions(kind, name))
      .filter((line) => definitions.has(definitionId(line)));
  }

  #together(thing: Thing): Set<string> {
    const ids = new Set(thing.definitions);
    const groups = this.#allViews().map((view) => group(thing, view));
    for (let before = -1; before < ids.size; ) {
      before = ids.size;
      for (const lines of groups) if (lines.some((id) => ids.has(id))) for (const id of lines) ids.add(id);
    }
    return ids;
  }

  #sees(view: View, thing: Thing): boolean {
    return group(thing, view).some((id) => thing.definitions.has(id));
  }

  /** Every sight with every boat it is looked at for, once. */
  #allViews(): readonly View[] {
    if (this.#views !== undefined) return this.#views;
    const boatsOf = new Map<Sight, Set<string | null>>();
    for (const file of this.files) {
      const sight = this.#sights.of(file);
      const boats = boatsOf.get(sight) ?? new Set<string | null>([null]);
      for (const boat of file.boats) boats.add(boat);
      boatsOf.set(sight, boats);
    }
    this.#views = [...boatsOf].flatMap(([sight, boats]) => [...boats].map((boat) => ({ sight, boat })));
    return this.#views;
  }
}

/** The name at a place of a file; its end counts as part of it. */
export function placeAt(record: NamedFile, lineIndex: number, column: number): NamedPlace | undefined {
  return record.places.find(
    ({ range }) => range.lineIndex === lineIndex && column >= range.start && column <= range.stop,
  );
}

function group({ kind, name }: Thing, { sight, boat }: View): string[] {
  const lines = kind === "boat" ? sight.openers(name) : sight.known(boat).definitions(kind, name);
  return lines.map(definitionId);
}
