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

/**
 * Why a bed goes without on a day: a bound; its grower holds it back; or others have drawn from its small tank before it, which
 * kept more from it than the tank's size.
 */
export type DayBound = Bound | "by_grower" | "others_first";

/** What drives the pumps behind a bed: a battery, the sun on a panel alone, or some of both. */
export type Driver = "battery" | "sun" | "either";
