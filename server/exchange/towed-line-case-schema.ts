import * as z from "zod";
import { LINE_LIMITS } from "../physics/check-towed-line.ts";

/**
 * The shape of one reference case for the towed line, in SI. Every object is closed: a field that is not listed
 * could change the answer, so it is refused by name. Names, notes and stated answers are allowed and not read.
 */
const aside = z.unknown().optional();

const reynoldsLaw = z.strictObject({
  model: z.enum(["cheng", "sucker_brauer", "choo_casarella"]),
  mult: z.number().min(0).optional(),
  re: z.literal("normal").optional(),
});

const segment = z.strictObject({
  name: aside,
  /** Length and diameter, m; mass per length, kg/m; section that displaces water, m2; weight in water, N/m. */
  L: z.number().min(0),
  d: z.number().positive(),
  m: z.number().optional(),
  A: z.number().optional(),
  w: z.number().optional(),
  /** Drag coefficients across and along. */
  Cn: z.union([z.number().min(0), reynoldsLaw], { error: (issue) => whyNoCoefficient(issue.input) }),
  Ct: z.number().min(0),
});

const body = z.strictObject({
  name: aside,
  node: z.int().min(1),
  /** Weight in the water and other steady pulls, N. */
  W: z.number(),
  Fz: z.number().optional(),
  Fx: z.number().optional(),
  /** Drag and lift areas, m2. */
  CdA: z.number().min(0).optional(),
  ClA: z.number().optional(),
  /** Said for the reader; the drag is in `CdA` or `sphere`. */
  diameter: z.number().positive().optional(),
  sphere: z.strictObject({ diameter: z.number().positive(), mult: z.number().min(0).optional() }).optional(),
});

const line = z.strictObject({
  segments: z.array(segment).min(1).max(LINE_LIMITS.segments),
  bodies: z.array(body).max(LINE_LIMITS.bodies),
});

/** One case. A profile's own fields are checked once its type is known. */
export const towedLineCase = z.strictObject({
  id: z.union([z.string().min(1), z.number()], { error: "must be a text or a number" }),
  note: aside,
  comment: aside,
  source: aside,
  provenance: aside,
  water: z.strictObject({
    rho: z.number().positive(),
    nu: z.number().positive(),
    g: z.number().positive().optional(),
  }),
  profile: z.looseObject({ type: z.string() }),
  top: z.strictObject({ x: z.number(), z: z.number().min(0) }).optional(),
  line,
  branch: z.strictObject({ node: z.int().min(0), line }).optional(),
  freeEnd: z.boolean().optional(),
  analytic: aside,
  multi: aside,
  roots: aside,
  out: aside,
  branchOut: aside,
  allSolutions: aside,
});

/** The profiles that are solved: one speed, straight pieces between depths, or a smooth passage. m, m/s. */
export const flowProfile = z.discriminatedUnion("type", [
  z.strictObject({ type: z.literal("uniform"), U: z.number() }),
  z.strictObject({
    type: z.literal("piecewise"),
    z: z.array(z.number()).min(1).max(500),
    U: z.array(z.number()).min(1).max(500),
  }),
  z.strictObject({
    type: z.literal("tanh"),
    Uupper: z.number(),
    Ulower: z.number(),
    zmid: z.number(),
    halfwidth: z.number().positive(),
  }),
]);

/** A file of cases. Its cases are read one by one, so that one bad case spoils no other. */
export const towedLineFile = z.strictObject({
  format: z.literal("towed-line reference cases v1").optional(),
  method: aside,
  provenance: aside,
  note: aside,
  conventions: z.looseObject({ units: z.literal("SI").optional() }).optional(),
  cases: z.array(z.unknown()).max(10_000),
});

export type TowedLineCase = z.infer<typeof towedLineCase>;
export type CaseLine = z.infer<typeof line>;
export type CaseSegment = z.infer<typeof segment>;
export type CaseBody = z.infer<typeof body>;

/** The first thing wrong with a value, in plain words with its place: "line.segments[0].L: ...". */
export function plainIssue(error: z.ZodError, within = ""): string {
  const issue = error.issues[0];
  if (issue === undefined) return "the case cannot be read";
  const place = placeOf(issue.path, within);
  if (issue.code === "unrecognized_keys") {
    const names = issue.keys.map((key) => `'${key}'`).join(", ");
    return `unknown field ${names} in ${place || "the case"}; it could change the answer, so nothing is computed`;
  }
  const said = saidOf(issue);
  return place === "" ? said : `${place}: ${said}`;
}

function saidOf(issue: z.core.$ZodIssue): string {
  if (issue.code === "too_small" && issue.origin === "number")
    return `must be ${issue.inclusive ? "at least" : "more than"} ${issue.minimum}`;
  if (issue.code === "too_small") return `must have at least ${issue.minimum} of them`;
  if (issue.code === "too_big") return `must have no more than ${issue.maximum} of them`;
  return issue.message
    .replace(/^Invalid input: /, "")
    .replace("received undefined", "but it is missing")
    .replace("received NaN", "received one that is not a number")
    .replace("expected int", "expected a whole number");
}

/** What is wrong with a drag coefficient across the line, naming a law or a Reynolds number that is not known. */
function whyNoCoefficient(input: unknown): string {
  const whole =
    "must be a number of zero or more, or { model, mult } with a model of cheng, sucker_brauer or choo_casarella";
  if (typeof input !== "object" || input === null) return whole;
  const { model, re } = input as { model?: unknown; re?: unknown };
  if (typeof model === "string" && !reynoldsLaw.shape.model.safeParse(model).success)
    return `the drag law '${model}' is not supported; only cheng, sucker_brauer and choo_casarella`;
  if (re !== undefined && re !== "normal")
    return `a Reynolds number on '${String(re)}' is not supported; only on 'normal', the speed across the line`;
  return whole;
}

function placeOf(path: readonly PropertyKey[], within: string): string {
  return path.reduce<string>((text, key) => {
    if (typeof key === "number") return `${text}[${key}]`;
    return text === "" ? String(key) : `${text}.${String(key)}`;
  }, within);
}
