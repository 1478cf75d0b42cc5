/** What is about to be asked for is asked once while nobody waits. */
import { expect, test } from "vitest";
import { createGuard } from "../../server/lsp/guard.ts";
import { Rehearsal } from "../../server/lsp/rehearsal.ts";
import { LanguageService } from "../../server/service/language-service.ts";

const URI = "file:///june.trip";
const LOG = `trip 2031-06-21 Heron
05:10 depart
05:14 set C1 out 90 ft
05:20 set P1 out 60 ft
06:00 catch C1 king
`;

/** What is asked of a service, and a rehearsal whose turns come when `next` is called. */
function rehearse(fail = false) {
  const asked: string[] = [];
  const logged: string[] = [];
  const waiting: (() => void)[] = [];
  const service = new LanguageService({ booksNear: () => [], severities: () => new Map() });
  service.update(URI, 1, LOG);
  service.hover = (_, { line }) => {
    asked.push(`hover ${line}`);
    if (fail) throw new Error("no");
    return null;
  };
  service.completion = (_, { line }) => {
    asked.push(`completion ${line}`);
    return [];
  };
  const rehearsal = new Rehearsal({
    guard: createGuard((message) => logged.push(message)),
    turns: { pause: () => new Promise((resolve) => waiting.push(resolve)) },
    service: () => service,
  });
  const next = async (turns: number): Promise<void> => {
    for (let turn = 0; turn < turns; turn++) {
      waiting.shift()?.();
      await new Promise((resolve) => setImmediate(resolve));
    }
  };
  return { rehearsal, asked, logged, next };
}

test("one line of each kind, a question a turn, and only once", async () => {
  const { rehearsal, asked, next } = rehearse();
  rehearsal.begin(URI);
  expect(asked).toEqual([]);
  await next(1);
  expect(asked).toEqual(["hover 0"]);
  await next(20);
  const all = [0, 1, 2, 4].flatMap((line) => [`hover ${line}`, `completion ${line}`]);
  expect(asked).toEqual(all);
  rehearsal.begin(URI);
  await next(20);
  expect(asked).toEqual(all);
});

test("a document that was closed meanwhile has nothing to ask about", async () => {
  const { rehearsal, asked, next } = rehearse();
  rehearsal.begin("file:///july.trip");
  await next(20);
  expect(asked).toEqual([]);
});

test("a question that fails is logged, and the next is asked", async () => {
  const { rehearsal, asked, logged, next } = rehearse(true);
  rehearsal.begin(URI);
  await next(20);
  expect(asked).toHaveLength(8);
  expect(logged).toHaveLength(4);
});
