/** The user's settings, read by hand where they cross into the server: a schema library would double their weight. */
import type { Severity } from "../checks/check.ts";
import type { SeverityChoices } from "../checks/run-checks.ts";
import { ALL_HINTS, type HintParts } from "../service/inlay-hints.ts";

/** Settings in use. */
export interface Settings {
  readonly hints: HintParts;
  readonly severities: SeverityChoices;
  /** Files that aren't open are checked too. */
  readonly checksWorkspace: boolean;
}

/** What holds when nothing is set. */
export const DEFAULT_SETTINGS: Settings = {
  hints: ALL_HINTS,
  severities: new Map(),
  checksWorkspace: true,
};

/** What a check's severity may be set to. */
const CHOICES: readonly unknown[] = ["error", "warning", "information", "hint", "off"];

/** Reads the `deepwake` section; whatever is malformed falls back to its default. */
export function readSettings(section: unknown): Settings {
  const hints = member(section, "hints");
  const shows = (part: keyof HintParts): boolean => {
    const chosen = member(hints, part);
    return typeof chosen === "boolean" ? chosen : ALL_HINTS[part];
  };
  const whole = member(member(section, "check"), "wholeWorkspace");
  const checks = member(section, "checks");
  const chosen = isObject(checks) ? Object.entries(checks).filter(([, choice]) => isChoice(choice)) : [];
  return {
    hints: { depth: shows("depth"), temperature: shows("temperature") },
    severities: new Map(chosen as [string, Severity | "off"][]),
    checksWorkspace: typeof whole === "boolean" ? whole : DEFAULT_SETTINGS.checksWorkspace,
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
    a.hints.depth === b.hints.depth &&
    a.hints.temperature === b.hints.temperature &&
    a.checksWorkspace === b.checksWorkspace &&
    a.severities.size === b.severities.size &&
    [...a.severities].every(([slug, choice]) => b.severities.get(slug) === choice)
  );
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
