import { unit as oracleUnit } from "mathjs";
import { describe, expect, it } from "vitest";
import { isPlain, sameDimension } from "../../src/units/dimension.ts";
import { MEASURES } from "../../src/units/measures.ts";
import { UNIT_TABLE } from "../../src/units/table.ts";
import { dimensionOf, fromSi, parseUnit, toSi, unitProblem } from "../../src/units/unit.ts";

// Rounding of doubles in two different orders of multiplication.
const BITS = 4e-15;
// mathjs 15.2.0 holds psi, hp and the acre (4046.86 m2) rounded; the tolerance is half of its last figure.
const ORACLE_ROUNDS = { psi: 1e-9, hp: 1e-10, acre: 1e-6 };

const ORACLE: [ours: string, theirs: string, si: string, tolerance?: number][] = [
  ["in", "in", "m"],
  ["ft", "ft", "m"],
  ["yd", "yd", "m"],
  ["mi", "mi", "m"],
  ["mil", "mil", "m"],
  ["mm", "mm", "m"],
  ["cm", "cm", "m"],
  ["km", "km", "m"],
  ["um", "um", "m"],
  ["in2", "in^2", "m^2"],
  ["ft2", "ft^2", "m^2"],
  ["sq yd", "yd^2", "m^2"],
  ["mm2", "mm^2", "m^2"],
  ["ha", "hectare", "m^2"],
  ["acre", "acre", "m^2", ORACLE_ROUNDS.acre],
  ["ft3", "ft^3", "m^3"],
  ["cu in", "in^3", "m^3"],
  ["cu yd", "yd^3", "m^3"],
  ["L", "L", "m^3"],
  ["mL", "mL", "m^3"],
  ["gal", "gallon", "m^3"],
  ["qt", "quart", "m^3"],
  ["pt", "pint", "m^3"],
  ["cup", "cup", "m^3"],
  ["fl oz", "fluidounce", "m^3"],
  ["gpm", "gallon/minute", "m^3/s"],
  ["gph", "gallon/hour", "m^3/s"],
  ["gpd", "gallon/day", "m^3/s"],
  ["cfs", "ft^3/s", "m^3/s"],
  ["lpm", "L/minute", "m^3/s"],
  ["gal/in", "gallon/in", "m^2"],
  ["in/h", "in/hour", "m/s"],
  ["mm/day", "mm/day", "m/s"],
  ["mph", "mi/hour", "m/s"],
  ["kph", "km/hour", "m/s"],
  ["kg", "kg", "kg"],
  ["g", "g", "kg"],
  ["lb", "lb", "kg"],
  ["oz", "oz", "kg"],
  ["short ton", "ton", "kg"],
  ["t", "tonne", "kg"],
  ["lb/ft3", "lb/ft^3", "kg/m^3"],
  ["N", "N", "N"],
  ["lbf", "lbf", "N"],
  ["Pa", "Pa", "Pa"],
  ["kPa", "kPa", "Pa"],
  ["hPa", "hPa", "Pa"],
  ["bar", "bar", "Pa"],
  ["mbar", "mbar", "Pa"],
  ["atm", "atm", "Pa"],
  ["psi", "psi", "Pa", ORACLE_ROUNDS.psi],
  ["lb/ft2", "lbf/ft^2", "Pa"],
  ["cmH2O", "cmH2O", "Pa"],
  ["mmH2O", "mmH2O", "Pa"],
  ["s", "s", "s"],
  ["min", "minute", "s"],
  ["h", "hour", "s"],
  ["day", "day", "s"],
  ["week", "week", "s"],
  ["year", "year", "s"],
  ["V", "V", "V"],
  ["mV", "mV", "V"],
  ["A", "A", "A"],
  ["mA", "mA", "A"],
  ["Ah", "A hour", "C"],
  ["mAh", "mA hour", "C"],
  ["ohm", "ohm", "ohm"],
  ["W", "W", "W"],
  ["kW", "kW", "W"],
  ["hp", "hp", "W", ORACLE_ROUNDS.hp],
  ["J", "J", "J"],
  ["kJ", "kJ", "J"],
  ["MJ", "MJ", "J"],
  ["Wh", "W hour", "J"],
  ["kWh", "kW hour", "J"],
  ["MJ/m2/day", "MJ/m^2/day", "W/m^2"],
  ["mPa s", "mPa s", "Pa s"],
  ["deg", "deg", "rad"],
  ["K", "K", "K"],
];

