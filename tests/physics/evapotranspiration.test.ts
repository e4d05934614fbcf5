import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { airPressure, vapourFromLowest, windAtTwoMetres } from "../../src/physics/air.ts";
import { coveredPenmanMonteith } from "../../src/physics/covered-evapotranspiration.ts";
import { DomainError } from "../../src/physics/domain-error.ts";
import {
  hargreaves,
  type PenmanMonteithGiven,
  penmanMonteith,
  penmanMonteithParts,
} from "../../src/physics/reference-evapotranspiration.ts";
import {
  clearSkyRadiation,
  daylightHours,
  extraterrestrialRadiation,
  sunsetHourAngle,
} from "../../src/physics/sun.ts";
import { DAY } from "../../src/units/constants.ts";
import { solarFromSunshine } from "../oracles/sun.ts";

const latitude = fc.double({ min: -Math.PI / 2, max: Math.PI / 2, noNaN: true });
const dayOfYear = fc.integer({ min: 1, max: 366 });
const lowest = fc.double({ min: 250, max: 310, noNaN: true });
const range = fc.double({ min: 0, max: 25, noNaN: true });

describe("the sun of a day", () => {
  test("is finite and never negative anywhere on earth, and day is no longer than a day", () => {
    fc.assert(
      fc.property(latitude, dayOfYear, (at, day) => {
        const radiation = extraterrestrialRadiation(at, day);
        expect(radiation).toBeGreaterThanOrEqual(0);
        expect(radiation).toBeLessThan(50e6);
        expect(daylightHours(at, day)).toBeGreaterThanOrEqual(0);
        expect(daylightHours(at, day)).toBeLessThanOrEqual(DAY);
      }),
    );
  });

  test("does not set in a polar summer and does not rise in a polar winter", () => {
    expect(sunsetHourAngle(1.4, 172)).toBe(Math.PI);
    expect(sunsetHourAngle(1.4, 355)).toBe(0);
    expect(extraterrestrialRadiation(1.4, 355)).toBe(0);
  });

  test("is twelve hours long on the equator, every day", () => {
    for (const day of [1, 80, 172, 300]) expect(daylightHours(0, day)).toBeCloseTo(DAY / 2, 6);
  });

  test("refuses a latitude in degrees and a day outside the year", () => {
    expect(() => extraterrestrialRadiation(47.6, 100)).toThrow(DomainError);
    for (const day of [0, 367, Number.NaN])
      expect(() => extraterrestrialRadiation(0.8, day)).toThrow(DomainError);
    expect(() => clearSkyRadiation(-1, 0)).toThrow(DomainError);
    expect(() => solarFromSunshine(4e7, 50_000, 40_000)).toThrow(DomainError);
  });
});

describe("hargreaves", () => {
  test("is finite and never negative, and nothing where the mean is below -17.8 degrees Celsius", () => {
    fc.assert(
      fc.property(lowest, range, latitude, dayOfYear, (low, spread, at, day) => {
        const extraterrestrial = extraterrestrialRadiation(at, day);
        const depth = hargreaves({ highest: low + spread, lowest: low, extraterrestrial });
        expect(depth).toBeGreaterThanOrEqual(0);
        expect(depth).toBeLessThan(0.03);
        if (low + spread / 2 < 255.3) expect(depth).toBe(0);
      }),
    );
  });

  test("refuses a highest temperature below the lowest", () => {
    expect(() => hargreaves({ highest: 280, lowest: 281, extraterrestrial: 3e7 })).toThrow(DomainError);
    expect(() => hargreaves({ highest: Number.NaN, lowest: 281, extraterrestrial: 3e7 })).toThrow(
      DomainError,
    );
  });
});

describe("penmanMonteith", () => {
  const july: PenmanMonteithGiven = {
    highest: 299.75,
    lowest: 287.95,
    vapour: null,
    wind: null,
    sun: null,
    elevation: 200,
    latitude: 0.798,
    dayOfYear: 196,
  };

  test("is finite and never negative for any weather on earth", () => {
    fc.assert(
      fc.property(
        lowest,
        range,
        latitude,
        dayOfYear,
        fc.double({ min: 0, max: 20, noNaN: true }),
        (low, spread, at, day, wind) => {
          const depth = penmanMonteith({
            ...july,
            highest: low + spread,
            lowest: low,
            latitude: at,
            dayOfYear: day,
            wind,
          });
          expect(depth).toBeGreaterThanOrEqual(0);
          expect(depth).toBeLessThan(0.05);
        },
      ),
    );
  });

  test("takes 2 m/s where no wind and the lowest temperature where no vapour was measured", () => {
    const vapour = vapourFromLowest(july.lowest, 0);
    expect(penmanMonteith({ ...july, wind: 2, vapour })).toBe(penmanMonteith(july));
  });

  test("takes a dew point below the lowest temperature in arid places, which dries more", () => {
    expect(penmanMonteith({ ...july, dewPointBelow: 2.5 })).toBeGreaterThan(penmanMonteith(july));
  });

  test("counts a calm as half a metre a second", () => {
    expect(penmanMonteith({ ...july, wind: 0 })).toBe(penmanMonteith({ ...july, wind: 0.5 }));
  });

  test("loses less under a cover that lets less light through", () => {
    const outside = penmanMonteithParts(july).solar;
    const under = penmanMonteith({ ...july, sun: 0.7 * outside, wind: 0.5 });
    expect(under).toBeLessThan(penmanMonteith(july));
  });

  test("keeps its two parts adding up to the whole", () => {
    const parts = penmanMonteithParts(july);
    expect(parts.radiationPart + parts.windPart).toBeCloseTo(parts.evapotranspiration, 15);
  });

  test("refuses negative wind, negative vapour and swapped temperatures", () => {
    expect(() => penmanMonteith({ ...july, wind: -1 })).toThrow(DomainError);
    expect(() => penmanMonteith({ ...july, vapour: -5 })).toThrow(DomainError);
    expect(() => penmanMonteith({ ...july, highest: 280 })).toThrow(DomainError);
  });
});

test("air relations refuse what no air can be", () => {
  expect(() => airPressure(12_000)).toThrow(DomainError);
  expect(() => windAtTwoMetres(3, 0.05)).toThrow(DomainError);
  expect(() => vapourFromLowest(400, 0)).toThrow(DomainError);
});

test("a cover that keeps no light and warmth out leaves what the wind under it leaves", () => {
  const day = {
    highest: 299,
    lowest: 288,
    vapour: null,
    sun: null,
    elevation: 50,
    latitude: 0.8,
    dayOfYear: 180,
  };
  const under = coveredPenmanMonteith({ ...day, wind: 3 }, { lightShare: 1, wind: 0.5, warmer: 0 });
  expect(under).toBeCloseTo(penmanMonteith({ ...day, wind: 0.5 }), 12);
  const glass = { wind: 0.5, warmer: 0 };
  expect(() => coveredPenmanMonteith({ ...day, wind: 3 }, { ...glass, lightShare: 70 })).toThrow(DomainError);
});
