/** What a fit leaves over of each reading, as pictures: dots for a terminal, SVG for a page. */
import { findUnit, fromSi } from "../../grammar/units.ts";
import type { FittedGroup } from "../analysis/fitted-group.ts";
import { lengthUnit, lengthWords } from "../model/figures.ts";
import type { Gear } from "../model/gear-types.ts";

/** Where a residual lies on a strip of so many columns, an odd number: `    ·   |  ●     `. */
export function residualStrip(residualM: number, mostM: number, columns: number, isFar: boolean): string {
  const half = (columns - 1) / 2;
  const share = mostM > 0 ? residualM / mostM : 0;
  const at = half + Math.round(half * Math.min(1, Math.max(-1, share)));
  return Array.from({ length: columns }, (_, i) =>
    i === at ? (isFar ? "○" : "●") : i === half ? "│" : "·",
  ).join("");
}

/** The farthest residual of a fit, rounded up to whole units of the boat, m; at least two units. */
export function mostResidualM({ fit, readings: [{ gear }] }: FittedGroup): number {
  if (!fit.ok) return 0;
  const row = findUnit(lengthUnit(gear));
  const unitM = row?.factor ?? 1;
  const most = Math.max(...fit.readings.map((one) => Math.abs(one.residualM)));
  return unitM * Math.max(2, Math.ceil(most / unitM));
}

const WIDTH = 640;
const PANEL = 260;
const LEFT = 64;
const RIGHT = 20;
const TOP = 40;
const BOTTOM = 44;

/** One panel a rig: cable out to the right, measured less expected downward, each with one standard error. */
export function residualSvg(calibrations: readonly FittedGroup[]): string {
  const fitted = calibrations.filter((one) => one.fit.ok);
  const height = Math.max(1, fitted.length) * PANEL;
  const panels = fitted.map((one, i) => `<g transform="translate(0 ${i * PANEL})">\n${panel(one)}\n</g>`);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${height}" width="${WIDTH}" height="${height}" font-family="sans-serif" font-size="13" role="img">`,
    "<title>Readings against the fit, by cable out</title>",
    `<rect width="${WIDTH}" height="${height}" fill="#ffffff"/>`,
    ...panels,
    "</svg>",
    "",
  ].join("\n");
}

function panel(calibration: FittedGroup): string {
  const { fit, readings, rig } = calibration;
  if (!fit.ok) return "";
  const { gear } = readings[0];
  const mostM = mostResidualM(calibration);
  const farM = Math.max(...readings.map((one) => one.counterM), 1);
  const x = (m: number): string => rounded(LEFT + (m / farM) * (WIDTH - LEFT - RIGHT));
  const middle = (TOP + PANEL - BOTTOM) / 2;
  const y = (m: number): number => middle + (clamped(m / mostM) * (PANEL - TOP - BOTTOM)) / 2;
  const dots = fit.readings.map((one) => {
    const at = x(readings[one.index]?.counterM ?? 0);
    const bar = `<line x1="${at}" x2="${at}" y1="${rounded(y(one.residualM - one.sdM))}" y2="${rounded(y(one.residualM + one.sdM))}" stroke="#9db2bd"/>`;
    const look = one.weight < 1 ? 'fill="#ffffff" stroke="#b3541e"' : 'fill="#1f5f7a"';
    return `${bar}<circle cx="${at}" cy="${rounded(y(one.residualM))}" r="4" ${look}/>`;
  });
  const label = (m: number, text: string): string =>
    `<text x="${LEFT - 8}" y="${rounded(y(m) + 4)}" text-anchor="end" fill="#333333">${text}</text>`;
  return [
    `<text x="${LEFT}" y="22" fill="#111111" font-weight="bold">${escaped(rig)}: readings against the fit</text>`,
    `<line x1="${LEFT}" x2="${WIDTH - RIGHT}" y1="${rounded(y(0))}" y2="${rounded(y(0))}" stroke="#333333"/>`,
    label(-mostM, `${signed(gear, -mostM)}`),
    label(0, "0"),
    label(mostM, `${signed(gear, mostM)}`),
    `<text x="${LEFT}" y="${PANEL - 14}" fill="#333333">cable out by the counter, 0 to ${escaped(lengthWords(gear, farM))}; deeper than expected is down</text>`,
    ...dots,
  ].join("\n");
}

function clamped(share: number): number {
  return Math.min(1, Math.max(-1, share));
}

function signed(gear: Gear, m: number): string {
  const unit = lengthUnit(gear);
  const row = findUnit(unit);
  const value = Math.round(row === undefined ? m : fromSi(m, row));
  return `${value > 0 ? "+" : ""}${value} ${escaped(unit)}`;
}

function rounded(value: number): string {
  return String(Math.round(value * 10) / 10);
}

function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
}
