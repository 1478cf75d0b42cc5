import type { CylinderDrag } from "./drag.ts";
import { type FlowProfile, whyNoFlow } from "./flow-profile.ts";
import { whyNotInRange } from "./refusal.ts";
import type { LineSegment, PointBody, TowedLine, TowPoint } from "./towed-line.ts";
import type { Water } from "./water.ts";

/** The widest inputs that the general solver takes; far beyond any trolling line, so that only slips are refused. */
export const LINE_LIMITS = {
  segments: 200,
  bodies: 200,
  branchDepth: 3,
  lengthM: 20_000,
  diameterM: 1,
  speedMS: 30,
  forceN: 1e6,
  areaM2: 100,
  coefficient: 100,
} as const;

/** Why a towed line cannot be solved as stated, as a plain reason, or `undefined` when it can be tried. */
export function checkTowedLine(
  line: TowedLine,
  water: Water,
  flow: FlowProfile,
  top: TowPoint,
): string | undefined {
  return (
    whyNotInRange("the water's density", water.densityKgM3, 1, 3000, "kg/m3") ??
    whyNotInRange("the water's viscosity", water.kinematicViscosityM2S, 1e-9, 1, "m2/s") ??
    whyNoFlow(flow, -LINE_LIMITS.speedMS, LINE_LIMITS.speedMS) ??
    whyNotInRange("the top's place astern", top.xM, -1e5, 1e5, "m") ??
    whyNotInRange("the top's depth", top.zM, 0, 1e4, "m") ??
    checkLine(line, "", 0)
  );
}

/** `where` is "" for the main line and "the branch's " for one clipped to it. */
function checkLine(line: TowedLine, where: string, depth: number): string | undefined {
  const { segments, bodies, branches = [] } = line;
  if (depth > LINE_LIMITS.branchDepth) return "branches on branches go too deep";
  if (segments.length === 0) return `${where || "the "}line has no segment`;
  if (segments.length > LINE_LIMITS.segments)
    return `${where || "the "}line has ${segments.length} segments, more than ${LINE_LIMITS.segments}`;
  if (bodies.length > LINE_LIMITS.bodies || branches.length > LINE_LIMITS.bodies)
    return `${where || "the "}line carries more than ${LINE_LIMITS.bodies} bodies or branches`;
  for (const [i, segment] of segments.entries()) {
    const why = checkSegment(segment, `${where}segment ${i + 1}`);
    if (why !== undefined) return why;
  }
  for (const body of bodies) {
    const why = checkBody(body, segments.length, where);
    if (why !== undefined) return why;
  }
  for (const branch of branches) {
    const why =
      checkNode(branch.node, 0, segments.length, `${where}branch`) ??
      checkLine(branch.line, "the branch's ", depth + 1);
    if (why !== undefined) return why;
  }
  return undefined;
}

function checkSegment(segment: LineSegment, name: string): string | undefined {
  const { lengthM, diameterM, weightNPerM, normalDrag, tangentialCoefficient } = segment;
  return (
    whyNotInRange(`the length of ${name}`, lengthM, 0, LINE_LIMITS.lengthM, "m") ??
    whyNotInRange(`the diameter of ${name}`, diameterM, 1e-6, LINE_LIMITS.diameterM, "m") ??
    whyNotInRange(`the weight per length of ${name}`, weightNPerM, -1e4, 1e4, "N/m") ??
    checkDrag(normalDrag, name) ??
    whyNotInRange(`the drag coefficient along ${name}`, tangentialCoefficient, 0, LINE_LIMITS.coefficient, "")
  );
}

function checkDrag(drag: CylinderDrag, name: string): string | undefined {
  return (
    whyNotInRange(`the drag coefficient of ${name}`, drag.coefficient, 0, LINE_LIMITS.coefficient, "") ??
    whyNotInRange(`the drag multiplier of ${name}`, drag.multiplier, 0, LINE_LIMITS.coefficient, "")
  );
}

function checkBody(body: PointBody, nodes: number, where: string): string | undefined {
  const name = `${where}body at node ${body.node}`;
  const { forceN, areaM2 } = LINE_LIMITS;
  return (
    checkNode(body.node, 1, nodes, `${where}body`) ??
    whyNotInRange(`the weight of the ${name}`, body.weightN, -forceN, forceN, "N") ??
    whyNotInRange(`the pull on the ${name}`, body.forceXN, -forceN, forceN, "N") ??
    whyNotInRange(`the drag area of the ${name}`, body.dragAreaM2, 0, areaM2, "m2") ??
    whyNotInRange(`the lift area of the ${name}`, body.liftAreaM2, -areaM2, areaM2, "m2") ??
    checkSphere(body, name)
  );
}

function checkSphere(body: PointBody, name: string): string | undefined {
  if (body.sphere === undefined) return undefined;
  return (
    whyNotInRange(`the diameter of the ${name}`, body.sphere.diameterM, 1e-6, 10, "m") ??
    whyNotInRange(`the drag multiplier of the ${name}`, body.sphere.multiplier, 0, 100, "")
  );
}

function checkNode(node: number, least: number, most: number, name: string): string | undefined {
  if (Number.isInteger(node) && node >= least && node <= most) return undefined;
  return `a ${name} is at node ${node}, and the line has nodes ${least} to ${most}`;
}
