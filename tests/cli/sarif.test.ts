/** SARIF as the standard wants it, for the parts that code-review tools read. */
import { expect, test } from "vitest";
import * as z from "zod";
import { BAD_DAY, BOOK, deepwake } from "./fake-world.ts";

const text = z.strictObject({ text: z.string().min(1) });
const one = z.int().positive();
const region = z
  .strictObject({ startLine: one, startColumn: one, endLine: one, endColumn: one })
  .refine((at) => at.endLine > at.startLine || at.endColumn >= at.startColumn);
const location = z.strictObject({
  id: z.int().nonnegative().optional(),
  physicalLocation: z.strictObject({
    artifactLocation: z.strictObject({ uri: z.string().regex(/^[\w%./~:-]+$/u) }),
    region,
  }),
  message: text.optional(),
});
const level = z.enum(["error", "warning", "note"]);
const result = z.strictObject({
  ruleId: z.string(),
  ruleIndex: z.int().nonnegative(),
  level,
  message: text,
  locations: z.array(location).length(1),
  relatedLocations: z.array(location).optional(),
});
const rule = z.strictObject({
  id: z.string(),
  shortDescription: text,
  help: text.optional(),
  defaultConfiguration: z.strictObject({ level }),
});
const notification = z.strictObject({ level, message: text });
const log = z.strictObject({
  $schema: z.url(),
  version: z.literal("2.1.0"),
  runs: z
    .array(
      z.strictObject({
        tool: z.strictObject({
          driver: z.strictObject({ name: z.literal("deepwake"), version: z.string(), rules: z.array(rule) }),
        }),
        columnKind: z.literal("utf16CodeUnits"),
        invocations: z.array(
          z.strictObject({
            executionSuccessful: z.boolean(),
            toolExecutionNotifications: z.array(notification),
          }),
        ),
        results: z.array(result),
      }),
    )
    .length(1),
});

const files = { "penny.gear": BOOK, "my trips/été.trip": BAD_DAY };

test("findings with their rules, and files by URI", async () => {
  const { out, code } = await deepwake(["check", "--sarif", "my trips"], { files });
  expect(code).toBe(1);
  const [run] = log.parse(JSON.parse(out)).runs;
  const found = run?.results.find((one) => one.ruleId === "number-format");
  expect(run?.tool.driver.rules[found?.ruleIndex ?? -1]?.id).toBe("number-format");
  expect(found?.locations[0]?.physicalLocation).toEqual({
    artifactLocation: { uri: "my%20trips/%C3%A9t%C3%A9.trip" },
    region: { startLine: 5, startColumn: 18, endLine: 5, endColumn: 22 },
  });
});

test("what can't be used is a notification of a run that was no success", async () => {
  const { out, code } = await deepwake("check --sarif none.trip", { files });
  expect(code).toBe(2);
  expect(log.parse(JSON.parse(out)).runs[0]?.invocations).toEqual([
    {
      executionSuccessful: false,
      toolExecutionNotifications: [
        { level: "error", message: { text: "none.trip can't be used: there is no such file" } },
      ],
    },
  ]);
});
