/** The figures of docs/physics.md: lines of the example boat as the solver has them hang. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "../../grammar/parse.ts";
import { downriggerTask } from "../../server/analysis/downrigger-input.ts";
import { longLineTask } from "../../server/analysis/long-line-input.ts";
import { resolveGear } from "../../server/model/gear.ts";
import { NO_SETTING, type Setting } from "../../server/model/setting.ts";
import type { Curve } from "../../server/physics/curve.ts";
import { uniformFlow } from "../../server/physics/flow-profile.ts";
import { downriggerCurves, longLineCurves } from "../../server/physics/rig-curves.ts";

const FOOT_M = 0.3048;
const MPH_MS = 0.44704;
const BOAT = "Bright Penny";
const DAY = "2031-07-19";
const LURE = "glow-spoon";
const SURFACE = { behindM: 0, acrossM: 0, depthM: 0 };

const book = join(import.meta.dirname, "../../examples/bright-penny/bright-penny.gear");

/** One line of a figure. */
interface Drawn {
  readonly label: string;
  readonly curve: Curve;
  readonly isThin: boolean;
}

function waterAt(mph: number) {
  return { flow: uniformFlow(mph * MPH_MS), speedSdMS: 0.1 * MPH_MS, waterTemperatureC: 10 };
}

/** The lines of one rig of the book with so much out, in feet; throws where the model has none. */
function linesOf(rigName: string, outFt: number, mph: number, label: string): Drawn[] {
  const gear = resolveGear([{ uri: book, parse: parse(readFileSync(book, "utf8")) }], BOAT, DAY);
  const rig = gear.rigs.get(rigName);
  if (rig === undefined) throw new Error(`the example book has no rig ${rigName}`);
  const setting: Setting = { ...NO_SETTING, outM: outFt * FOOT_M, lure: LURE, setbackM: 20 * FOOT_M };
  if (rig.kind !== "downrigger") {
    const task = longLineTask(gear, rig, setting, waterAt(mph));
    const parts = task.ok ? longLineCurves(task.line, undefined, SURFACE) : undefined;
    if (parts === undefined) throw new Error(`${rigName} has no curve`);
    return parts.map(({ curve }) => ({ label, curve, isThin: false }));
  }
  const task = downriggerTask(gear, rig, new Map([[rigName, { setting, isClipped: true }]]), waterAt(mph));
  const parts = task.ok ? downriggerCurves(task.downrigger, undefined, SURFACE) : undefined;
  if (parts === undefined) throw new Error(`${rigName} has no curve`);
  return parts
    .filter(({ kind }) => kind !== "rod line")
    .map(({ kind, curve }) => ({ label: kind === "cable" ? label : "", curve, isThin: kind !== "cable" }));
}

/** Several rigs at one speed. */
export function rigsFigure(): string {
  return figure("Lines of the example boat at 2.4 mph", [
    ...linesOf("C1", 150, 2.4, "C1: 150 ft of cable, 12 lb"),
    ...linesOf("SD", 150, 2.4, "SD: diver, 150 ft of wire"),
    ...linesOf("CU", 250, 2.4, "CU: 250 ft of copper"),
    ...linesOf("PB", 240, 2.4, "PB: 8 colors of leadcore"),
  ]);
}

/** One downrigger at several speeds. */
export function speedsFigure(): string {
  const speeds = [1.5, 2, 2.5, 3, 3.5];
  return figure(
    "C1 with 150 ft of cable out, by speed",
    speeds.flatMap((mph) => linesOf("C1", 150, mph, `${mph} mph`)),
  );
}

const WIDTH = 720;
const HEIGHT = 420;
const LEFT = 56;
const TOP = 44;
const COLORS = ["#1f5f7a", "#b3541e", "#4a7a1f", "#7a1f5f", "#555555"];

function figure(title: string, lines: readonly Drawn[]): string {
  const points = lines.flatMap(({ curve }) => curve);
  const farFt = 50 * Math.ceil(Math.max(...points.map((one) => one.behindM)) / FOOT_M / 50);
  const deepFt = 25 * Math.ceil(Math.max(...points.map((one) => one.depthM)) / FOOT_M / 25);
  const scale = Math.min((WIDTH - LEFT - 190) / farFt, (HEIGHT - TOP - 40) / deepFt);
  const x = (ft: number): string => (LEFT + ft * scale).toFixed(1);
  const y = (ft: number): string => (TOP + ft * scale).toFixed(1);
  const labels = lines.filter(({ label }) => label !== "").map(({ label }) => label);
  const bottom = Number(y(deepFt));
  const rows = Array.from({ length: deepFt / 25 + 1 }, (_, i) => 25 * i);
  const columns = Array.from({ length: farFt / 50 + 1 }, (_, i) => 50 * i);
  let color = -1;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${Math.ceil(bottom) + 40}" font-family="sans-serif" font-size="12" role="img">`,
    `<title>${title}</title>`,
    '<rect width="100%" height="100%" fill="#ffffff"/>',
    `<text x="${LEFT}" y="20" font-weight="bold" fill="#111111">${title}</text>`,
    ...rows.map(
      (ft) =>
        `<line x1="${x(0)}" x2="${x(farFt)}" y1="${y(ft)}" y2="${y(ft)}" stroke="#d5dde2"/><text x="${LEFT - 6}" y="${y(ft + 1)}" text-anchor="end" fill="#333333">${ft}</text>`,
    ),
    ...columns.map(
      (ft) => `<text x="${x(ft)}" y="${bottom + 16}" text-anchor="middle" fill="#333333">${ft}</text>`,
    ),
    `<text x="${x(farFt / 2)}" y="${bottom + 32}" text-anchor="middle" fill="#333333">feet behind; depth in feet on the left</text>`,
    ...lines.map(({ label, curve, isThin }) => {
      if (label !== "") color = labels.indexOf(label);
      const path = curve
        .map((one, i) => `${i === 0 ? "M" : "L"}${x(one.behindM / FOOT_M)} ${y(one.depthM / FOOT_M)}`)
        .join("");
      return `<path d="${path}" fill="none" stroke="${COLORS[color % COLORS.length]}" stroke-width="${isThin ? 1 : 2}"/>`;
    }),
    ...labels.map(
      (label, i) =>
        `<text x="${Number(x(farFt)) + 10}" y="${TOP + 14 + 18 * i}" fill="${COLORS[i % COLORS.length]}">${label}</text>`,
    ),
    "</svg>",
    "",
  ].join("\n");
}
