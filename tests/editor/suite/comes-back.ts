/** What has to hold of every server that ended by itself, whatever it ran in. */
import * as vscode from "vscode";
import assert from "./assert.ts";
import { answerWhen, DAY, diagnosticsWhen, openJournal, replaceText } from "./open-editor.ts";

/**
 * Types into a journal, into a gear book and into a journal that has no file, saves nothing, has `end` end the server,
 * and waits for the marks of all three from the next one, which then follows the typing. `end` answers when the server
 * that was there is gone and another is being started.
 */
export async function typedOutlives(end: () => Promise<void>): Promise<void> {
  const journal = await openJournal("slips.trip");
  const trip = await openJournal(DAY);
  const book = await openJournal("bright-penny.gear");
  const content = "05:14 set C1 out 81,5 ft\n";
  const unsaved = await vscode.workspace.openTextDocument({ language: "deepwake-trip", content });
  await replaceText(journal, "72,5", "7,25");
  await replaceText(book, "rig CU copper", "rig CX copper");
  const marked = (): Promise<unknown> =>
    Promise.all([markOn(journal, "7,25"), markOn(trip, "CU"), markOn(unsaved, "81,5")]);
  await marked();
  await end();
  await marked();
  await replaceText(journal, "7,25", "7,26");
  await markOn(journal, "7,26");
  await replaceText(journal, "7,26", "72,5");
  await replaceText(book, "rig CX copper", "rig CU copper");
  await diagnosticsWhen(trip, (all) => all.length === 0);
}

/**
 * Has `end` end one server after the other until the captain is told of it; he mends what he can and chooses to start it
 * again, and the marks are back. What he is told is one message, in words of ours. `end` answers with a function that
 * says whether another server is being started.
 */
export async function givenUpInTheEnd(
  end: () => Promise<() => boolean>,
  mend: () => void = () => undefined,
): Promise<void> {
  const journal = await openJournal("slips.trip");
  const told: string[] = [];
  const { showErrorMessage } = vscode.window;
  const choose = async (message: string, ...choices: unknown[]): Promise<unknown> => {
    told.push(message);
    mend();
    return choices[0];
  };
  Reflect.set(vscode.window, "showErrorMessage", choose);
  try {
    for (let ends = 0; ends < 6 && told.length === 0; ends++) {
      const isStartedAgain = await end();
      const what = "the server was neither started again nor given up";
      await answerWhen(what, async () => told.length > 0 || isStartedAgain(), Boolean);
    }
    await diagnosticsWhen(journal, (all) => all.length > 0);
  } finally {
    Reflect.set(vscode.window, "showErrorMessage", showErrorMessage);
  }
  assert.equal(told.length, 1, told.join("\n"));
  assert.match(told[0] ?? "", /^Deepwake has stopped: .* Your journals are as you left them\.$/u);
}

function markOn(document: vscode.TextDocument, text: string): Promise<unknown> {
  return diagnosticsWhen(document, (all) => all.some(({ range }) => document.getText(range) === text));
}
