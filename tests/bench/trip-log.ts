import type { Random } from "./random.ts";
import { type Item, measure, type RigName, type TripEvent } from "./trip-facts.ts";
import { makeWaterDay, type WaterDay } from "./water-day.ts";

/** The minute of the day that every trip departs at. */
const departure = 285;
const minutesPerLine = 2.8;

/** A trip's events so far, with the clock, the water and the instruments that the next one depends on. */
export class TripLog {
  readonly events: TripEvent[] = [];
  protected readonly random: Random;
  protected readonly water: WaterDay;
  private clock = departure;

  constructor(random: Random) {
    this.random = random;
    this.water = makeWaterDay(random, departure);
  }

  /** Hours since the departure. */
  protected hours(): number {
    return (this.clock - departure) / 60;
  }

  /** A reading at C1's probe, 1.25 ft above its ball. */
  protected probe(outFt: number): void {
    const depth = Math.round(this.water.ballDepth(outFt) - 1.25);
    this.write("probe", "C1", [
      measure("depth", depth, "ft"),
      measure("temp", this.water.temperatureAt(depth), "F"),
      measure("speed", this.water.readings().probeMph, "mph"),
    ]);
  }

  /** What the instruments read at the surface. */
  protected surface(): void {
    const temp = measure("temp", this.water.temperatureAt(0), "F");
    this.write("surface", undefined, [temp, measure("speed", this.water.readings().surfaceMph, "mph")]);
  }

  /** Where the boat is and goes over ground. */
  protected gps(): void {
    const { gpsMph, course } = this.water.readings();
    this.write("gps", undefined, [
      measure("speed", gpsMph, "mph"),
      { kind: "number", key: "course", word: "course", value: course },
      { kind: "position", ...this.water.position() },
    ]);
  }

  /** Writes one event now, and lets a little time go by. */
  protected write(verb: string, rig: RigName | undefined, items: readonly Item[]): void {
    const minute = Math.floor(this.clock);
    this.events.push(rig === undefined ? { minute, verb, items } : { minute, verb, rig, items });
    this.pass(this.random.next() * 2 * minutesPerLine);
  }

  /** Lets minutes go by; the boat sails on. */
  protected pass(minutes: number): void {
    this.clock += minutes;
    this.water.sailTo(Math.floor(this.clock));
  }
}
