import { describe, expect, test } from "vitest";
import { settle } from "../../server/physics/settle.ts";
import { expectNear } from "./line-maker.ts";

const start = (...point: number[]) => ({ point: Float64Array.from(point) });

describe("settling a point that its map leaves in place", () => {
  test("where plain repetition swings for ever", () => {
    const swing = (from: Float64Array, to: Float64Array) => {
      to[0] = 4 - 1.02 * (from[0] ?? 0);
      to[1] = 0.5 * (from[1] ?? 0) + 0.1 * (from[0] ?? 0) ** 2;
      return true;
    };
    const { point, reached, rounds } = settle(swing, start(0, 0), 1e-12, 10);
    expect(reached).toBe(true);
    expect(rounds).toBeLessThan(20);
    expectNear("x", point[0] ?? Number.NaN, 4 / 2.02, 1e-11);
    expectNear("y", point[1] ?? Number.NaN, 0.2 * (4 / 2.02) ** 2, 1e-11);
  });
  test("a neighbour's answer saves rounds", () => {
    const map = (shift: number) => (from: Float64Array, to: Float64Array) => {
      to[0] = shift + Math.cos(from[0] ?? 0);
      return true;
    };
    const here = settle(map(0), start(0), 1e-12, 10);
    const near = settle(map(0.001), here, 1e-12, 10);
    expect(near.reached).toBe(true);
    expect(near.rounds).toBeLessThan(here.rounds);
  });
  test("a map without a fixed point, or without an answer, is reported", () => {
    const away = (from: Float64Array, to: Float64Array) => {
      to[0] = (from[0] ?? 0) + 1;
      return true;
    };
    expect(settle(away, start(0), 1e-9, 1).reached).toBe(false);
    expect(settle(() => false, start(0), 1e-9, 1).reached).toBe(false);
  });
  test("nothing to settle is settled", () => {
    expect(settle(() => true, start(), 1e-9, 1).reached).toBe(true);
  });
});
