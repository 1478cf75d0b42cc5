import { lures, rigs } from "./trip-facts.ts";

const bounded = (minimum: number, maximum: number, description: string): object => ({
  type: "number",
  minimum,
  maximum,
  description,
});

const flag = { type: "boolean" };
const pair = { type: "array", items: { type: "number" }, minItems: 2, maxItems: 2 };
const needs = (verb: string, ...required: string[]): object => ({
  // biome-ignore lint/suspicious/noThenProperty: `then` is a keyword of JSON Schema.
  then: { required },
  if: { properties: { do: { const: verb } }, required: ["do"] },
});

const event = {
  type: "object",
  required: ["at", "do"],
  additionalProperties: false,
  properties: {
    at: { type: "string", pattern: "^([01]\\d|2[0-3]):[0-5]\\d$", description: "Local time" },
    do: {
      description: "What happened",
      enum: [
        ...["depart", "weather", "profile", "set", "move", "again", "change", "pull", "run", "turn", "probe"],
        ...["surface", "gps", "sonar", "strike", "catch", "lost", "return", "box"],
      ],
    },
    rig: { enum: Object.keys(rigs), description: "A rig of the gear book" },
    lure: { enum: lures.map(([name]) => name), description: "A lure of the gear book" },
    species: { enum: ["chinook", "coho", "steelhead", "lake-trout"], description: "Which fish" },
    sky: { enum: ["clear", "cloudy", "overcast"] },
    wind: { enum: ["S", "SW", "W", "NW"] },
    engine_h: bounded(0, 1e5, "Hours on the engine"),
    wind_speed_kn: bounded(0, 80, "Wind in knots"),
    waves_ft: pair,
    air_f: bounded(-40, 120, "Air temperature"),
    profile_ft_f: { type: "array", items: pair },
    out_ft: bounded(0, 160, "Cable out in feet"),
    out_colors: bounded(0, 10, "Colors of leadcore out"),
    setback_ft: bounded(0, 300, "Lure behind the release, in feet"),
    dial: { type: "integer", minimum: 0, maximum: 6 },
    depth_ft: bounded(0, 999, "Depth in feet"),
    temp_f: bounded(31, 90, "Water temperature"),
    speed_mph: bounded(0, 25, "Speed"),
    bottom_ft: bounded(0, 999, "Depth of the bottom"),
    weight_lb: bounded(0, 60, "Weight"),
    length_in: bounded(0, 60, "Length"),
    down_min: bounded(0, 600, "Minutes out of the water"),
    course: bounded(0, 360, "Course over ground"),
    to: { type: ["string", "number"] },
    lat: bounded(-90, 90, "Latitude"),
    lon: bounded(-180, 180, "Longitude"),
    count: { type: "integer", minimum: 0 },
    kept: flag,
    released: flag,
    left: flag,
    right: flag,
    all: flag,
  },
  allOf: [
    needs("set", "rig", "lure"),
    needs("move", "rig"),
    needs("again", "rig"),
    needs("probe", "rig"),
    needs("catch", "rig", "species"),
    needs("turn", "to"),
    needs("box", "species", "count"),
  ],
};

/** The JSON Schema that gives the YAML server about the knowledge that the other servers have. */
export const keyedSchema = {
  $schema: "http://json-schema.org/draft-07/schema#",
  title: "trips",
  type: "object",
  required: ["trips"],
  additionalProperties: false,
  properties: {
    gear: { type: "object" },
    trips: {
      type: "array",
      items: {
        type: "object",
        required: ["date", "events"],
        additionalProperties: false,
        properties: {
          date: { type: "string", pattern: "^\\d{4}-\\d{2}-\\d{2}$", description: "Day of the trip" },
          harbor: { type: "string", description: "Place left from" },
          anglers: { type: "integer", minimum: 1, maximum: 20 },
          targets: { type: "array", items: { type: "string" } },
          events: { type: "array", items: event },
        },
      },
    },
  },
};
