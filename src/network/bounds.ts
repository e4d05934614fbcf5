// What may keep water from getting through the network to a bed, in the one order in which equal ones are told.

/** The least of what they let through binds a watering; of equal ones the first here. */
export const BOUNDS = [
  "storage",
  "loss",
  "rain",
  "unroofed",
  "tankful",
  "refill",
  "line",
  "pump_time",
  "energy",
  "daylight",
  "hands",
  "held_back",
  "rule",
  "given_up",
  "unwatered",
] as const;

export type Bound = (typeof BOUNDS)[number];

/** Why a bed goes without on a day from today on: a bound, or its grower holds it back. */
export type DayBound = Bound | "by_grower";

/** What drives the pumps behind a bed: a battery, the sun on a panel alone, or some of both. */
export type Driver = "battery" | "sun" | "either";
