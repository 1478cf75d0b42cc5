/** Quick fixes: what is offered, what it does, and that it mends what it says it mends. */
import { describe, expect, test } from "vitest";
import type { CodeAction, Range } from "vscode-languageserver-types";
import { FIX_ALL_KIND } from "../../server/service/code-actions.ts";
import { readRange } from "../harness/markers.ts";
import { editText } from "./edit-text.ts";
import { EVERYTHING, MORNING, openService, positionAt, URI } from "./open-service.ts";

/** The actions for the marked range. */
function actionsAt(source: string, only?: readonly string[]): { text: string; actions: CodeAction[] } {
  const { text, start, stop } = readRange(MORNING + source);
  const range: Range = { start: positionAt(text, start), end: positionAt(text, stop) };
  return { text, actions: openService(text).codeActions(URI, range, only) };
}

function applied(text: string, action: CodeAction | undefined): string {
  return editText(text, action?.edit?.changes?.[URI] ?? []);
}

/** Takes the preferred fix, compares the lines below the morning, and looks that nothing is left to mend. */
function checkFix(source: string, wanted: string): void {
  const { text, actions } = actionsAt(source, ["quickfix"]);
  const after = applied(
    text,
    actions.find((action) => action.isPreferred),
  );
  expect(after.slice(MORNING.length)).toBe(wanted);
  expect(openService(after).diagnostics(URI)).toEqual([]);
}

describe("the preferred fix mends", () => {
  test.each([
    ["06:14 again P1\n06:15 move P1 out <|72,5|> ft", "06:14 again P1\n06:15 move P1 out 72.5 ft"],
    ["06:14 again P1\n06:15 sonar marks 7<||>0-95 ft", "06:14 again P1\n06:15 sonar marks 70 to 95 ft"],
    ["06:14 <|agan|> P1\n", "06:14 again P1"],
  ])("%j", checkFix);
});

test("an action names its diagnostic and is a quick fix", () => {
  const { actions } = actionsAt("06:15 move P1 out <|72,5|> ft");
  expect(actions[0]?.kind).toBe("quickfix");
  expect(actions[0]?.diagnostics?.map(({ code }) => code)).toEqual(["number-format"]);
});

describe("several at once", () => {
  const TWO = "06:14 again P1\n06:15 move P1 out <|72,5|> ft\n06:15 move P1 out 73,5 ft";
  const MENDED = "06:14 again P1\n06:15 move P1 out 72.5 ft\n06:15 move P1 out 73.5 ft";

  test("all of one kind", () => {
    const { text, actions } = actionsAt(TWO);
    const all = actions.find(({ title }) => title === "Mend all 2 of these (number-format)");
    expect(applied(text, all).slice(MORNING.length)).toBe(MENDED);
  });

  test("the whole file, only when asked for", () => {
    for (const only of [[FIX_ALL_KIND], ["source.fixAll"], ["source"]]) {
      const { text, actions } = actionsAt(TWO, only);
      expect(actions.map(({ kind }) => kind)).toEqual([FIX_ALL_KIND]);
      expect(applied(text, actions[0]).slice(MORNING.length)).toBe(MENDED);
    }
    expect(actionsAt(TWO).actions.map(({ kind }) => kind)).not.toContain(FIX_ALL_KIND);
    expect(actionsAt(TWO, ["refactor.extract"]).actions).toEqual([]);
  });

  test("all of one kind by its own name, only when that is asked for", () => {
    const kind = `${FIX_ALL_KIND}.number-format`;
    const { text, actions } = actionsAt(`${TWO}\n06:16 agan P1`, [kind]);
    expect(actions.map((action) => action.kind)).toEqual([kind]);
    expect(applied(text, actions[0]).slice(MORNING.length)).toBe(`${MENDED}\n06:16 agan P1`);
    expect(actionsAt(TWO, [`${FIX_ALL_KIND}.unknown-rig`]).actions).toEqual([]);
  });

  test("big edits can be asked for when an action is chosen, and are made for the text as it is then", () => {
    const { text } = actionsAt(TWO);
    const service = openService(text);
    const [lazy] = service.codeActions(URI, EVERYTHING, [FIX_ALL_KIND], true);
    if (lazy === undefined) throw new Error("no action");
    expect(lazy.edit).toBeUndefined();
    const made = service.resolveCodeAction(lazy);
    expect(applied(text, made).slice(MORNING.length)).toBe(MENDED);
    const later = `# one line more\n${text}`;
    service.update(URI, 2, later);
    expect(applied(later, service.resolveCodeAction(lazy))).toBe(`# one line more\n${applied(text, made)}`);
    service.close(URI);
    expect(service.resolveCodeAction(lazy)).toEqual(lazy);
  });

  test("with a byte order mark every place is moved once", () => {
    const line = "6:00 drift 5";
    const service = openService(`\ufeff6:00   drift`);
    const all = { start: { line: 0, character: 0 }, end: { line: 0, character: line.length } };
    const [lazy] = service.codeActions(URI, all, ["refactor.rewrite"], true);
    const { edit } = service.resolveCodeAction(lazy ?? { title: "" });
    expect(edit?.changes?.[URI]?.[0]?.range.start.character).toBe(1);
  });

  test("one of one kind is not offered as all", () => {
    const { actions } = actionsAt("06:15 move P1 out <|72,5|> ft");
    expect(actions.filter(({ title }) => title.startsWith("Mend all"))).toEqual([]);
  });
});

test("none where nothing is wrong", () => {
  expect(actionsAt("06:14 <|strike|> P1\n06:15 move P1 out 72,5 ft").actions).toEqual([]);
  expect(openService(MORNING).codeActions(URI, EVERYTHING, [FIX_ALL_KIND])).toEqual([]);
});
