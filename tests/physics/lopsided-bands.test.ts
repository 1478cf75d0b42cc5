/** Bands from a few solves, beside three thousand samples of the model itself; and how many solves they take. */
import { expect, test } from "vitest";
import { solveDownrigger } from "../../server/physics/downrigger.ts";
import { defaultSpreads, rigParameters } from "../../server/physics/downrigger-band.ts";
import { bandsOrSamples, type OutputsAt } from "../../server/physics/lopsided-bands.ts";
import { sampleBands } from "../../server/physics/sample-band.ts";
import { MPH_MS, rig, rod } from "./rig-maker.ts";

test.each([
  // ft out, mph, what the speed may be off in mph
  [230, 2.6, 0.3],
  [300, 3.2, 0.3],
  [400, 3.2, 0.7],
  [150, 2.5, 0.7],
  [100, 4, 0.5],
])("%d ft at %d mph, known to %d mph: within 5 %% of the band's width", (ft, mph, sdMph) => {
  const base = rig(ft, mph, [rod("R", 0, 20)]);
  const parameters = rigParameters(defaultSpreads(sdMph * MPH_MS)).filter((one) => one.luresOnly !== true);
  let solves = 0;
  const at: OutputsAt = (deviations) => {
    solves++;
    const moved = solveDownrigger(
      parameters.reduce((one, parameter, i) => parameter.moved(one, deviations[i] ?? 0), base),
    );
    return moved.ok ? [moved.ball.depthM] : undefined;
  };
  const alone = (i: number, deviations: number) => at(parameters.map((_, k) => (k === i ? deviations : 0)));
  const values = at([]) ?? [];
  const inputs = parameters.map(({ key }, i) => ({ key, at: (d: number) => alone(i, d) }));
  const [band] = bandsOrSamples(values, inputs, at);
  expect(solves).toBeLessThan(60);
  const [full] = sampleBands(parameters.length, at, 0.8, 3000) ?? [];
  const width = (full?.high ?? 0) - (full?.low ?? 0);
  expect(Math.abs((band?.low ?? 0) - (full?.low ?? 0))).toBeLessThan(0.05 * width);
  expect(Math.abs((band?.high ?? 0) - (full?.high ?? 0))).toBeLessThan(0.05 * width);
});

test("what multiplies is drawn in: two inputs that only work together", () => {
  const at: OutputsAt = ([a = 0, b = 0]) => [10 + a + b - 0.5 * (a + b) ** 2];
  const inputs = [0, 1].map((i) => ({ key: String(i), at: (d: number) => at(i === 0 ? [d] : [0, d]) }));
  const [band] = bandsOrSamples([10], inputs, at);
  const [full] = sampleBands(2, at, 0.8, 3000) ?? [];
  expect(band?.low).toBeCloseTo(full?.low ?? 0, 0);
  expect(band?.high).toBeCloseTo(full?.high ?? 0, 0);
});

test("where a side has no answer the model itself is sampled", () => {
  const at: OutputsAt = ([a = 0]) => (a > 1.2 && a < 1.4 ? undefined : [Math.exp(a)]);
  const [band] = bandsOrSamples([1], [{ key: "a", at: (d) => at([d]) }], at);
  expect(Number.isFinite(band?.low) && Number.isFinite(band?.high)).toBe(true);
});
