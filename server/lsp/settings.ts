/** The user's settings, validated where they cross into the server. */
import * as z from "zod/mini";
import type { Severity } from "../checks/check.ts";
import type { SeverityChoices } from "../checks/run-checks.ts";

const severity = z.enum(["error", "warning", "information", "hint", "off"]);

const settingsSchema = z.object({
  hints: z.catch(z.object({ depth: z.catch(z.boolean(), true) }), { depth: true }),
  checks: z.catch(z.record(z.string(), z.catch(severity, "off")), {}),
});

/** Settings in use. */
export interface Settings {
  readonly showDepths: boolean;
  readonly severities: SeverityChoices;
}

/** What holds when nothing is set. */
export const DEFAULT_SETTINGS: Settings = { showDepths: true, severities: new Map() };

/** Reads the `deepwake` section; whatever is malformed falls back to its default. */
export function readSettings(section: unknown): Settings {
  const read = settingsSchema.safeParse(section ?? {});
  if (!read.success) return DEFAULT_SETTINGS;
  const severities = new Map<string, Severity | "off">(Object.entries(read.data.checks));
  return { showDepths: read.data.hints.depth, severities };
}
