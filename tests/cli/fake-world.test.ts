/** The fake world must be able to tell a right run from a wrong one. */
import { expect, test } from "vitest";
import { BAD_DAY, BOOK, deepwake, GOOD_DAY } from "./fake-world.ts";

test("a run's streams, code and files are told apart", async () => {
  const files = { "penny.gear": BOOK, "bad.trip": BAD_DAY };
  const bad = await deepwake("check bad.trip", { files });
  expect(bad.code).toBe(1);
  expect(bad.out).not.toBe("");
  const none = await deepwake("check none.trip", { files });
  expect(none).toMatchObject({
    code: 2,
    out: "",
    err: "deepwake: none.trip can't be used: there is no such file\n",
  });
});

test("a file that changes is seen to have changed", async () => {
  const done = await deepwake("format day.trip", {
    files: { "day.trip": GOOD_DAY.replace("90 ft", "90ft") },
  });
  expect(done.written).toEqual(["day.trip"]);
  expect(done.files.get("day.trip")).toBe(GOOD_DAY);
});
