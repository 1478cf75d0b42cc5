/** Fixes that name a piece of the gear book on the line of a rig that has none. */
import type { DepthLack } from "../analysis/no-task.ts";
import type { CableMaterial, Gear, Rig, RigKind } from "../model/gear-types.ts";
import { DAY_FIXES } from "./catalog/day-titles.ts";
import type { Fix } from "./check.ts";
import { insert, writtenName } from "./edits.ts";

/** More to choose from would hide the other fixes. */
const MOST = 4;

const ROD_LINES: readonly CableMaterial[] = ["braid", "mono", "fluoro"];

/** What main lines of each kind of rig are made of. */
const MADE_OF: Readonly<Record<RigKind, readonly CableMaterial[]>> = {
  downrigger: ["steel", "braid"],
  stacked: [],
  diver: ["steel", ...ROD_LINES],
  leadcore: ["leadcore"],
  copper: ["copper"],
  "weighted-wire": ["weighted", "steel"],
  flat: ROD_LINES,
  jig: ROD_LINES,
};

/** One for each piece of the book that would do, those of like rigs first; none where the book has none. */
export function gearFixes(gear: Gear, lack: DepthLack): Fix[] {
  if (lack.at !== "gear" || lack.of !== "rig") return [];
  const rig = gear.rigs.get(lack.name);
  if (rig === undefined) return [];
  const names = piecesFor(gear, rig, lack.word);
  const { uri, line, lineIndex } = rig.origin;
  const end = Math.max(line.verbStop, ...[...line.slots, ...line.items].map(({ stop }) => stop));
  return names.slice(0, MOST).map((name) => {
    const text = `${lack.word} ${writtenName(name)}`;
    return {
      title: DAY_FIXES.giveRig(text, rig.name),
      edits: [insert(uri, lineIndex, end, ` ${text}`)],
      isPreferred: names.length === 1,
    };
  });
}

function piecesFor(gear: Gear, rig: Rig, word: string): string[] {
  const fitting =
    word === "ball" ? weighedBalls(gear) : linesOf(gear, word === "backing" ? ROD_LINES : ownLines(rig));
  const used = new Map<string, number>();
  for (const other of gear.rigs.values()) {
    const name = word === "ball" ? other.ball : word === "backing" ? other.backing : other.cable;
    if (other.kind === rig.kind && name !== undefined) used.set(name, (used.get(name) ?? 0) + 1);
  }
  return fitting.sort((one, other) => (used.get(other) ?? 0) - (used.get(one) ?? 0));
}

function weighedBalls({ balls }: Gear): string[] {
  return [...balls.values()].filter(({ massKg = 0 }) => massKg > 0).map(({ name }) => name);
}

const ownLines = ({ kind }: Rig): readonly CableMaterial[] => (kind === undefined ? [] : MADE_OF[kind]);

/** Lines that a depth can be reckoned with. */
function linesOf({ cables }: Gear, materials: readonly CableMaterial[]): string[] {
  return [...cables.values()]
    .filter(
      ({ material, diameterM = 0 }) =>
        material !== undefined && materials.includes(material) && diameterM > 0,
    )
    .map(({ name }) => name);
}
