/** `deepwake depth --case FILE`: towed-line cases in SI, answered in the case file's own field names. */
import {
  type CaseAnswer,
  type CaseOut,
  solveTowedLineCases,
} from "../../../server/exchange/towed-line-case.ts";
import type { CaseAnswerJson } from "../case-schemas.ts";
import { complain } from "../complain.ts";
import { type ExitCode, FINE, UNUSABLE } from "../exit-codes.ts";
import { textOf } from "../journals.ts";
import { findJournals } from "../paths.ts";
import { printable } from "../render/printable.ts";
import { type Column, type Row, table } from "../render/table.ts";
import { type Paint, paintFor, widthOf } from "../render/terminal.ts";
import { wrap } from "../render/wrap.ts";
import type { Call } from "../verb.ts";
import type { World } from "../world.ts";

/** Answers every case; ends with 2 when the file can't be read or not one case could be answered. */
export async function depthOfCases(call: Call, world: World): Promise<ExitCode> {
  const named = call.values.get("case") ?? "";
  const read = await readJson(named, world);
  if (!read.ok) {
    complain(world, `${named} can't be used: ${read.why}`);
    return UNUSABLE;
  }
  const answers = solveTowedLineCases(read.json).map(answerJson);
  if (call.switches.has("json")) world.out.write(`${JSON.stringify(answers, null, 2)}\n`);
  else world.out.write(casesText(answers, widthOf(world.out), await paintFor(world, call)));
  if (answers.some((answer) => !("error" in answer))) return FINE;
  complain(world, `${named} has no case that can be solved.`);
  return UNUSABLE;
}

async function readJson(
  named: string,
  world: World,
): Promise<{ ok: true; json: unknown } | { ok: false; why: string }> {
  const { files, unusable } = findJournals([named], { endings: [".json"] }, world);
  const [file] = files;
  if (file === undefined) return { ok: false, why: unusable[0]?.why ?? "there is no such file" };
  if (files.length > 1) return { ok: false, why: "it is a folder; name one file" };
  const text = await textOf(file, world);
  if (!text.ok) return text;
  try {
    return { ok: true, json: JSON.parse(text.text.replace(/^\ufeff/u, "")) };
  } catch (error) {
    return { ok: false, why: `it is not JSON: ${error instanceof Error ? error.message : String(error)}` };
  }
}

function answerJson(answer: CaseAnswer): CaseAnswerJson {
  if ("error" in answer) return answer;
  const { id, out, branchOut, allSolutions, chosen } = answer;
  const { depth, setback, topTension, topAngleDeg } = out;
  return {
    ...{ id, depth, setback, topTension, topAngleDeg, out: outJson(out) },
    ...(branchOut === undefined ? {} : { branchOut: outJson(branchOut) }),
    ...(allSolutions === undefined ? {} : { allSolutions: allSolutions.map(outJson), chosen }),
  };
}

const outJson = <Out extends CaseOut>(out: Out) => ({ ...out, nodes: [...out.nodes] });

const COLUMNS: readonly Column[] = [
  { head: "case" },
  { head: "depth m", side: "right" },
  { head: "setback m", side: "right" },
  { head: "top tension N", side: "right" },
  { head: "top angle deg", side: "right" },
];

function casesText(answers: readonly CaseAnswerJson[], width: number, paint: Paint): string {
  const rows = answers.flatMap(caseRows);
  const lines = table(COLUMNS, rows, width, paint.faint) ?? rows.flatMap((row) => caseBlock(row, width));
  return lines.map((line) => `${line}\n`).join("");
}

function caseRows(answer: CaseAnswerJson): Row[] {
  const id = printable(answer.id);
  if ("error" in answer) return [{ cells: [id], rest: printable(`not solved: ${answer.error}`) }];
  const branch =
    answer.branchOut === undefined ? [] : [{ cells: ["  its branch", ...figures(answer.branchOut)] }];
  // The deepest, which is last, has the row of the case itself.
  const others = (answer.allSolutions ?? []).slice(0, -1);
  const shapes = others.map((other) => ({ cells: ["  or, less deep", ...figures(other)] }));
  return [{ cells: [id, ...figures(answer)] }, ...branch, ...shapes];
}

function figures(out: { depth: number; setback: number; topTension: number; topAngleDeg: number }): string[] {
  const { depth, setback, topTension, topAngleDeg } = out;
  return [depth.toFixed(3), setback.toFixed(3), topTension.toFixed(2), topAngleDeg.toFixed(2)];
}

function caseBlock({ cells: [id = "", ...values], rest }: Row, width: number): string[] {
  const said = values.map((value, index) => {
    const [, words = "", unit = ""] = /^(.*) (\S+)$/u.exec(COLUMNS[index + 1]?.head ?? "") ?? [];
    return `${words} ${value} ${unit}`;
  });
  return [id, ...wrap(`  ${[...said, ...(rest === undefined ? [] : [rest])].join(", ")}`, width, 2)];
}
