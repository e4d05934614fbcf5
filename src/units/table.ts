// Every named unit with its exact size in coherent SI.
// Inch, pound and the two gallons are exact by definition: international yard and pound agreement (1959), US gallon of
// 231 cubic inches, imperial gallon of 4.54609 L. A week is 7 days; a year is the Julian year of 365.25 days. A month
// is no unit, since months differ. A column of water is of 1000 kg/m3 under standard gravity (WATER_COLUMN_DENSITY).

import { DAY, DAYS_A_YEAR, GRAVITY, HOUR, INCH, MILE, MINUTE, ZERO_CELSIUS } from "./constants.ts";
import { type BaseKind, type Dimension, dimension } from "./dimension.ts";

export type NamedUnit = {
  /** The text the unit is stored under. */
  readonly name: string;
  /** What stands beside a number on the screen. */
  readonly label: string;
  /** si = (value + offset) * factor; the offset is 0 for all but the points of degC and degF. */
  readonly factor: number;
  readonly offset: number;
  readonly dimension: Dimension;
  readonly aliases: readonly string[];
};

/** Density of water behind `ftH2O`, `m head` and a pressure typed for a head [kg/m3]. */
export const WATER_COLUMN_DENSITY = 1000;

const FOOT = 0.3048;
const YARD = 0.9144;
const US_GALLON = 0.003785411784;
const IMPERIAL_GALLON = 0.00454609;
const ACRE = 4046.8564224;
const POUND = 0.45359237;
const POUND_FORCE = 4.4482216152605;
const COLUMN = WATER_COLUMN_DENSITY * GRAVITY;

type Powers = Partial<Record<BaseKind, number>>;

const LENGTH: Powers = { length: 1 };
const AREA: Powers = { length: 2 };
const VOLUME: Powers = { length: 3 };
const FLOW: Powers = { length: 3, time: -1 };
const SPEED: Powers = { length: 1, time: -1 };
const MASS: Powers = { mass: 1 };
const TIME: Powers = { time: 1 };
const FORCE: Powers = { mass: 1, length: 1, time: -2 };
const PRESSURE: Powers = { mass: 1, length: -1, time: -2 };
const ENERGY: Powers = { mass: 1, length: 2, time: -2 };
const POWER: Powers = { mass: 1, length: 2, time: -3 };
const CURRENT: Powers = { current: 1 };
const CHARGE: Powers = { current: 1, time: 1 };
const VOLTAGE: Powers = { mass: 1, length: 2, time: -3, current: -1 };
const RESISTANCE: Powers = { mass: 1, length: 2, time: -3, current: -2 };
const ANGLE: Powers = { angle: 1 };
const TEMPERATURE: Powers = { temperature: 1 };

/** One unit; `aliases` are separated by bars. */
function row(name: string, factor: number, powers: Powers, aliases = "", label = name): NamedUnit {
  const words = aliases === "" ? [] : aliases.split("|");
  return { name, label, factor, offset: 0, dimension: dimension(powers), aliases: words };
}

function point(name: string, factor: number, offset: number, aliases: string, label: string): NamedUnit {
  return {
    name,
    label,
    factor,
    offset,
    dimension: dimension(TEMPERATURE, true),
    aliases: aliases.split("|"),
  };
}

const LENGTHS = [
  row("m", 1, LENGTH, "metre|metres|meter|meters|mtr|mtrs"),
  row("mm", 0.001, LENGTH, "millimetre|millimetres|millimeter|millimeters"),
  row("cm", 0.01, LENGTH, "centimetre|centimetres|centimeter|centimeters"),
  row("km", 1000, LENGTH, "kilometre|kilometres|kilometer|kilometers|kms"),
  row("um", 1e-6, LENGTH, "\u00b5m|\u03bcm|micron|microns|micrometre|micrometer", "µm"),
  row("in", INCH, LENGTH, "inch|inches|ins|\"|''"),
  row("mil", INCH / 1000, LENGTH, "mils|thou"),
  row("ft", FOOT, LENGTH, "foot|feet|'"),
  row("yd", YARD, LENGTH, "yard|yards|yds"),
  row("mi", MILE, LENGTH, "mile|miles"),
];

