import { type CylinderDrag, constantDrag, reynoldsDrag } from "../physics/drag.ts";
import { type FlowProfile, uniformFlow } from "../physics/flow-profile.ts";
import {
  type LineSegment,
  type PointBody,
  type SolvedLine,
  solveTowedLine,
  type TowedLine,
  totalLengthM,
} from "../physics/towed-line.ts";
import {
  type CaseBody,
  type CaseLine,
  type CaseSegment,
  flowProfile,
  plainIssue,
  type TowedLineCase,
  towedLineCase,
  towedLineFile,
} from "./towed-line-case-schema.ts";

/** One node of an answer, in the field names of the case file: m, N. The top has no tension above it. */
export interface CaseNode {
  readonly node: number;
  readonly s: number;
  readonly x: number;
  readonly z: number;
  readonly tensionAbove: number | null;
  readonly tensionBelow: number;
}

/** The answer for one line, in the field names and units of the case file's `out`: m, N, degrees. */
export interface CaseOut {
  readonly depth: number;
  readonly setback: number;
  readonly topTension: number;
  readonly topAngleDeg: number;
  readonly topH: number;
  readonly topV: number;
  readonly endTension: number;
  /** Left out where nothing pulls on the lower end. */
  readonly endAngleDeg?: number;
  readonly nodes: readonly CaseNode[];
}

/** What one case comes to: the main line and its branch, or the plain reason why nothing is answered. */
export type CaseAnswer =
  | {
      readonly id: string;
      readonly out: CaseOut;
      readonly branchOut?: CaseOut & { readonly lureDepth: number };
      /** Every steady shape, shallowest first, where there is more than one; `out` is the deepest. */
      readonly allSolutions?: readonly CaseOut[];
      readonly chosen?: "deepest";
      /** In a sheared stream: how many times over an error of the model shows in the depth. */
      readonly conditioning?: number;
    }
  | { readonly id: string; readonly error: string };

/**
 * Solves a file of cases (an object with `cases`), a list of cases, or one case, as read from JSON. Each case
 * gets one answer, in order; a case that is malformed or not supported gets an error and spoils no other.
 */
export function solveTowedLineCases(input: unknown): CaseAnswer[] {
  if (Array.isArray(input)) return input.map(solveTowedLineCase);
  if (typeof input !== "object" || input === null || !("cases" in input))
    return [solveTowedLineCase(input, 0)];
  const file = towedLineFile.safeParse(input);
  if (file.success) return file.data.cases.map(solveTowedLineCase);
  const error = `the file: ${plainIssue(file.error)}`;
  const cases: unknown[] = Array.isArray(input.cases) ? input.cases : [undefined];
  return cases.map((one, index) => ({ id: idOf(one, index), error }));
}

/** Solves one case; `index` (from 0) names it where it has no id of its own. */
export function solveTowedLineCase(input: unknown, index: number): CaseAnswer {
  const id = idOf(input, index);
  const read = towedLineCase.safeParse(input);
  if (!read.success) return { id, error: plainIssue(read.error) };
  const flow = readProfile(read.data.profile);
  if (typeof flow === "string") return { id, error: flow };
  const why = contradiction(read.data);
  if (why !== undefined) return { id, error: why };
  return solveRead(id, read.data, flow);
}

function idOf(input: unknown, index: number): string {
  const id = typeof input === "object" && input !== null && "id" in input ? input.id : undefined;
  return (typeof id === "string" && id !== "") || typeof id === "number" ? String(id) : `case ${index + 1}`;
}

const PROFILE_TYPES = new Set(["uniform", "piecewise", "tanh"]);

/** The flow, or why there is none. */
function readProfile(profile: { readonly type: string }): FlowProfile | string {
  if (!PROFILE_TYPES.has(profile.type))
    return `a profile of type '${profile.type}' is not known; only uniform, piecewise and tanh`;
  const read = flowProfile.safeParse(profile);
  if (!read.success) return plainIssue(read.error, "profile");
  const { data } = read;
  if (data.type === "uniform") return uniformFlow(data.U);
  if (data.type === "piecewise") return { type: "piecewise", depthsM: data.z, speedsMS: data.U };
  const { Uupper, Ulower, zmid, halfwidth } = data;
  return { type: "tanh", upperMS: Uupper, lowerMS: Ulower, middleM: zmid, halfWidthM: halfwidth };
}

/** What a case says twice, differently. */
function contradiction(read: TowedLineCase): string | undefined {
  const { line, branch, freeEnd, water } = read;
  const hasEnd =
    line.bodies.some((body) => body.node === line.segments.length) || branch?.node === line.segments.length;
  if (freeEnd !== undefined && freeEnd === hasEnd)
    return freeEnd
      ? "freeEnd is true, and something hangs on the lower end"
      : "freeEnd is false, and nothing hangs on the lower end";
  for (const one of branch === undefined ? [line] : [line, branch.line]) {
    for (const [i, segment] of one.segments.entries()) {
      const why = weightContradiction(segment, water);
      if (why !== undefined) return `segment ${i + 1}: ${why}`;
    }
    for (const body of one.bodies) {
      const why = dragContradiction(body);
      if (why !== undefined) return `the body at node ${body.node} ${why}`;
    }
  }
  return undefined;
}

