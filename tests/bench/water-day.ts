import { type Random, roundTo } from "./random.ts";

/**
 * The water and the boat on one invented day, as far as the readings of a believable trip need them:
 * a temperature profile, a speed that wanders, a course that turns, a position that follows from both.
 */
export interface WaterDay {
  profile: { depthFt: number; tempF: number }[];
  /** Moves the boat on to a minute of the day. */
  sailTo(minute: number): void;
  /** Takes a new course and says to which side the turn went. */
  turn(): { side: "left" | "right"; course: number };
  /** Puts the boat elsewhere, a few miles off, for a second stretch of fishing. */
  run(): void;
  /** What the instruments say now. */
  readings(): { probeMph: number; surfaceMph: number; gpsMph: number; course: number };
  position(): { latitude: number; longitude: number };
  temperatureAt(depthFt: number): number;
  bottomFt(): number;
  /** The ball's depth for an amount of cable at the present speed: a rough rule, good enough to be believed. */
  ballDepth(outFt: number): number;
}

/** Starts a day. */
export function makeWaterDay(random: Random, startMinute: number): WaterDay {
  const warmer = random.between(-3, 4);
  const profile = [0, 30, 50, 70, 100].map((depthFt, index) => ({
    depthFt,
    tempF: ([61, 58, 50, 47, 43][index] ?? 43) + (index < 2 ? warmer : Math.round(warmer / 3)),
  }));
  let minute = startMinute;
  let course = random.between(0, 35) * 10;
  let speedMph = 2.4;
  let bottom = random.between(150, 175);
  let latitude = 44.76 + random.between(0, 0.02, 4);
  let longitude = -86.36 + random.between(0, 0.02, 4);

  const advance = (miles: number): void => {
    const radians = (course * Math.PI) / 180;
    latitude += (miles * Math.cos(radians)) / 69.1;
    longitude += (miles * Math.sin(radians)) / 49.1;
  };

  return {
    profile,
    sailTo(to) {
      advance(((to - minute) / 60) * speedMph);
      if (to > minute) {
        speedMph = Math.min(2.6, Math.max(2.2, speedMph + random.between(-0.06, 0.06, 2)));
        bottom = Math.min(190, Math.max(145, bottom + random.between(-2, 2)));
      }
      minute = to;
    },
    turn() {
      const side = random.pick(["left", "right"]);
      const by = random.between(4, 16) * 10;
      course = (course + (side === "right" ? by : 360 - by)) % 360;
      return { side, course };
    },
    run() {
      advance(3);
      bottom = random.between(150, 175);
    },
    readings: () => ({
      probeMph: roundTo(speedMph + 0.1 + random.between(-0.05, 0.05, 2), 1),
      surfaceMph: roundTo(speedMph + random.between(-0.1, 0.1, 2), 1),
      gpsMph: roundTo(speedMph + random.between(-0.1, 0.1, 2), 1),
      course: (course + 360 + random.between(-2, 2)) % 360,
    }),
    position: () => ({ latitude: roundTo(latitude, 4), longitude: roundTo(longitude, 4) }),
    temperatureAt(depthFt) {
      const above = profile.findLast((point) => point.depthFt <= depthFt) ?? { depthFt: 0, tempF: 60 };
      const below = profile.find((point) => point.depthFt > depthFt) ?? above;
      const share = below === above ? 0 : (depthFt - above.depthFt) / (below.depthFt - above.depthFt);
      const mean = above.tempF + share * (below.tempF - above.tempF);
      return roundTo(mean + random.between(-0.3, 0.3, 1), 1);
    },
    bottomFt: () => Math.round(bottom),
    ballDepth: (outFt) => outFt - 17 * (outFt / 150) ** 2.6 * ((speedMph + 0.1) / 2.5) ** 3,
  };
}