const AREAS_AND_VOLUMES = [
  row("ha", 1e4, AREA, "hectare|hectares"),
  row("acre", ACRE, AREA, "acres|ac"),
  row("L", 0.001, VOLUME, "l|ℓ|litre|litres|liter|liters|ltr|ltrs"),
  row("mL", 1e-6, VOLUME, "ml|millilitre|millilitres|milliliter|milliliters|cc"),
  row("cL", 1e-5, VOLUME, "cl|centilitre|centiliter"),
  row("kL", 1, VOLUME, "kl|kilolitre|kilolitres|kiloliter|kiloliters"),
  row("gal", US_GALLON, VOLUME, "gallon|gallons|gals|US gal|US gallon|US gallons|USgal"),
  row("qt", US_GALLON / 4, VOLUME, "quart|quarts|qts|US qt"),
  row("pt", US_GALLON / 8, VOLUME, "pint|pints|pts|US pt"),
  row("cup", US_GALLON / 16, VOLUME, "cups"),
  row("fl oz", US_GALLON / 128, VOLUME, "floz|fluid ounce|fluid ounces|US fl oz"),
  row(
    "imp gal",
    IMPERIAL_GALLON,
    VOLUME,
    "imp gals|imp gallon|imp gallons|imperial gal|imperial gallon|imperial gallons|impgal|UK gal|UK gallon|UK gallons",
  ),
  row("imp qt", IMPERIAL_GALLON / 4, VOLUME, "imperial quart|imperial quarts|UK qt"),
  row("imp pt", IMPERIAL_GALLON / 8, VOLUME, "imperial pint|imperial pints|UK pt"),
  row("imp fl oz", IMPERIAL_GALLON / 160, VOLUME, "imperial fluid ounce|UK fl oz"),
  row("acre-ft", ACRE * FOOT, VOLUME, "acre ft|acre foot|acre feet|acre-foot|acre-feet|ac-ft"),
  row("acre-in", ACRE * INCH, VOLUME, "acre in|acre inch|acre inches|acre-inch|acre-inches|ac-in"),
];

const FLOWS_AND_SPEEDS = [
  row("gpm", US_GALLON / MINUTE, FLOW),
  row("gph", US_GALLON / HOUR, FLOW),
  row("gpd", US_GALLON / DAY, FLOW),
  row("imp gpm", IMPERIAL_GALLON / MINUTE, FLOW),
  row("imp gph", IMPERIAL_GALLON / HOUR, FLOW),
  row("cfs", FOOT ** 3, FLOW),
  row("lpm", 0.001 / MINUTE, FLOW, "LPM"),
  row("lph", 0.001 / HOUR, FLOW, "LPH"),
  row("lps", 0.001, FLOW, "LPS"),
  row("mph", MILE / HOUR, SPEED),
  row("kph", 1000 / HOUR, SPEED, "kmh|kmph"),
  row("knot", 1852 / HOUR, SPEED, "knots|kn|kt"),
  row("fps", FOOT, SPEED),
];

const MASSES_AND_FORCES = [
  row("kg", 1, MASS, "kilogram|kilograms|kilo|kilos|kgs"),
  row("g", 0.001, MASS, "gram|grams|gm|gms"),
  row("mg", 1e-6, MASS, "milligram|milligrams"),
  row("t", 1000, MASS, "tonne|tonnes|metric ton|metric tons"),
  row("lb", POUND, MASS, "lbs|pound|pounds|lbm"),
  row("oz", POUND / 16, MASS, "ounce|ounces"),
  row("short ton", POUND * 2000, MASS, "short tons|US ton|US tons"),
  row("long ton", POUND * 2240, MASS, "long tons|UK ton|UK tons|imperial ton"),
  row("N", 1, FORCE, "newton|newtons"),
  row("kN", 1000, FORCE, "kilonewton|kilonewtons"),
  row("lbf", POUND_FORCE, FORCE),
];

const PRESSURES = [
  row("Pa", 1, PRESSURE, "pascal|pascals"),
  row("mPa", 0.001, PRESSURE, "millipascal|millipascals"),
  row("hPa", 100, PRESSURE, "hectopascal|hectopascals"),
  row("kPa", 1000, PRESSURE, "kilopascal|kilopascals"),
  row("MPa", 1e6, PRESSURE, "megapascal|megapascals"),
  row("bar", 1e5, PRESSURE, "bars"),
  row("mbar", 100, PRESSURE, "millibar|millibars|mb"),
  row("atm", 101_325, PRESSURE, "atmosphere|atmospheres"),
  row("psi", POUND_FORCE / (INCH * INCH), PRESSURE, "lb/in2|lbs/in2|lbf/in2|lb/sq in|psig"),
  row(
    "lb/ft2",
    POUND_FORCE / (FOOT * FOOT),
    PRESSURE,
    "psf|lbs/ft2|lbf/ft2|lb/sq ft|lbs/sq ft|pounds per square foot",
    "lb/ft²",
  ),
  row("ftH2O", COLUMN * FOOT, PRESSURE, "ft H2O|ft head|ft of head|feet of head|ft of water", "ft head"),
  row("inH2O", COLUMN * INCH, PRESSURE, "in H2O|in of water|inches of water", "in head"),
  row("mH2O", COLUMN, PRESSURE, "m H2O|m head|m of head|metres of head|meters of head|m of water", "m head"),
  row("cmH2O", COLUMN / 100, PRESSURE, "cm H2O|cm of water", "cm head"),
  row("mmH2O", COLUMN / 1000, PRESSURE, "mm H2O|mm of water", "mm head"),
];

