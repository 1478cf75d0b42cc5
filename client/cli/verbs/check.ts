/** `deepwake check`: everything found in journals and gear books. */
import type { Finding } from "../../../server/checks/check.ts";
import { runChecks } from "../../../server/checks/run-checks.ts";
import { GEAR_ENDING, TRIP_ENDING } from "../../../server/files/find-books.ts";
import { complain } from "../complain.ts";
import { type ExitCode, FINE, FOUND, gravest, UNUSABLE } from "../exit-codes.ts";
import { guardFile } from "../guard-file.ts";
import { JournalReader } from "../journals.ts";
import { askedFor } from "../paths.ts";
import { type Call, INPUT_OPTIONS, type Verb } from "../verb.ts";
import type { World } from "../world.ts";
import type { CheckedFile, CheckReport } from "./check-report.ts";
import { checkText } from "./check-text.ts";

export const CHECK: Verb = {
  name: "check",
  summary: "find mistakes in journals and gear books",
  usage: ["check [FILE or FOLDER]...", "check - --stdin-path FILE", "check --explain CHECK"],
  about: [
    "Prints path:line:column, how bad it is, what is wrong and the check's name, and counts at the end.",
    "Folders are searched for .trip and .gear files. Without a path it is the folder you are in.",
  ],
  options: {
    ...INPUT_OPTIONS,
    sarif: { doc: "Print SARIF 2.1.0, which code-review tools read." },
    explain: { value: "CHECK", doc: "Say what a check means and when it keeps quiet." },
  },
  examples: [
    ["deepwake check trips", "every journal and gear book in a folder"],
    ["deepwake check --json 2031-06-21.trip", "for another program"],
    ["cat day.trip | deepwake check - --stdin-path trips/day.trip", "what an editor holds, not yet saved"],
    ["deepwake check --explain touching-bottom", "what that check is about"],
  ],
  run: checkVerb,
};

async function checkVerb(call: Call, world: World): Promise<ExitCode> {
  const asked = call.values.get("explain");
  if (asked !== undefined) return (await import("./explain-check.ts")).explainCheck(asked, call, world);
  if (call.switches.has("json") && call.switches.has("sarif")) {
    complain(world, "--json and --sarif can't both go to the output; give one.");
    return UNUSABLE;
  }
  const report = await checkFiles(call, world);
  for (const { shown, why } of report.unusable) complain(world, `${shown} can't be used: ${why}`);
  world.out.write(await shownReport(report, call, world));
  return endOf(report);
}

async function checkFiles(call: Call, world: World): Promise<CheckReport> {
  const found = askedFor(call, [TRIP_ENDING, GEAR_ENDING], world);
  const reader = new JournalReader(world);
  const files: CheckedFile[] = [];
  const unusable = [...found.unusable];
  for await (const read of reader.readAll(found.files)) {
    const { shown, path } = read.file;
    const checked = read.ok ? guardFile(() => runChecks(read.analysis, { today: world.today })) : read;
    if (!checked.ok) unusable.push({ shown, why: checked.why });
    else if ("value" in checked) files.push({ shown, path, findings: checked.value });
  }
  unusable.push(...reader.unreadBooks(found.files));
  return { files, unusable };
}

/** Ways to print for other programs are loaded when they are asked for. */
async function shownReport(report: CheckReport, call: Call, world: World): Promise<string> {
  if (call.switches.has("sarif")) return (await import("./check-sarif.ts")).checkSarif(report, world);
  if (call.switches.has("json")) return (await import("./check-json.ts")).checkJson(report, world);
  return checkText(report, call, world);
}

function endOf({ files, unusable }: CheckReport): ExitCode {
  const isWrong = (finding: Finding): boolean => finding.severity === "error";
  return gravest(
    files.some((file) => file.findings.some(isWrong)) ? FOUND : FINE,
    unusable.length > 0 ? UNUSABLE : FINE,
  );
}
