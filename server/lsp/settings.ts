/** The user's settings, read by hand where they cross into the server: a schema library would double their weight. */
import type { Severity } from "../checks/check.ts";
import type { SeverityChoices } from "../checks/run-checks.ts";
import { ALL_HINTS, HINT_KINDS, type HintName, type HintParts } from "../service/hint-kinds.ts";
import { readThresholdSettings, type ThresholdSettings } from "../service/threshold-settings.ts";

/** Settings in use. */
export interface Settings {
  readonly hints: HintParts;
  readonly severities: SeverityChoices;
  /** Files that aren't open are checked too. */
  readonly checksWorkspace: boolean;
  /** For boats whose gear book does not state them. */
  readonly thresholds: ThresholdSettings["chosen"];
  /** What of the settings can't be used, and why, in sentences. */
  readonly problems: readonly string[];
}

/** What holds when nothing is set. */
export const DEFAULT_SETTINGS: Settings = {
  hints: ALL_HINTS,
  severities: new Map(),
  checksWorkspace: true,
  thresholds: new Map(),
  problems: [],
};

/** What a check's severity may be set to. */
const CHOICES: readonly unknown[] = ["error", "warning", "information", "hint", "off"];

/** Reads the `deepwake` section; whatever is malformed falls back to its default. */
export function readSettings(section: unknown): Settings {
  const hints = member(section, "hints");
  const shown = HINT_KINDS.map(({ name }): [HintName, boolean] => {
    const chosen = member(hints, name);
    return [name, typeof chosen === "boolean" ? chosen : ALL_HINTS[name]];
  });
  const whole = member(member(section, "check"), "wholeWorkspace");
  const checks = member(section, "checks");
  const chosen = isObject(checks) ? Object.entries(checks).filter(([, choice]) => isChoice(choice)) : [];
  const thresholds = member(section, "thresholds");
  const read = readThresholdSettings(isObject(thresholds) ? thresholds : {});
  return {
    hints: Object.fromEntries(shown) as HintParts,
    severities: new Map(chosen as [string, Severity | "off"][]),
    checksWorkspace: typeof whole === "boolean" ? whole : DEFAULT_SETTINGS.checksWorkspace,
    thresholds: read.chosen,
    problems: read.problems,
  };
}

/** Where the client lets something be kept between runs; nowhere in a workspace that isn't trusted. */
export function storageIn(options: unknown): string | undefined {
  const storage = member(options, "storage");
  return typeof storage === "string" && storage !== "" && member(options, "trusted") !== false
    ? storage
    : undefined;
}

/** True when nothing would change. */
export function isSameSettings(a: Settings, b: Settings): boolean {
  return (
    HINT_KINDS.every(({ name }) => a.hints[name] === b.hints[name]) &&
    a.checksWorkspace === b.checksWorkspace &&
    isSameMap(a.severities, b.severities) &&
    isSameMap(a.thresholds, b.thresholds)
  );
}

function isSameMap(a: ReadonlyMap<string, unknown>, b: ReadonlyMap<string, unknown>): boolean {
  return a.size === b.size && [...a].every(([key, value]) => String(b.get(key)) === String(value));
}

function isChoice(choice: unknown): choice is Severity | "off" {
  return CHOICES.includes(choice);
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function member(value: unknown, name: string): unknown {
  return isObject(value) ? value[name] : undefined;
}