const TIMES = [
  row("s", 1, TIME, "sec|secs|second|seconds"),
  row("min", MINUTE, TIME, "mins|minute|minutes"),
  row("h", HOUR, TIME, "hr|hrs|hour|hours"),
  row("day", DAY, TIME, "days|d"),
  row("week", DAY * 7, TIME, "weeks|wk|wks"),
  row("year", DAY * DAYS_A_YEAR, TIME, "years|yr|yrs"),
];

const ELECTRICITY = [
  row("V", 1, VOLTAGE, "volt|volts"),
  row("mV", 0.001, VOLTAGE, "millivolt|millivolts"),
  row("kV", 1000, VOLTAGE, "kilovolt|kilovolts"),
  row("A", 1, CURRENT, "amp|amps|ampere|amperes"),
  row("mA", 0.001, CURRENT, "milliamp|milliamps|milliampere|milliamperes"),
  row("C", 1, CHARGE, "coulomb|coulombs"),
  row("Ah", HOUR, CHARGE, "amp hour|amp hours|amp-hour|amp-hours|A h|A·h"),
  row("mAh", HOUR / 1000, CHARGE, "milliamp hour|milliamp hours|milliamp-hours"),
  row("ohm", 1, RESISTANCE, "\u03a9|\u2126|ohms", "Ω"),
  row("mohm", 0.001, RESISTANCE, "m\u03a9|m\u2126|milliohm|milliohms", "mΩ"),
  row("W", 1, POWER, "watt|watts"),
  row("mW", 0.001, POWER, "milliwatt|milliwatts"),
  row("kW", 1000, POWER, "kilowatt|kilowatts"),
  row("MW", 1e6, POWER, "megawatt|megawatts"),
  row("hp", POUND_FORCE * FOOT * 550, POWER, "horsepower"),
  row("J", 1, ENERGY, "joule|joules"),
  row("kJ", 1000, ENERGY, "kilojoule|kilojoules"),
  row("MJ", 1e6, ENERGY, "megajoule|megajoules"),
  row("Wh", HOUR, ENERGY, "watt hour|watt hours|watt-hour|watt-hours|W h"),
  row("kWh", HOUR * 1000, ENERGY, "kilowatt hour|kilowatt hours|kilowatt-hour|kilowatt-hours|kW h"),
];

const THE_REST = [
  row("rad", 1, ANGLE, "radian|radians"),
  row("deg", Math.PI / 180, ANGLE, "°|degree|degrees", "°"),
  point("K", 1, 0, "kelvin|kelvins", "K"),
  point("degC", 1, ZERO_CELSIUS, "°C|℃|deg C|celsius|centigrade|degree C|degrees C|degrees celsius", "°C"),
  point("degF", 5 / 9, 459.67, "°F|℉|deg F|fahrenheit|degree F|degrees F|degrees fahrenheit", "°F"),
  row("delta K", 1, TEMPERATURE, "ΔK|K difference", "K"),
  row("delta degC", 1, TEMPERATURE, "Δ°C|delta °C|°C difference|degC difference", "°C"),
  row("delta degF", 5 / 9, TEMPERATURE, "Δ°F|delta °F|°F difference|degF difference", "°F"),
  row("1", 1, {}, "", ""),
  row("%", 0.01, {}, "percent|per cent|pct"),
  row("ppm", 1e-6, {}),
  row("money", 1, { money: 1 }),
];

/** All named units. */
export const UNIT_TABLE: readonly NamedUnit[] = [
  ...LENGTHS,
  ...AREAS_AND_VOLUMES,
  ...FLOWS_AND_SPEEDS,
  ...MASSES_AND_FORCES,
  ...PRESSURES,
  ...TIMES,
  ...ELECTRICITY,
  ...THE_REST,
];
