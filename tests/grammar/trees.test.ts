/** The shape of every kind of line. One case a line: what is typed, and its tree. */
import { describe, test } from "vitest";
import { checkTree } from "./check-grammar.ts";

describe("events", () => {
  test.each([
    ["05:14 set C1 out 90 ft lure white-fly", "fact 05:14 set C1 > out=90 ft > lure='white-fly'"],
    ["set SD 140 ft dial 2 flasher none", "fact set SD > .out=140 ft > dial=number 2 > flasher='none'"],
    [
      "set P1U above 20 ft slider mini fixed 15 ft",
      "fact set P1U > above=20 ft > slider='mini' > fixed=15 ft",
    ],
    ["set J1 out 90 ft anglers 4 on-bottom", "fact set J1 > out=90 ft > anglers=number 4 > on-bottom"],
    ["05:55 move C1 out 105 ft", "fact 05:55 move C1 > out=105 ft"],
    ["06:18 again P1", "fact 06:18 again P1"],
    ['change C1 lure x down 4 min "fleas"', `fact change C1 > lure='x' > down=4 min > .remark="fleas"`],
    ["check S1 down 3 min", "fact check S1 > down=3 min"],
    ["pull all", "fact pull all"],
    ["tangle P1 with S1 with S2", "fact tangle P1 > with='S1' > with='S2'"],
    ["broke SD lure green-fly ball round", "fact broke SD > lure='green-fly' > ball='round'"],
    ["strike S1 slider", "fact strike S1 > slider"],
    ["miss S1", "fact miss S1"],
    ["catch unknown king kept dead", "fact catch unknown king > kept > dead"],
    [
      "catch P1 king 18 lb 35 in kept by G1 clip adipose clip left-ventral",
      "fact catch P1 king > .weight=18 lb > .length=35 in > kept > by='G1' > clip='adipose' > clip='left-ventral'",
    ],
    ["catch P1 king length 35 in girth 22 in", "fact catch P1 king > length=35 in > girth=22 in"],
    ["lost PB fish", "fact lost PB fish"],
    ["box chinook 1", "fact box chinook > .count=number 1"],
    ["dock chinook 2 30 lb", "fact dock chinook > .count=number 2 > .weight=30 lb"],
    ["weigh-in fish 10 big 22 lb", "fact weigh-in > fish=number 10 > biggest=22 lb"],
    ["weigh-in points 200.1 place 3", "fact weigh-in > points=number 200.1 > place=number 3"],
    ["probe C1 depth 82 ft temp 45.5 F", "fact probe C1 > depth=82 ft > temp=45.5 F"],
    ["touch C1 128 ft behind 48 ft", "fact touch C1 > .out=128 ft > behind=48 ft"],
    ["surface temp 61.2 F speed 2.3 mph", "fact surface > temp=61.2 F > speed=2.3 mph"],
    ["gps course 310 true", "fact gps > course=number 310 > true"],
    ["sonar marks 70 to 85 ft marks 100 ft", "fact sonar > marks=70 ? to 85 ft > marks=100 ft"],
    ["profile 0 ft 61 F, 30 ft 58 F", "fact profile > .point=(0 ft; 61 F) > .point=(30 ft; 58 F)"],
    ["profile point 0 m 16 C", "fact profile > point=(0 m; 16 C)"],
    ["weather wind SW 8 kn", "fact weather > wind='SW' > .wind-speed=8 kn"],
    ["weather wind-speed 8 to 12 kn sky fog", "fact weather > wind-speed=8 ? to 12 kn > sky='fog'"],
    ["weather pressure 1013 hPa", "fact weather > pressure=1013 hPa"],
    ["water green clarity 22 ft", "fact water > green > clarity=22 ft"],
    ["birds some at 44.7 -86.3", "fact birds > some > at=(44.7; -86.3)"],
    ["depart engine 1243.6 h", "fact depart > engine=1243.6 h"],
    ['run to "Anvil Bank"', 'fact run > to="Anvil Bank"'],
    ["drift", "fact drift"],
    ["turn right to 130 magnetic", "fact turn > right > to=number 130 > magnetic"],
    ["serviced reel-drags", "fact serviced reel-drags"],
    ["note private picture a.jpg picture b.jpg", "fact note > private > picture='a.jpg' > picture='b.jpg'"],
  ])("%s", checkTree);
});

