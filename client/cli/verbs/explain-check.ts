/** `deepwake check --explain CHECK`: a check's row of the catalog, in words. */

import { CATALOG, findCheck } from "../../../server/checks/catalog.ts";
import type { CheckRow } from "../../../server/checks/check.ts";
import { complain } from "../complain.ts";
import { envelopeText } from "../envelope.ts";
import { type ExitCode, FINE, UNUSABLE } from "../exit-codes.ts";
import type { ExplainedCheckJson } from "../output-schemas.ts";
import { widthOf } from "../render/terminal.ts";
import { wrap } from "../render/wrap.ts";
import { didYouMean } from "../suggest.ts";
import type { Call } from "../verb.ts";
import type { World } from "../world.ts";

/** Prints what a check means; an unknown one gets the nearest name. */
export function explainCheck(slug: string, call: Call, world: World): ExitCode {
  const row = findCheck(slug);
  if (row === undefined) {
    const hint = didYouMean(
      slug,
      CATALOG.map((one) => one.slug),
    );
    complain(world, `there is no check "${slug}"${hint === "" ? "." : hint} See docs/checks`);
    return UNUSABLE;
  }
  const explained = explainedCheck(row);
  world.out.write(
    call.switches.has("json")
      ? envelopeText("explain", world, { files: [], check: explained })
      : explanation(explained, widthOf(world.out)),
  );
  return FINE;
}

function explainedCheck(row: CheckRow<never>): ExplainedCheckJson {
  return {
    code: row.slug,
    severities: [...row.severities],
    summary: row.summary,
    quietWhen: row.quietWhen === "" ? null : row.quietWhen,
    hasFix: row.isFixable,
    isOffByDefault: row.isOffByDefault === true,
    since: row.since,
    page: `docs/checks/${row.slug}.md`,
    silencedBy: [...(row.isDoubt ? ["sure"] : []), `quiet ${row.slug}`],
  };
}

function explanation(check: ExplainedCheckJson, width: number): string {
  const usual = check.isOffByDefault ? "off unless switched on" : check.severities.join(" or ");
  const sure = check.silencedBy.includes("sure") ? `the word sure on the line, or ` : "";
  const lines = [
    `${check.code} (${usual})`,
    check.summary,
    ...(check.quietWhen === null ? [] : [`Keeps quiet when ${check.quietWhen}.`]),
    `Silenced by ${sure}"quiet ${check.code}" under the boat in the gear book.`,
    ...(check.hasFix ? ["The editor has a fix for it."] : []),
    `Examples: ${check.page}`,
  ];
  return lines
    .flatMap((line) => wrap(line, width))
    .map((line) => `${line}\n`)
    .join("");
}