/** Share by which a stated weight may differ from the one that mass and section give, for rounded figures. */
const WEIGHT_SLACK = 1e-3;

function weightContradiction(segment: CaseSegment, water: TowedLineCase["water"]): string | undefined {
  const { w, m, A } = segment;
  const { g, rho } = water;
  if (m === undefined || A === undefined || g === undefined)
    return w === undefined ? "neither w nor all of m, A and g is given" : undefined;
  const size = Math.max(Math.abs(m), Math.abs(rho * A)) * g;
  if (w === undefined || Math.abs(w - (m - rho * A) * g) <= WEIGHT_SLACK * size) return undefined;
  return "w is not (m - rho A) g, so one of them is wrong";
}

function dragContradiction(body: CaseBody): string | undefined {
  if (body.CdA !== undefined && body.sphere !== undefined) return "has both CdA and sphere; give one";
  if (body.diameter !== undefined && body.CdA === undefined && body.sphere === undefined)
    return "has a diameter and neither CdA nor sphere to say what drag it has";
  return undefined;
}

/** Less than this share of the line above the surface is rounding. */
const SURFACE_SLACK = 1e-9;

function solveRead(id: string, read: TowedLineCase, flow: FlowProfile): CaseAnswer {
  const { water, branch } = read;
  const top = { xM: read.top?.x ?? 0, zM: read.top?.z ?? 0 };
  const line: TowedLine = {
    ...towedLine(read.line, water),
    branches: branch === undefined ? [] : [{ node: branch.node, line: towedLine(branch.line, water) }],
  };
  const solved = solveTowedLine(line, { densityKgM3: water.rho, kinematicViscosityM2S: water.nu }, flow, top);
  if (!solved.ok) return { id, error: solved.why };
  if (solved.leastDepthM < -SURFACE_SLACK * Math.max(1, totalLengthM(line.segments)))
    return { id, error: "part of the line comes above the surface, where the model does not hold" };
  const clipped = solved.branches[0];
  const { alternatives, conditioning } = solved;
  return {
    id,
    out: caseOut(solved, top.xM),
    ...(clipped === undefined
      ? {}
      : { branchOut: { ...caseOut(clipped, top.xM), lureDepth: clipped.depthM } }),
    ...(conditioning === undefined ? {} : { conditioning }),
    ...(alternatives === undefined
      ? {}
      : {
          allSolutions: [...alternatives, solved].map((one) => caseOut(one, top.xM)),
          chosen: "deepest" as const,
        }),
  };
}

function towedLine(line: CaseLine, water: TowedLineCase["water"]): TowedLine {
  return {
    segments: line.segments.map((segment) => lineSegment(segment, water)),
    bodies: line.bodies.map(pointBody),
  };
}

function lineSegment(segment: CaseSegment, water: TowedLineCase["water"]): LineSegment {
  const { L, d, m = 0, A = 0, Ct } = segment;
  return {
    lengthM: L,
    diameterM: d,
    weightNPerM: segment.w ?? (m - water.rho * A) * (water.g ?? 0),
    normalDrag: normalDrag(segment.Cn),
    tangentialCoefficient: Ct,
  };
}

const LAWS = { cheng: "cheng", sucker_brauer: "sucker-brauer", choo_casarella: "choo-casarella" } as const;

function normalDrag(cn: CaseSegment["Cn"]): CylinderDrag {
  return typeof cn === "number" ? constantDrag(cn) : reynoldsDrag(LAWS[cn.model], cn.mult ?? 1);
}

function pointBody(body: CaseBody): PointBody {
  const { sphere } = body;
  return {
    node: body.node,
    weightN: body.W + (body.Fz ?? 0),
    forceXN: body.Fx ?? 0,
    dragAreaM2: body.CdA ?? 0,
    liftAreaM2: body.ClA ?? 0,
    ...(sphere === undefined ? {} : { sphere: { diameterM: sphere.diameter, multiplier: sphere.mult ?? 1 } }),
  };
}

function caseOut(line: SolvedLine, fromXM: number): CaseOut {
  const end = line.nodes.at(-1);
  const endAngleDeg = end?.angleAboveDeg ?? null;
  return {
    depth: line.depthM,
    setback: (end?.xM ?? 0) - fromXM,
    topTension: line.topTensionN,
    topAngleDeg: line.topAngleDeg,
    topH: line.topForceXN,
    topV: line.topForceZN,
    endTension: end?.tensionAboveN ?? 0,
    ...(endAngleDeg === null ? {} : { endAngleDeg }),
    nodes: line.nodes.map((node, i) => ({
      node: i,
      s: node.alongM,
      x: node.xM,
      z: node.zM,
      tensionAbove: i === 0 ? null : node.tensionAboveN,
      tensionBelow: node.tensionBelowN,
    })),
  };
}