describe("gear", () => {
  test.each([
    ['boat "Bright Penny"', 'fact boat "Bright Penny"'],
    ["boat Skiff\n  units ft mph F", "boat-property units ft mph F"],
    ["boat Skiff\n  sounder 2 ft", "boat-property sounder > .below=2 ft"],
    ["boat Skiff\n  sounder below 2 ft", "boat-property sounder > below=2 ft"],
    ["boat Skiff\n  variation -7 deg", "boat-property variation > .east=-7 deg"],
    ["boat Skiff\n  2031-06-01 sounder 3 ft", "boat-property 2031-06-01 sounder > .below=3 ft"],
    ["boat Skiff\n  threshold stale 45 min", "boat-property threshold stale 45 min"],
    ["line wire steel diameter 0.9 mm", "fact line wire > steel > diameter=0.9 mm"],
    ["cable c weight 4.9 g/m", "fact cable c > weight=4.9 g/m"],
    ["ball round-12 sphere 12 lb", "fact ball round-12 > sphere > .weight=12 lb"],
    ["lure p pulls-down 4 to 8 ft", "fact lure p > pulls-down=4 ? to 8 ft"],
    ["lure p 2.75 in 0.25 oz", "fact lure p > .length=2.75 in > .weight=0.25 oz"],
    ["rig P1U stacked P1 centre", "fact rig P1U > stacked='P1' > center"],
    ["rig FL flat pull 3 lbf", "fact rig FL > flat > pull=3 lbf"],
    ["nickname king chinook", "fact nickname king chinook"],
    ["band chinook 45 to 52 F", "fact band chinook > .temp=45 ? to 52 F"],
    [
      "limit trout per-angler 5 species coho species king",
      "fact limit trout > per-angler=number 5 > species='coho' > species='king'",
    ],
    ["upkeep cable every 250 h on C1", "fact upkeep cable > every=250 h > on='C1'"],
    ['spot "Pier Heads" at 44.7061 -86.2789', 'fact spot "Pier Heads" > at=(44.7061; -86.2789)'],
    [
      "2031-07-01 calibrate C1 drag 1.31 counter-offset -1.5 ft",
      "fact 2031-07-01 calibrate C1 > drag=number 1.31 > counter-offset=-1.5 ft",
    ],
  ])("%j", checkTree);
});

describe("trips", () => {
  test.each([
    ["trip 2031-06-21 Skiff charter", "fact trip 2031-06-21 Skiff > charter"],
    ["trip 2031-06-21 Skiff\n  harbour Lee", "trip-property harbor Lee"],
    ['trip 2031-06-21 Skiff\n  guest G1 "Marv" private', 'trip-property guest G1 > .named="Marv" > private'],
    [
      "trip 2031-06-21 Skiff\n  official 6:00 TO 13:00",
      "trip-property official > .between=clock 06:00 to 13:00",
    ],
    ["trip 2031-06-21 Skiff\n  scales-close by 15:00", "trip-property scales-close > by=clock 15:00"],
    ["trip 2031-06-21 Skiff\n  method shallow", "trip-property method > shallow"],
    ['trip 2031-06-21 Skiff\n  cancelled "gale"', 'trip-property canceled > .remark="gale"'],
  ])("%j", checkTree);
});

describe("lines that hold no words", () => {
  test.each([
    ["", "blank"],
    [" \t\u00a0", "blank"],
    ["# a comment", "comment"],
    ["  # a comment", "comment"],
    ["#", "comment"],
    ['note\n  06:30 on, any words: "at all', "note-text"],
    ["note\n  # not a comment", "note-text"],
  ])("%j", checkTree);
});