describe("every unit shared with mathjs", () => {
  it.each(ORACLE)("%s is %s", (ours, theirs, si, tolerance = BITS) => {
    const expected = oracleUnit(1, theirs).toNumber(si);
    expect(Math.abs(toSi(1, ours) / expected - 1)).toBeLessThanOrEqual(tolerance);
  });

  it.each([
    ["degF", "degF", -40],
    ["degF", "degF", 0],
    ["degF", "degF", 98.6],
    ["degC", "degC", 0],
    ["degC", "degC", 37],
  ])("%s is %s at %d on the thermometer", (ours, theirs, value) => {
    // mathjs works through 273.15 K in another order, so some last bits differ near zero degrees.
    expect(toSi(value, ours)).toBeCloseTo(oracleUnit(value, theirs).toNumber("K"), 10);
  });
});

describe("units whose size is exact by definition", () => {
  it.each([
    ["gal", 231 * 0.0254 ** 3, "231 cubic inches (NIST Handbook 44, appendix C), from memory"],
    ["imp gal", 4.54609e-3, "4.54609 L (UK Units of Measurement Regulations 1995), from memory"],
    ["imp pt", 4.54609e-3 / 8, "an eighth of the gallon"],
    ["acre", 43_560 * 0.3048 ** 2, "43,560 square feet of the international foot"],
    ["acre-ft", 43_560 * 0.3048 ** 3, "an acre, a foot deep"],
    ["long ton", 2240 * 0.45359237, "2,240 lb"],
    ["hp", 550 * 0.3048 * 0.45359237 * 9.80665, "550 ft lbf a second"],
    ["ftH2O", 1000 * 9.80665 * 0.3048, "water of 1000 kg/m3, standard gravity"],
    ["knot", 1852 / 3600, "1852 m an hour"],
    ["year", 365.25 * 86_400, "the Julian year"],
  ])("%s", (unit, si) => {
    expect(Math.abs(toSi(1, unit) / si - 1)).toBeLessThanOrEqual(BITS);
  });

  it("an inch of rain on a square foot is 144/231 gal = 0.623377 gal (231 in3 a gallon; read and computed)", () => {
    expect(fromSi(toSi(1, "in") * toSi(1, "ft2"), "gal")).toBeCloseTo(144 / 231, 14);
    expect(fromSi(toSi(1, "in") * toSi(1, "ft2"), "gal").toFixed(6)).toBe("0.623377");
  });

  it("a millimetre of rain on a square metre is a litre (enHealth 2011, appendix B; read)", () => {
    expect(fromSi(toSi(1, "mm") * toSi(1, "m2"), "L")).toBeCloseTo(1, 14);
  });

  it("an inch of rain on an acre is 27,154 gal (USGS water Q&A; read)", () => {
    expect(Math.round(fromSi(toSi(1, "in") * toSi(1, "acre"), "gal"))).toBe(27_154);
  });
});

