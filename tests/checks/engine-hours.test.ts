import { test } from "vitest";
import { checkDay } from "./check-day.ts";

test.each([
  "04:45 depart engine 900 h\n11:20 return engine 906.4 h",
  "04:45 depart engine 900 h\n11:20 return",
  "04:45 depart engine 900 h\n11:20 return engine 2 h sure",
  `
  04:45 depart engine 900 h
  11:20 return engine 890 h
               ^^^^^^^^^^^^ engine-hours The engine had 900 h at the departure, and 890 h at the return.
  `,
])("%s", (source) => {
  checkDay(source);
});
