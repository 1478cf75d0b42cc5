import { boatName, clockOf, gearBook, type Item, type Trip, type TripEvent } from "./trip-facts.ts";

/** A trip in the journal's own syntax, without the gear book. */
export function tripText(trip: Trip): string {
  return [
    `trip ${trip.date} "${boatName}" private`,
    `  harbor "${trip.harbor}"`,
    `  anglers ${trip.anglers}`,
    ...trip.targets.map((species) => `  target ${species}`),
    "",
    ...trip.events.map(eventLine),
    "",
  ].join("\n");
}

/** One file that stands alone: the gear book, then the trips. */
export function journalText(trips: readonly Trip[]): string {
  return [gearBook(), ...trips.map(tripText)].join("\n");
}

function eventLine(event: TripEvent): string {
  const words = [clockOf(event.minute), event.verb, event.rig ?? "", ...event.items.map(itemText)];
  return words.filter((word) => word !== "").join(" ");
}

function itemText(item: Item): string {
  const word = "word" in item && item.word ? `${item.word} ` : "";
  switch (item.kind) {
    case "measure":
      return `${word}${item.value} ${item.unit}`;
    case "range":
      return `${word}${item.low} to ${item.high} ${item.unit}`;
    case "number":
      return word + (item.key === "course" || item.key === "to" ? bearing(item.value) : item.value);
    case "name":
      return word + item.value;
    case "text":
      return `${word}"${item.value}"`;
    case "flag":
      return item.key;
    case "position":
      return `at ${item.latitude} ${item.longitude}`;
    case "profile":
      return item.points.map((point) => `${point.depthFt} ft ${point.tempF} F`).join(", ");
  }
}

/** Bearings have three digits in the journal. */
function bearing(degrees: number): string {
  return String(degrees).padStart(3, "0");
}
