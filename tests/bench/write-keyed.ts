import { boatName, clockOf, type Item, lures, rigs, type Trip, type TripEvent } from "./trip-facts.ts";

/** A value of the keyed formats (YAML and JSON). */
export type Keyed = string | number | boolean | Keyed[] | { [key: string]: Keyed };

/**
 * The same trips as a keyed document, the way somebody who keeps YAML or JSON would write them: the unit is
 * part of the key, so that a schema can bound the number.
 */
export function keyedDocument(trips: readonly Trip[]): { [key: string]: Keyed } {
  return {
    gear: {
      boat: boatName,
      lures: lures.map(([name, kind, inches]) => ({ name, kind, length_in: inches })),
      rigs: Object.entries(rigs).map(([name, definition]) => ({ name, definition })),
    },
    trips: trips.map((trip) => ({
      date: trip.date,
      harbor: trip.harbor,
      anglers: trip.anglers,
      targets: [...trip.targets],
      events: trip.events.map(keyedEvent),
    })),
  };
}

/** YAML with one event a line, the shape closest to the journal's. */
export function yamlFlow(trips: readonly Trip[]): string {
  return yamlMap(keyedDocument(trips), "", (key) => key === "events");
}

/** YAML as formatters write it, one key a line. */
export function yamlBlock(trips: readonly Trip[]): string {
  return yamlMap(keyedDocument(trips), "", () => false);
}

function keyedEvent(event: TripEvent): Keyed {
  const keyed: { [key: string]: Keyed } = { at: clockOf(event.minute), do: event.verb };
  if (event.rig !== undefined) keyed.rig = event.rig;
  for (const item of event.items) addItem(keyed, item);
  return keyed;
}

function addItem(keyed: { [key: string]: Keyed }, item: Item): void {
  switch (item.kind) {
    case "measure":
      keyed[`${item.key}_${item.unit.toLowerCase()}`] = item.value;
      break;
    case "range":
      keyed[`${item.key}_${item.unit.toLowerCase()}`] = [item.low, item.high];
      break;
    case "flag":
      keyed[item.key] = true;
      break;
    case "position":
      keyed.lat = item.latitude;
      keyed.lon = item.longitude;
      break;
    case "profile":
      keyed.profile_ft_f = item.points.map((point) => [point.depthFt, point.tempF]);
      break;
    default:
      keyed[item.key] = item.value;
  }
}

type IsFlow = (key: string) => boolean;

function yamlMap(map: { [key: string]: Keyed }, indent: string, isFlow: IsFlow): string {
  return Object.entries(map)
    .map(([key, value]) => `${indent}${key}:${yamlValue(key, value, indent, isFlow)}`)
    .join("");
}

function yamlValue(key: string, value: Keyed, indent: string, isFlow: IsFlow): string {
  if (Array.isArray(value) && value.some((entry) => typeof entry === "object" && !Array.isArray(entry))) {
    const entries = value.map((entry) => {
      if (isFlow(key)) return `${indent}  - ${flowText(entry)}\n`;
      return `${indent}  - ${yamlMap(entry as { [key: string]: Keyed }, `${indent}    `, isFlow).trimStart()}`;
    });
    return `\n${entries.join("")}`;
  }
  if (typeof value !== "object" || Array.isArray(value)) return ` ${flowText(value)}\n`;
  return `\n${yamlMap(value, `${indent}  `, isFlow)}`;
}

function flowText(value: Keyed): string {
  if (Array.isArray(value)) return `[${value.map(flowText).join(", ")}]`;
  if (typeof value === "object")
    return `{ ${Object.entries(value)
      .map(([key, part]) => `${key}: ${flowText(part)}`)
      .join(", ")} }`;
  if (typeof value === "string" && !/^[A-Za-z][\w-]*$/.test(value)) return JSON.stringify(value);
  return String(value);
}
