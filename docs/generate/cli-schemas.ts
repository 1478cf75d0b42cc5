/** The JSON Schema of what each verb of the command line prints with --json. */
import * as z from "zod";
import { casesOutput } from "../../client/cli/case-schemas.ts";
import { letOutOutput } from "../../client/cli/letout-schemas.ts";
import {
  calibrateOutput,
  checkOutput,
  depthOutput,
  explainOutput,
  formatOutput,
  summaryOutput,
} from "../../client/cli/output-schemas.ts";

const OUTPUTS = [
  { name: "check", of: "deepwake check --json", schema: checkOutput },
  { name: "explain", of: "deepwake check --explain CHECK --json", schema: explainOutput },
  { name: "format", of: "deepwake format --json", schema: formatOutput },
  { name: "summary", of: "deepwake summary --json", schema: summaryOutput },
  { name: "calibrate", of: "deepwake calibrate --json", schema: calibrateOutput },
  { name: "depth", of: "deepwake depth --json, of trips and of a what-if", schema: depthOutput },
  { name: "letout", of: "deepwake letout --json", schema: letOutOutput },
  { name: "depth-case", of: "deepwake depth --case FILE --json", schema: casesOutput },
] as const;

/** The schemas as files: a path from the project's folder and the text. */
export const CLI_SCHEMAS: readonly { readonly path: string; render(): string }[] = OUTPUTS.map(
  ({ name, of, schema }) => ({
    path: `docs/schemas/cli-${name}.schema.json`,
    render: () => `${JSON.stringify({ title: `What ${of} prints`, ...z.toJSONSchema(schema) }, null, 2)}\n`,
  }),
);
