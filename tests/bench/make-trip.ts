import { makeRandom } from "./random.ts";
import { dateOf, type Item, lures, measure, name, type RigName, type Trip } from "./trip-facts.ts";
import { TripLog } from "./trip-log.ts";

/** How a rig is let out on these trips: amounts, their unit, and what its `set` line says besides. */
const habits: Record<RigName, { low: number; high: number; step: number; unit: string; setback: boolean }> = {
  P1: { low: 50, high: 80, step: 5, unit: "ft", setback: true },
  C1: { low: 70, high: 100, step: 5, unit: "ft", setback: true },
  S1: { low: 40, high: 70, step: 5, unit: "ft", setback: true },
  PB: { low: 3, high: 7, step: 1, unit: "colors", setback: false },
  SD: { low: 100, high: 150, step: 10, unit: "ft", setback: false },
};
const rigNames = Object.keys(habits) as RigName[];

/** A fish is long within bounds and as heavy as its length allows (pounds per cubed inch). */
const fish = {
  chinook: { low: 26, high: 37, weight: 4.2e-4 },
  coho: { low: 20, high: 27, weight: 3.7e-4 },
  steelhead: { low: 22, high: 30, weight: 3.5e-4 },
  "lake-trout": { low: 22, high: 30, weight: 3.7e-4 },
} as const;
const speciesNames = Object.keys(fish) as (keyof typeof fish)[];

/** Event lines of a trip, more or less: a full day's. */
export const linesPerTrip = 150;

/**
 * Makes one believable trip of about 150 event lines: rigs are set before they are moved or bitten, go back
 * out with `again` after a fish, and are pulled at the end; the clock never goes backwards.
 */
export function makeTrip(index: number): Trip {
  const log = new FishingDay(makeRandom(9000 + index));
  log.leave();
  log.setAll();
  while (log.events.length < linesPerTrip / 2) log.something();
  log.moveOn();
  while (log.events.length < linesPerTrip - 6) log.something();
  log.goHome();
  return {
    date: dateOf(index),
    harbor: "Hollis Point",
    anglers: 4,
    targets: ["chinook"],
    events: log.events,
  };
}

/** A day of fishing: rigs and what they are set at, fish, turns, and readings in between. */
class FishingDay extends TripLog {
  private readonly outs = new Map<RigName, number>();
  private readonly kept = new Map<string, number>();

  /** The dock, the sky and the water, before the first rig goes in. */
  leave(): void {
    this.write("depart", undefined, [measure("engine", this.random.between(800, 1400, 1), "h")]);
    this.write("weather", undefined, [
      name("sky", this.random.pick(["clear", "cloudy", "overcast"])),
      name("wind", this.random.pick(["S", "SW", "W", "NW"])),
      { kind: "measure", key: "wind_speed", value: this.random.between(4, 12), unit: "kn" },
      { kind: "range", key: "waves", word: "waves", low: 1, high: 2, unit: "ft" },
      measure("air", this.random.between(52, 68), "F"),
    ]);
    this.pass(15);
    this.write("profile", undefined, [{ kind: "profile", points: this.water.profile }]);
  }

  /** Puts every rig in the water. */
  setAll(): void {
    for (const rig of rigNames) this.setRig(rig);
  }

  /** Takes the lines up, runs a few miles, puts them back. */
  moveOn(): void {
    this.write("pull", undefined, [{ kind: "flag", key: "all" }]);
    this.outs.clear();
    this.write("run", undefined, [{ kind: "text", key: "to", word: "to", value: "Anvil Bank" }]);
    this.water.run();
    this.pass(20);
    this.setAll();
  }

  /** The last pull, the dock, and what came home in the box. */
  goHome(): void {
    this.write("pull", undefined, [{ kind: "flag", key: "all" }]);
    this.pass(45);
    const departed = this.events[0]?.items[0];
    const hours = departed?.kind === "measure" ? departed.value : 0;
    this.write("return", undefined, [measure("engine", Number((hours + this.hours()).toFixed(1)), "h")]);
    for (const [species, count] of this.kept)
      this.write("box", undefined, [
        { kind: "name", key: "species", value: species },
        { kind: "number", key: "count", word: "", value: count },
      ]);
  }

  /** One more thing on the water: mostly readings, now and then a move, a turn, a lure change or a fish. */
  something(): void {
    const turn = this.random.next();
    if (turn < 0.28) this.readProbe();
    else if (turn < 0.44) this.gps();
    else if (turn < 0.56) this.write("sonar", undefined, [measure("bottom", this.water.bottomFt(), "ft")]);
    else if (turn < 0.62) this.surface();
    else if (turn < 0.77) this.moveRig();
    else if (turn < 0.82) this.turnBoat();
    else if (turn < 0.87) this.changeLure();
    else this.bite();
  }

  private setRig(rig: RigName): void {
    const habit = habits[rig];
    const out = habit.low + habit.step * this.random.between(0, (habit.high - habit.low) / habit.step);
    this.outs.set(rig, out);
    const items: Item[] = [measure("out", out, habit.unit)];
    if (habit.setback) items.push(measure("setback", this.random.between(8, 25), "ft"));
    if (rig === "SD") items.push({ kind: "number", key: "dial", word: "dial", value: 2 });
    this.write("set", rig, [...items, name("lure", this.random.pick(lures)[0])]);
  }

  private moveRig(): void {
    const rig = this.random.pick(rigNames);
    const habit = habits[rig];
    const now = this.outs.get(rig) ?? habit.low;
    const wanted = now + habit.step * this.random.pick([-2, -1, 1, 2]);
    const out = Math.min(habit.high, Math.max(habit.low, wanted));
    if (out === now) {
      this.readProbe();
      return;
    }
    this.outs.set(rig, out);
    this.write("move", rig, [measure("out", out, habit.unit)]);
  }

  private changeLure(): void {
    const lure = name("lure", this.random.pick(lures)[0]);
    this.write("change", this.random.pick(rigNames), [
      lure,
      measure("down", this.random.between(2, 6), "min"),
    ]);
  }

  private turnBoat(): void {
    const { side, course } = this.water.turn();
    this.write("turn", undefined, [
      { kind: "flag", key: side },
      { kind: "number", key: "to", word: "to", value: course },
    ]);
  }

  private bite(): void {
    const rig = this.random.pick(rigNames);
    const species = this.random.pick(speciesNames);
    const kind: Item = { kind: "name", key: "species", value: species };
    this.write("strike", rig, []);
    this.pass(3);
    if (this.random.chance(0.25)) this.write("lost", rig, [kind]);
    else {
      const length = this.random.between(fish[species].low, fish[species].high);
      const weight = Math.max(
        1,
        Math.round(fish[species].weight * length ** 3 * this.random.between(0.94, 1.06, 2)),
      );
      const keep = this.random.chance(0.5);
      if (keep) this.kept.set(species, (this.kept.get(species) ?? 0) + 1);
      this.write("catch", rig, [
        kind,
        { kind: "measure", key: "weight", value: weight, unit: "lb" },
        { kind: "measure", key: "length", value: length, unit: "in" },
        { kind: "flag", key: keep ? "kept" : "released" },
      ]);
    }
    this.pass(4);
    this.write("again", rig, []);
  }

  private readProbe(): void {
    this.probe(this.outs.get("C1") ?? habits.C1.low);
  }
}
