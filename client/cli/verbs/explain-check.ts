/** `deepwake check --explain CHECK`: a check's row of the catalog, in words, and what it says yes and no to. */
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
import examples from "./check-examples.json" with { type: "json" };

/** Prints what a check means; an unknown one gets the nearest name. */
export function explainCheck(slug: string, call: Call, world: World): ExitCode {
  const row = findCheck(slug);
  if (row === undefined) {
    const hint = didYouMean(
      slug,
      CATALOG.map((one) => one.slug),
    );
    complain(
      world,
      `there is no check "${slug}"${hint === "" ? "." : hint} deepwake check names them at the end of each finding.`,
    );
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
  const { wrong, right } = examplesOf(row.slug);
  return {
    code: row.slug,
    severities: [...row.severities],
    summary: row.summary,
    quietWhen: row.quietWhen === "" ? null : row.quietWhen,
    hasFix: row.isFixable,
    isOffByDefault: row.isOffByDefault === true,
    since: row.since,
    page: `docs/checks/${row.slug}.md`,
    silencedBy: isPlainMistake(row) ? [] : [...(row.isDoubt ? ["sure"] : []), `quiet ${row.slug}`],
    wrong: wrong === "" ? null : wrong,
    right,
  };
}

const examplesOf = (slug: string): { wrong: string; right: string } =>
  (examples as Record<string, { wrong: string; right: string }>)[slug] ?? { wrong: "", right: "" };

/** A line that can't be read as it stands is no matter of opinion. */
function isPlainMistake({ severities, isDoubt }: CheckRow<never>): boolean {
  return !isDoubt && severities.every((severity) => severity === "error");
}

function explanation(check: ExplainedCheckJson, width: number): string {
  const usual = check.isOffByDefault ? "off unless switched on" : check.severities.join(" or ");
  const lines = [
    `${check.code} (${usual})`,
    check.summary,
    ...(check.quietWhen === null ? [] : [`Keeps quiet when ${check.quietWhen}.`]),
    ...silencedBy(check),
    ...(check.hasFix ? ["The editor has a fix for it."] : []),
    ...(check.wrong === null ? [] : example("Wrong", check.wrong)),
    ...example(check.wrong === null ? "Missing" : "Right", check.right),
  ];
  return lines
    .flatMap((line) => wrap(line, width, line.startsWith("  ") ? 6 : 2))
    .map((line) => `${line}\n`)
    .join("");
}

function silencedBy({ code, silencedBy }: ExplainedCheckJson): string[] {
  if (silencedBy.length === 0) return [];
  const sure = silencedBy.includes("sure") ? "the word sure on the line, or " : "";
  return [`Silenced by ${sure}"quiet ${code}" under the boat in the gear book.`];
}

const example = (title: string, lines: string): string[] => [
  `${title}:`,
  ...lines.split("\n").map((line) => `  ${line}`),
];
