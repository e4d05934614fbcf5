// What is set by hand in the garden and belongs on the printed page: valves, floats, outlets, first water.

const SETTINGS: Readonly<Record<string, readonly string[]>> = {
  roof: ["drains_to", "first_flush_volume", "standpipe_length", "catch_from", "catch_until"],
  tank: ["stand_height", "outlet_height", "overflows_to"],
  line: ["valve_bore", "shut_level", "refill_time"],
  filter: ["clean_every"],
  delivery: ["lowest_water", "watering_time"],
  battery: ["waterings_per_charge"],
  bed: ["cans_per_watering"],
};

/** Rows of a card kind that say how something is set or done by hand, in the order to print them. */
export const handSettings = (kind: string): readonly string[] =>
  (Object.hasOwn(SETTINGS, kind) ? SETTINGS[kind] : null) ?? [];

/** Rows that say how much whoever is watered gets, how often, by what, and on which days of the coming week. */
export const WATERING = {
  volume: "watering_volume",
  every: "watering_interval",
  by: "watered_by",
  days: "week_days",
} as const;
