/** The setting `deepwake.checks` in package.json: every check with its usual severity, from the one table of checks. */
import { CATALOG } from "../../server/checks/catalog.ts";

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

/** package.json with the setting as it has to be; everything else as it is. */
export function withChecksSetting(current: string): string {
  const manifest = JSON.parse(current);
  manifest.contributes.configuration.properties["deepwake.checks"] = checksSetting();
  return `${JSON.stringify(manifest, null, 2)}\n`;
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
