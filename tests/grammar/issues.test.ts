/** Every way a line can be wrong, with the stretch of it that is blamed. A line never has two issues. */
import { expect, test } from "vitest";
import { parse } from "../../grammar/parse.ts";
import { LONGEST_LINE } from "../../grammar/read-line.ts";
import { checkIssues } from "./check-grammar.ts";

test("missing-slot: a slot that took an attribute's word is the missing name", () => {
  checkIssues(
    `
    set
    ^^^ missing-slot set needs rig
    05:14 set  # what?
          ^^^ missing-slot set needs rig
    set out 72 ft
        ^^^ missing-slot set needs rig before out
    SET Out 72 ft
        ^^^ missing-slot set needs rig before Out
    set setback 15 ft out 72 ft
        ^^^^^^^ missing-slot set needs rig before setback
    touch out 128 ft
          ^^^ missing-slot touch needs rig before out
    catch P1
    ^^^^^^^^ missing-slot catch needs species
  `,
  );
  checkIssues(`
    catch P1 weight 18 lb
             ^^^^^^ missing-slot catch needs species before weight
    catch weight 18 lb
          ^^^^^^ missing-slot catch needs rig before weight
    lure length 4 in
         ^^^^^^ missing-slot lure needs lure name before length
    pull remark "all of them"
         ^^^^^^ missing-slot pull needs rig before remark
    units
    ^^^^^ out-of-place units belongs to boat
    trip 2031-06-21
    ^^^^^^^^^^^^^^^ missing-slot trip needs boat
  `);
});

test("by-how-much: a line that alters an amount says what it is afterwards", () => {
  checkIssues(`
    move P1 +10 ft
            ^^^^^^ by-how-much out more by 10 ft
    move P1 out -5 setback 15 ft
                ^^ by-how-much out less by 5 ?
    again P1 20 ft deeper lure mini-spoon
             ^^^^^^^^^^^^ by-how-much out more by 20 ft
    change S1 setback 6 ft 6 in Less
                      ^^^^^^^^^^^^^^ by-how-much setback less by 6 ft 6 in
    move P1 up 20 ft
            ^^^^^^^^ by-how-much out less by 20 ft
    move P1 Deeper by 20
            ^^^^^^^^^^^^ by-how-much out more by 20 ?
    move P1 out down 6 ft 6 in setback 15 ft
                ^^^^^^^^^^^^^^ by-how-much out more by 6 ft 6 in
    change S1 setback less 5 ft
                      ^^^^^^^^^ by-how-much setback less by 5 ft
    set P1 10 ft deeper
                 ^^^^^^ unknown-word item deeper
    set P1 up 10 ft
           ^^ unknown-word item up
    move P1 up
            ^^ unknown-word item up
    move P1 up 4 mph
               ^^^^^ unit-mismatch out wants length, not mph
    move P1 up to 60 ft
            ^^ unknown-word item up
    change S1 out 60 ft down 4 min
    calibrate P1 counter-offset +1.5 ft
  `);
});

test("missing-value", () => {
  checkIssues(
    `
    set P1 out
           ^^^ missing-value out needs length
    set P1 out deep
           ^^^ missing-value out needs length, found deep
    set P1 lure
           ^^^^ missing-value lure needs name of lure
    set P1 lure out 72 ft
           ^^^^ missing-value lure needs name of lure, found out
    set P1 dial lure x
           ^^^^ missing-value dial needs dial, found lure
    sonar marks 65 to ft
                   ^^ unknown-word item to
    profile 0 ft
              ^^ missing-value point needs point
    turn to
         ^^ missing-value to needs bearing
  `,
  );
});

test("missing-item", () => {
  checkIssues(`
    ball round-12
    ^^^^^^^^^^^^^ missing-item ball needs weight
    box chinook
    ^^^^^^^^^^^ missing-item box needs count
    05:10 profile
          ^^^^^^^ missing-item profile needs point
    band chinook "cold"
    ^^^^^^^^^^^^^^^^^^^ missing-item band needs temp
  `);
});

