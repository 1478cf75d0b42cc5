/** Findings as SARIF. */
import { CATALOG } from "../../../server/checks/catalog.ts";
import { sarifLog } from "../../../server/exchange/sarif.ts";
import { relativeUri } from "../paths.ts";
import type { World } from "../world.ts";
import type { CheckReport } from "./check-report.ts";

/** The report as a SARIF log. Paths are relative to where the user called, as code-review tools want them. */
export function checkSarif({ files, unusable }: CheckReport, world: World): string {
  const log = sarifLog({
    version: world.version,
    checks: CATALOG,
    files: files.map(({ path, findings }) => ({ uri: relativeUri(path, world), findings })),
    uriOf: (uri) => relativeUri(uri, world),
    unusable: unusable.map(({ shown, why }) => `${shown} can't be used: ${why}`),
  });
  return `${JSON.stringify(log, null, 2)}\n`;
}
