/** The rules about how lines are written, in the order they run. */
import { bidiControl } from "./bidi-control.ts";
import type { Rule } from "./check.ts";
import { duplicateDefinition } from "./duplicate-definition.ts";
import { duplicateGuest } from "./duplicate-guest.ts";
import { gearImplausible } from "./gear-implausible.ts";
import { noTrip } from "./no-trip.ts";
import { numberTooLong } from "./number-too-long.ts";
import { propertyWords } from "./property-words.ts";
import { readIssues } from "./read-issues.ts";
import { reservedName } from "./reserved-name.ts";
import { stackedInARing } from "./stacked-in-a-ring.ts";
import { thresholdValue } from "./threshold-value.ts";
import { unitMissing } from "./unit-missing.ts";
import { unitNotWritten } from "./unit-not-written.ts";
import { unknownBall } from "./unknown-ball.ts";
import { unknownBoat } from "./unknown-boat.ts";
import { unknownCable } from "./unknown-cable.ts";
import { unknownLure } from "./unknown-lure.ts";
import { unknownRig } from "./unknown-rig.ts";
import { unknownCheck, unknownThreshold, unknownZone } from "./unknown-settings.ts";
import { unknownSpecies } from "./unknown-species.ts";

export const LANGUAGE_RULES: readonly Rule[] = [
  readIssues,
  bidiControl,
  noTrip,
  propertyWords,
  thresholdValue,
  numberTooLong,
  unitMissing,
  unitNotWritten,
  unknownBoat,
  unknownRig,
  unknownCable,
  unknownBall,
  unknownLure,
  unknownSpecies,
  unknownCheck,
  unknownThreshold,
  unknownZone,
  gearImplausible,
  duplicateDefinition,
  duplicateGuest,
  reservedName,
  stackedInARing,
];