test("open-quote, stray-text, no-range", () => {
  checkIssues(`
    lost P1 fish "never saw it
                 ^^^^^^^^^^^^^ open-quote
    set "P1 out 72 ft
        ^^^^^^^^^^^^^ open-quote
    run to "Anvil Bank
           ^^^^^^^^^^^ open-quote
    run to "Anvil Bank"x
           ^^^^^^^^^^^^^ open-quote
    nickname king chinook "ours"
                          ^^^^^^ stray-text "ours"
    probe C1 82 ft
             ^^ stray-text 82
    pull P1 06:00
            ^^^^^ stray-text 06:00
    set P1 out 70 to 95 ft
                  ^^^^^ no-range out
  `);
});

test("exclusive, repeated", () => {
  checkIssues(`
    catch P1 king kept released
                       ^^^^^^^^ exclusive released after kept
    rig C1 downrigger port center
                           ^^^^^^ exclusive center after port
    rig P1U downrigger stacked P1
                       ^^^^^^^^^^ exclusive stacked after downrigger
    set P1 out 72 ft out 75 ft
                     ^^^^^^^^^ repeated out
    set P1 72 ft 75 ft
                 ^^^^^ repeated out
    strike P1 slider slider
                     ^^^^^^ repeated slider
    pull P1 "one" "two"
                  ^^^^^ repeated remark
  `);
});

test("bad-count, bad-bearing, which-measure", () => {
  checkIssues(`
    set J1 anglers 1.5
                   ^^^ bad-count 1.5
    set J1 anglers 4ft
                   ^^^ bad-count 4ft
    set SD dial -2.5 dial
                     ^^^^ missing-value dial needs dial
    turn to 361
            ^^^ bad-bearing 361
    turn to 130ft
            ^^^^^ bad-bearing 130ft
    catch P1 king 18
                  ^^ which-measure 18 could be weight or length
  `);
});

test("unknown-word", () => {
  checkIssues(
    `
    sett P1 out 72 ft
    ^^^^ unknown-word verb sett
    set P1 setbak 12 ft out 72 ft
           ^^^^^^ unknown-word item setbak
    set P1 out 72 feets
                  ^^^^^ unknown-word unit feets
    set P1 out 72parsec
                 ^^^^^^ unknown-word unit parsec
  `,
  );
});

test("unit-mismatch", () => {
  checkIssues(`
    probe C1 depth 66 F
                   ^^^^ unit-mismatch depth wants length, not F
    probe C1 depth 66F
                   ^^^ unit-mismatch depth wants length, not F
    band chinook 45 to 52 ft
                       ^^^^^ unit-mismatch temp wants temperature, not ft
    profile 61 F 0 ft
            ^^^^ unit-mismatch point wants length, not F
    sounder 2 ft
    ^^^^^^^ out-of-place sounder belongs to boat
  `);
});

test("number-format, with what was probably meant", () => {
  checkIssues(`
    set P1 out 72,5 ft
               ^^^^ number-format 72,5 meant 72.5
    depart engine 1,200 h
                  ^^^^^ number-format 1,200 meant 1200
    depart engine 1,200.5 h
                  ^^^^^^^ number-format 1,200.5 meant 1200.5
    sonar marks 70-95 ft
                ^^^^^ number-format 70-95 meant 70 to 95
    sonar marks 70–95ft
                ^^^^^^^ number-format 70–95ft meant 70 to 95 ft
    set P1 out 72. ft
               ^^^ number-format 72. meant 72
    lure x 3/4 oz
           ^^^ number-format 3/4 meant 0.75
    set P1 out 1..2 ft
               ^^^^ number-format 1..2
    turn to 1,300
            ^^^^^ number-format 1,300 meant 1300
  `);
});

test("too-long: such a line is no journal line, and is kept as it is", () => {
  const line = `drift "${"x".repeat(LONGEST_LINE)}"`;
  const carets = "^".repeat(line.length);
  checkIssues(`drift\n${line}\n${carets} too-long ${line.length} of ${LONGEST_LINE}\ndrift`);
  checkIssues(`drift "${"x".repeat(LONGEST_LINE - 8)}"`);
  checkIssues(`note\n  ${line}`);
});

test("a line keeps what was read around its issue", () => {
  const [line] = parse("set P1 setbak 12 ft out 72 ft").journal.lines;
  expect(line?.kind === "fact" && line.items.map((item) => [item.word, item.value])).toEqual([
    ["", { kind: "unread", text: "setbak 12 ft" }],
    ["out", { kind: "quantity", parts: [{ number: "72", unit: "ft" }] }],
  ]);
});
