/** The settings in package.json that come from tables: checks, thresholds and what is shown beside a line. */
import { CATALOG } from "../../server/checks/catalog.ts";
import { THRESHOLDS, type ThresholdRow } from "../../server/model/thresholds.ts";
import { ALL_HINTS, HINT_KINDS } from "../../server/service/hint-kinds.ts";

const CHOICES = {
  enum: ["error", "warning", "information", "hint", "off"],
  enumDescriptions: [
    "Shown as an error.",
    "Shown as a warning.",
    "Shown as information.",
    "Shown as a hint.",
    "Not shown.",
  ],
};

/** package.json with the settings as they have to be; everything else, and settings written by hand, as they are. */
export function withSettings(current: string): string {
  const manifest = JSON.parse(current);
  const { configuration } = manifest.contributes;
  const byHand = Object.entries(configuration.properties).filter(
    ([name]) => !/^deepwake\.(?:checks$|hints\.|thresholds\.)/u.test(name),
  );
  configuration.properties = Object.fromEntries([
    ...HINT_KINDS.map(({ name, doc }) => [`deepwake.hints.${name}`, hintSetting(ALL_HINTS[name], doc)]),
    ...byHand,
    ["deepwake.checks", checksSetting()],
    ...Object.values(THRESHOLDS).map((row) => [`deepwake.thresholds.${row.name}`, thresholdSetting(row)]),
  ]);
  return `${JSON.stringify(manifest, null, 2)}\n`;
}

function hintSetting(isShown: boolean, description: string): object {
  return { type: "boolean", default: isShown, scope: "window", description };
}

/** A number where it has no unit, else a text: the number and its unit. */
function thresholdSetting({ dimension, written, doc }: ThresholdRow): object {
  const value =
    dimension === null
      ? { type: "number", minimum: 0, default: Number(written) }
      : { type: "string", default: written };
  const description = `${doc} A \`threshold\` line in a boat's gear book goes before this.`;
  return { ...value, scope: "window", markdownDescription: description };
}

function checksSetting(): object {
  const properties = Object.fromEntries(
    CATALOG.map(({ slug, summary, severities, isOffByDefault }) => [
      slug,
      { description: `${summary} Usually ${isOffByDefault ? "off" : severities.join(" or ")}.` },
    ]),
  );
  return {
    type: "object",
    scope: "window",
    default: {},
    markdownDescription:
      "How grave a check is for everything you open, by its name: " +
      '`{ "reading-stale": "off", "unknown-lure": "warning" }`. ' +
      "Each check has a page in docs/checks. For one boat write `quiet` in its gear book, for one line the word `sure`.",
    properties,
    patternProperties: { ".*": CHOICES },
  };
}
