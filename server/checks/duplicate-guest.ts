import { slotName } from "../model/quantities.ts";
import { DUPLICATE_DEFINITION } from "./catalog/language.ts";
import { RELATED } from "./catalog/titles.ts";
import type { Rule } from "./check.ts";
import { slotPlace } from "./places.ts";

/** Flags a guest's id that one trip gives to two. */
export const duplicateGuest: Rule = ({ analysis, report }) => {
  for (const { trip } of analysis.trips) {
    const firsts = new Map<string, (typeof trip.properties)[number]>();
    for (const property of trip.properties) {
      const { line, lineIndex } = property;
      const name = line.verb === "guest" ? slotName(line) : undefined;
      if (name === undefined) continue;
      const first = firsts.get(name);
      if (first === undefined) {
        firsts.set(name, property);
        continue;
      }
      const places = [null, { line: first.lineIndex + 1, file: undefined }];
      const read = slotPlace(first.lineIndex, first.line);
      const related = [{ uri: analysis.uri, message: RELATED.firstDefinition, ...read }];
      const data = { verb: line.verb, name, from: null, places };
      report(DUPLICATE_DEFINITION, slotPlace(lineIndex, line), data, { related });
    }
  }
};
