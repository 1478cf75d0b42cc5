/** Semantic tokens sent as changes come to the same as all of them. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { SemanticTokens, SemanticTokensDelta } from "vscode-languageserver-types";
import { tokenEdits } from "../../server/service/token-changes.ts";
import { MORNING, openService, URI } from "./open-service.ts";

function applied(before: readonly number[], edits: SemanticTokensDelta["edits"]): number[] {
  const data = [...before];
  for (const { start, deleteCount, data: put = [] } of edits) data.splice(start, deleteCount, ...put);
  return data;
}

test("edits make the one list of the other", () => {
  const list = fc.array(fc.integer({ min: 0, max: 3 }), { maxLength: 30 });
  fc.assert(
    fc.property(list, list, (before, after) => {
      expect(applied(before, tokenEdits(before, after))).toEqual(after);
    }),
    { seed: 21, numRuns: 300 },
  );
  expect(tokenEdits([1, 2], [1, 2])).toEqual([]);
});

describe("of a document", () => {
  const service = openService(MORNING);
  const edit = (version: number, text: string) => service.update(URI, version, text);

  test("after an edit only what changed is sent", () => {
    const first = service.allSemanticTokens(URI) as Required<SemanticTokens>;
    edit(2, `${MORNING}06:20 again P1\n`);
    const delta = service.changedSemanticTokens(URI, first.resultId) as SemanticTokensDelta;
    expect(delta.edits[0]?.data).toHaveLength(15);
    expect(applied(first.data, delta.edits)).toEqual(service.semanticTokens(URI));
    const same = service.changedSemanticTokens(URI, delta.resultId ?? "");
    expect(same).toMatchObject({ edits: [] });
  });

  test("since a result that was not the last one, all are sent", () => {
    expect(service.changedSemanticTokens(URI, "an older one")).toMatchObject({
      data: service.semanticTokens(URI),
    });
  });

  test("a closed document has none, and is sent whole when it is opened again", () => {
    const { resultId = "" } = service.allSemanticTokens(URI);
    service.close(URI);
    expect(service.changedSemanticTokens(URI, resultId)).toEqual({ data: [] });
    edit(1, MORNING);
    expect(service.changedSemanticTokens(URI, resultId)).toMatchObject({ data: service.semanticTokens(URI) });
  });
});
