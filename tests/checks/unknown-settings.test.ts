import { describe, test } from "vitest";
import { checkFindings, checkFix } from "./check-findings.ts";

test.each([
  `
  boat "Tin Cup"
    zone America/Detroit
    quiet touching-bottom
    threshold reading-stale 40 min
  `,
  `
  boat "Tin Cup"
    zone America/Detroid
         ^^^^^^^^^^^^^^^ unknown-zone "America/Detroid" is no time zone; one is written like America/Detroit. Did you mean America/Detroit?
    quiet touching-botom
          ^^^^^^^^^^^^^^ unknown-check No check is called "touching-botom"; nothing is silenced. Did you mean touching-bottom?
    threshold reading-stail 40 min
              ^^^^^^^^^^^^^ unknown-threshold No threshold is called "reading-stail"; nothing is changed. Did you mean reading-stale?
  `,
])("%s", (source) => {
  checkFindings(source);
});

describe("fixes", () => {
  const property = (line: string): string => `boat "Tin Cup"\n  ${line}`;

  test("the nearest name", () => {
    checkFix("unknown-zone", property("zone America/Detroid"), property("zone America/Detroit"));
    checkFix("unknown-zone", property("zone Chicago"), property("zone America/Chicago"));
    checkFix("unknown-zone", property('zone "new york"'), property("zone America/New_York"));
    checkFix("unknown-zone", property("zone Detriot"), property("zone America/Detroit"));
    checkFix("unknown-zone", property("zone US/Winnipeg"), property("zone America/Winnipeg"), {
      fix: "America/Winnipeg",
    });
    checkFix("unknown-check", property("quiet touching-botom"), property("quiet touching-bottom"));
    checkFix(
      "unknown-threshold",
      property("threshold reading-stail 40 min"),
      property("threshold reading-stale 40 min"),
    );
  });
});
