// What kind of thing a number is to a grower, and the unit each system of units shows it in.
// A measure is finer than a dimension: a bore, a height and a depth of rain are all lengths.

export type UnitSystem = "us" | "imperial" | "metric";

export type Measure = {
  /** Coherent SI unit in which the number is held; it fixes the dimension. */
  readonly si: string;
  readonly us: string;
  readonly imperial: string;
  readonly metric: string;
  /** Significant figures on the screen. */
  readonly figures: number;
  /** `duration` shows "7 h 40 min"; `clock` shows "7:30 pm"; `span` shows days; `plain` shows a number and its unit. */
  readonly form: "plain" | "duration" | "clock" | "span" | "share" | "money" | "year" | "count";
  /** A head may be typed as a pressure and is turned into a height of water, which the reading says. */
  readonly pressureAsHead?: true;
};

const m = (
  si: string,
  us: string,
  imperial: string,
  metric: string,
  figures = 3,
  form: Measure["form"] = "plain",
): Measure => ({ si, us, imperial, metric, figures, form });

export const MEASURES = {
  length: m("m", "ft", "ft", "m"),
  height: m("m", "ft", "ft", "m"),
  distance: m("m", "ft", "yd", "m"),
  long_distance: m("m", "mi", "mi", "km"),
  head: { ...m("m", "ft", "ft", "m"), pressureAsHead: true },
  bore: m("m", "in", "in", "mm"),
  depth: m("m", "in", "in", "mm"),
  rain: m("m", "in", "mm", "mm", 3),
  roughness: m("m", "mm", "mm", "mm", 3),
  area: m("m2", "ft2", "ft2", "m2"),
  opening: m("m2", "mm2", "mm2", "mm2"),
  volume: m("m3", "gal", "imp gal", "L", 4),
  yearly_volume: m("m3", "gal", "imp gal", "L", 4),
  catch_rate: m("m2", "gal/in", "imp gal/in", "L/mm", 4),
  flow: m("m3/s", "gpm", "imp gal/min", "L/min"),
  rain_rate: m("m/s", "in/h", "mm/h", "mm/h"),
  evaporation: m("m/s", "in/day", "mm/day", "mm/day"),
  velocity: m("m/s", "ft/s", "ft/s", "m/s"),
  pace: m("m/s", "ft/s", "ft/s", "m/s"),
  mass: m("kg", "lb", "lb", "kg", 3),
  pressure: m("Pa", "psi", "psi", "kPa"),
  ground_pressure: m("Pa", "lb/ft2", "lb/ft2", "kPa"),
  density: m("kg/m3", "lb/ft3", "lb/ft3", "kg/m3", 5),
  viscosity: m("Pa s", "mPa s", "mPa s", "mPa s", 4),
  temperature: m("K", "degF", "degC", "degC", 3),
  duration: m("s", "h", "h", "h", 3, "duration"),
  clock: m("s", "h", "h", "h", 3, "clock"),
  span: m("s", "day", "day", "day", 3, "span"),
  angle: m("rad", "deg", "deg", "deg", 3),
  share: m("1", "%", "%", "%", 3, "share"),
  factor: m("1", "1", "1", "1", 3),
  count: m("1", "1", "1", "1", 3, "count"),
  year: m("1", "1", "1", "1", 4, "year"),
  voltage: m("V", "V", "V", "V"),
  current: m("A", "A", "A", "A"),
  charge: m("C", "Ah", "Ah", "Ah"),
  resistance: m("ohm", "ohm", "ohm", "ohm"),
  power: m("W", "W", "W", "W"),
  energy: m("J", "Wh", "Wh", "Wh"),
  money: m("money", "money", "money", "money", 4, "money"),
  money_per_volume: m("money/m3", "money/gal", "money/imp gal", "money/L", 3),
} as const satisfies Record<string, Measure>;

export type MeasureName = keyof typeof MEASURES;
