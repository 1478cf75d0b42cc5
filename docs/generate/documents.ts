/** Every file that is generated, whole or in part. */
import { textmateGrammar } from "../../grammar/highlighting/textmate-grammar.ts";
import { checkExamples } from "./check-examples.ts";
import { checksIndex } from "./checks-index.ts";
import { CLI_SCHEMAS } from "./cli-schemas.ts";
import { defaultsTable } from "./defaults-table.ts";
import { rigsFigure, speedsFigure } from "./depth-figures.ts";
import { formatTable } from "./format-table.ts";
import { fillParts, type Parts } from "./generated-parts.ts";
import { grammarRules } from "./grammar-rules.ts";
import { withSettings } from "./settings-contributed.ts";
import { defaultTable, settingsTable, thresholdTable } from "./settings-tables.ts";
import { exampleJson, exampleText, journalJsonSchema } from "./typed-form.ts";
import { unitTable } from "./unit-table.ts";
import { lineIndex, lineSections } from "./word-tables.ts";

/** A generated file: its path from the project's folder, and its text, made from the text it has now. */
interface GeneratedDocument {
  readonly path: string;
  render(current: string): string;
}

const page = (path: string, parts: Parts): GeneratedDocument => ({
  path,
  render: (current) => fillParts(current, parts),
});

/** The documents `npm run docs` writes. */
export const DOCUMENTS: readonly GeneratedDocument[] = [
  page("docs/language.md", {
    "every kind of line": () => lineIndex("event", "opener", "trip", "gear", "boat"),
    units: unitTable,
    openers: () => lineSections("opener"),
    "properties of a boat": () => lineSections("boat"),
    "gear lines": () => lineSections("gear"),
    "properties of a trip": () => lineSections("trip"),
    events: () => lineSections("event"),
    "what the formatter does": formatTable,
    grammar: grammarRules,
  }),
  page("docs/checks/README.md", { "every check": checksIndex }),
  page("docs/physics.md", { defaults: defaultsTable }),
  page("docs/format.md", { "example as text": exampleText, "example as typed form": exampleJson }),
  page("docs/settings.md", {
    thresholds: thresholdTable,
    settings: settingsTable,
    defaults: defaultTable,
  }),
  { path: "docs/images/lines.svg", render: rigsFigure },
  { path: "docs/images/speeds.svg", render: speedsFigure },
  { path: "client/cli/verbs/check-examples.json", render: checkExamples },
  { path: "package.json", render: withSettings },
  { path: "docs/schemas/journal.schema.json", render: journalJsonSchema },
  ...CLI_SCHEMAS,
  {
    path: "grammar/highlighting/deepwake.tmLanguage.json",
    render: () => `${JSON.stringify(textmateGrammar(), null, 2)}\n`,
  },
];