describe("unit expressions", () => {
  it.each([
    ["ft^2", "ft2"],
    ["ft²", "ft2"],
    ["sq ft", "ft2"],
    ["square feet", "ft2"],
    ["cubic metres", "m3"],
    ["gallons", "gal"],
    ["GAL", "gal"],
    ["Gals", "gal"],
    ["litres", "L"],
    ["l", "L"],
    ["gallons per minute", "gal/min"],
    ["imp gal/min", "imp gal/min"],
    ["UK gallons", "imp gal"],
    ["in.", "in"],
    ['"', "in"],
    ["'", "ft"],
    ["fl. oz.", "fl oz"],
    ["hrs", "h"],
    ["days", "day"],
    ["amps", "A"],
    ["AH", "Ah"],
    ["mah", "mAh"],
    ["KWH", "kWh"],
    ["A h", "Ah"],
    ["amp hours", "Ah"],
    ["°F", "degF"],
    ["deg C", "degC"],
    ["Ω", "ohm"],
    ["per cent", "%"],
    ["percent", "%"],
    ["lbs/ft²", "lb/ft2"],
    ["psf", "lb/ft2"],
    ["lb/in2", "psi"],
    ["ft of head", "ftH2O"],
    ["kWh/m2/day", "kWh/m2/day"],
    ["s⁻¹", "1/s"],
    ["s^-1", "1/s"],
    ["Pa·s", "Pa s"],
    ["Pa*s", "Pa s"],
    ["1/K", "1/K"],
    ["", "1"],
    ["1", "1"],
    ["money/imp gal", "money/imp gal"],
    ["acre ft", "acre-ft"],
    ["m³/s", "m3/s"],
  ])("%j is stored as %j", (text, stored) => {
    expect(parseUnit(text)?.text).toBe(stored);
    expect(parseUnit(stored)).toEqual(parseUnit(text));
  });

  it.each([
    ["MA", "mA"],
    ["MAH", "mAh"],
    ["ML", "mL"],
    ["M", "min for minutes"],
    ["MM", "millimetres"],
    ["S", "s for seconds"],
    ["H", "h for hours"],
    ["T", "t for tonnes"],
    ["ton", "short ton"],
    ["month", "days"],
    ["F", "degF"],
    ["a", "amps"],
    ["mj", "MJ"],
    ["galons", "Did you mean gal?"],
    ["mintues", "Did you mean min?"],
    ["W/m2 K", "two ways"],
    ["foo", "foo"],
    ["gal//min", ""],
    ["gal/", ""],
    ["/min", ""],
    ["ft0", "ft0"],
    ["constructor", "constructor"],
    ["__proto__", "__proto__"],
  ])("%j is refused with a sentence that says %j", (text, part) => {
    expect(parseUnit(text)).toBeNull();
    expect(unitProblem(text)).toContain(part);
    expect(() => toSi(1, text)).toThrow(RangeError);
    expect(() => fromSi(1, text)).toThrow(RangeError);
    expect(() => dimensionOf(text)).toThrow(RangeError);
  });

  it("read a temperature scale alone as a point and within an expression as a difference", () => {
    expect(dimensionOf("degC").point).toBe(true);
    expect(dimensionOf("K").point).toBe(true);
    expect(dimensionOf("1/degF").point).toBe(false);
    expect(dimensionOf("delta degF").point).toBe(false);
    expect(toSi(9, "delta degF")).toBe(5);
    expect(toSi(1, "1/degF")).toBeCloseTo(1.8, 14);
  });
});

describe("the table of units", () => {
  it("finds each unit by its name and by each alias, and no word names two units", () => {
    const seen = new Map<string, string>();
    for (const { name, aliases } of UNIT_TABLE) {
      for (const word of [name, ...aliases]) {
        expect(seen.has(word), `${word} names ${seen.get(word)} and ${name}`).toBe(false);
        seen.set(word, name);
        expect(parseUnit(word)?.text, word).toBe(name);
      }
    }
  });

  it("turns SI back into each unit", () => {
    for (const { name } of UNIT_TABLE) {
      expect(fromSi(toSi(7.25, name), name), name).toBeCloseTo(7.25, 11);
    }
  });

  it("gives every measure units of one dimension, coherent in SI", () => {
    for (const [name, measure] of Object.entries(MEASURES)) {
      expect(parseUnit(measure.si)?.factor, name).toBe(1);
      for (const unit of [measure.us, measure.imperial, measure.metric]) {
        expect(sameDimension(dimensionOf(unit), dimensionOf(measure.si)), `${name} in ${unit}`).toBe(true);
      }
    }
    expect(isPlain(dimensionOf(MEASURES.share.us))).toBe(true);
  });
});
