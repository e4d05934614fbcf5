import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DomainError } from "../../src/physics/domain-error.ts";
import { dailyAboveAir } from "../../src/physics/sky-radiation.ts";
import { extraterrestrialRadiation, solarDeclination } from "../../src/physics/sun.ts";
import {
  cooperDeclination,
  hourAngle,
  incidenceCosine,
  setHourAngle,
  sineOfHeight,
} from "../../src/physics/sun-angles.ts";
import { HOUR } from "../../src/units/constants.ts";
import { toSi } from "../../src/units/unit.ts";
import { spencerDeclination, sunAzimuth, sunTimes, zenithAngle } from "../oracles/sun-angles.ts";

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const degrees = (value: number) => toSi(value, "deg");
const anyPlace = fc.record({
  latitude: real(degrees(-66), degrees(66)),
  declination: real(degrees(-23.45), degrees(23.45)),
  hourAngle: real(-Math.PI, Math.PI),
});

describe("the sun's place", () => {
  test("by height and compass is the same as by incidence on planes that face up, east, south and west", () => {
    fc.assert(
      fc.property(anyPlace, (place) => {
        const zenith = zenithAngle(place);
        const azimuth = sunAzimuth(place);
        const onto = (tilt: number, facing: number) => incidenceCosine(place, { tilt, azimuth: facing });
        expect(onto(0, 1)).toBeCloseTo(Math.cos(zenith), 9);
        for (const facing of [0.5 * Math.PI, Math.PI, 1.5 * Math.PI]) {
          const expected = Math.sin(zenith) * Math.cos(azimuth - facing);
          expect(onto(Math.PI / 2, facing)).toBeCloseTo(expected, 6);
        }
      }),
      { verbose: 1 },
    );
  });

  test("is east in the morning, south at noon in the north and north at noon in the south", () => {
    const at = (latitude: number, hour: number) =>
      sunAzimuth({ latitude: degrees(latitude), declination: 0, hourAngle: hourAngle(hour * HOUR) });
    expect(at(45, 6.001)).toBeCloseTo(Math.PI / 2, 3);
    expect(at(45, 12)).toBeCloseTo(Math.PI, 9);
    expect(Math.abs(Math.sin(at(-45, 12)))).toBeLessThan(1e-9);
    expect(Math.cos(at(-45, 12))).toBeCloseTo(1, 9);
  });

  test("is on the horizon at its set hour", () => {
    fc.assert(
      fc.property(anyPlace, ({ latitude, declination }) => {
        const hour = setHourAngle(latitude, declination);
        expect(sineOfHeight({ latitude, declination, hourAngle: hour })).toBeCloseTo(0, 9);
      }),
      { verbose: 1 },
    );
  });

  test("has a season in which three published declinations agree within 1.6°", () => {
    for (let day = 1; day <= 365; day++) {
      expect(Math.abs(cooperDeclination(day) - spencerDeclination(day))).toBeLessThan(degrees(1.6));
      expect(Math.abs(cooperDeclination(day) - solarDeclination(day))).toBeLessThan(degrees(1.6));
    }
  });

  test("never rises in a polar night and never sets on a polar day", () => {
    expect(sunTimes(355, degrees(80), 0, 0)).toMatchObject({ sunrise: null, sunset: null });
    expect(setHourAngle(degrees(80), degrees(23))).toBe(Math.PI);
    expect(setHourAngle(degrees(80), degrees(-23))).toBe(0);
  });

  test("is refused beyond a pole and outside the year", () => {
    expect(() => zenithAngle({ latitude: 2, declination: 0, hourAngle: 0 })).toThrow(DomainError);
    expect(() => cooperDeclination(0)).toThrow(DomainError);
    expect(() => sunTimes(100, 0, 4, 0)).toThrow(DomainError);
  });
});

test("sunshine above the air by two books agrees within 2 % up to 50° of latitude", () => {
  for (const latitude of [-50, -20, 0, 30, 50].map(degrees)) {
    for (let day = 1; day <= 365; day += 13) {
      const ratio = dailyAboveAir(latitude, day) / extraterrestrialRadiation(latitude, day);
      expect(Math.abs(ratio - 1)).toBeLessThan(0.02);
    }
  }
});
