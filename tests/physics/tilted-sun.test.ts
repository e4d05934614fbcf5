import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DomainError } from "../../src/physics/domain-error.ts";
import { integral } from "../../src/physics/integral.ts";
import {
  dailyAboveAir,
  diffuseHourShare,
  diffuseShareOfDay,
  diffuseShareOfMonth,
  drySunWetSun,
  hourShare,
} from "../../src/physics/sky-radiation.ts";
import { cooperDeclination, incidenceCosine, setHourAngle } from "../../src/physics/sun-angles.ts";
import {
  type DayKind,
  dailyBeamRatio,
  dayOnTilted,
  monthOnTilted,
  onTilted,
  type PlaneDay,
} from "../../src/physics/tilted-sun.ts";
import { MEGAJOULE } from "../../src/units/constants.ts";
import { toSi } from "../../src/units/unit.ts";
import { diffuseShareOfHour } from "../oracles/sky-radiation.ts";

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const degrees = (value: number) => toSi(value, "deg");
const anyPlane = fc.record({ tilt: real(0, Math.PI / 2), azimuth: real(0, 2 * Math.PI) });
const anyDay = fc.integer({ min: 1, max: 365 });
const anyLatitude = real(degrees(-60), degrees(60));

describe("the beam on a plane through a day", () => {
  test("is the sum of its moments, for planes that face any way", () => {
    fc.assert(
      fc.property(anyLatitude, anyDay, anyPlane, (latitude, day, plane) => {
        const declination = cooperDeclination(day);
        const sunset = setHourAngle(latitude, declination);
        const steps = 4000;
        let [on, level] = [0, 0];
        for (let step = 0; step < steps; step++) {
          const hourAngle = sunset * ((2 * step + 1) / steps - 1);
          const place = { latitude, declination, hourAngle };
          on += Math.max(0, incidenceCosine(place, plane));
          level += incidenceCosine(place, { tilt: 0, azimuth: 0 });
        }
        expect(dailyBeamRatio(latitude, declination, plane)).toBeCloseTo(on / level, 3);
      }),
      { numRuns: 60, verbose: 1 },
    );
  });

  test("is that of Klein's closed form for a plane that faces the equator", () => {
    const [latitude, tilt] = [degrees(43), degrees(60)];
    for (const day of [17, 105, 162, 344]) {
      const declination = cooperDeclination(day);
      const sunset = setHourAngle(latitude, declination);
      const shared = Math.min(sunset, Math.acos(-Math.tan(latitude - tilt) * Math.tan(declination)));
      const on =
        Math.cos(latitude - tilt) * Math.cos(declination) * Math.sin(shared) +
        shared * Math.sin(latitude - tilt) * Math.sin(declination);
      const level =
        Math.cos(latitude) * Math.cos(declination) * Math.sin(sunset) +
        sunset * Math.sin(latitude) * Math.sin(declination);
      const ratio = dailyBeamRatio(latitude, declination, { tilt, azimuth: Math.PI });
      expect(ratio).toBeCloseTo(on / level, 12);
    }
  });

  test("is the same east and west of the meridian, and 1 on the level", () => {
    fc.assert(
      fc.property(anyLatitude, anyDay, anyPlane, (latitude, day, { tilt, azimuth }) => {
        const declination = cooperDeclination(day);
        const one = dailyBeamRatio(latitude, declination, { tilt, azimuth });
        expect(dailyBeamRatio(latitude, declination, { tilt, azimuth: 2 * Math.PI - azimuth })).toBeCloseTo(
          one,
          9,
        );
        expect(dailyBeamRatio(latitude, declination, { tilt: 0, azimuth })).toBeCloseTo(1, 9);
      }),
      { verbose: 1 },
    );
  });

  test("is none where the sun does not rise", () => {
    expect(dailyBeamRatio(degrees(80), degrees(-23), { tilt: 1, azimuth: Math.PI })).toBe(0);
  });
});

describe("a day on a plane", () => {
  const level: PlaneDay = {
    latitude: degrees(43),
    day: 200,
    global: 20 * MEGAJOULE,
    plane: { tilt: 0, azimuth: 0 },
    albedo: 0.2,
  };
  const sumOf = (of: PlaneDay, steps = 96, kind: DayKind = "day") =>
    dayOnTilted(of, steps, kind).reduce((sum, { irradiance, length }) => sum + irradiance * length, 0);

  test("on the level sums to what was given, to 1e-9", () => {
    fc.assert(
      fc.property(
        anyLatitude,
        anyDay,
        real(0.1, 0.75),
        fc.integer({ min: 4, max: 200 }),
        (latitude, day, kt, steps) => {
          const above = dailyAboveAir(latitude, day);
          fc.pre(above > MEGAJOULE);
          const global = kt * above;
          const of = { ...level, latitude, day, global };
          expect(sumOf(of, steps) / global).toBeCloseTo(1, 9);
        },
      ),
      { verbose: 1 },
    );
  });

  test("of a month's mean sums to the month's own figure within 6 %, tilted to the equator", () => {
    for (const [day, global] of [
      [17, 6.44],
      [105, 16.05],
      [198, 22.58],
      [288, 10.48],
    ] as const) {
      const of = {
        ...level,
        day,
        global: global * MEGAJOULE,
        plane: { tilt: degrees(40), azimuth: Math.PI },
      };
      // The month's own relation takes the beam's ratio above the air, this one hour by hour.
      expect(Math.abs(sumOf(of, 96, "month") / monthOnTilted(of) - 1)).toBeLessThan(0.06);
    }
  });

  test("is brightest in the morning on a plane that faces east", () => {
    const steps = dayOnTilted({ ...level, plane: { tilt: degrees(50), azimuth: Math.PI / 2 } }, 48, "day");
    const brightest = steps.reduce((best, step) => (step.irradiance > best.irradiance ? step : best));
    expect(brightest.solarTime).toBeLessThan(toSi(11, "h"));
  });

  test("has no hours in a polar night, and no more sun than there is above the air", () => {
    expect(dayOnTilted({ ...level, latitude: degrees(80), day: 355, global: 0 }, 24, "day")).toEqual([]);
    expect(() => dayOnTilted({ ...level, global: 50 * MEGAJOULE }, 24, "day")).toThrow(DomainError);
  });
});

describe("shares of the sky", () => {
  test("lie between none and all, and fall as the air clears", () => {
    for (const sunset of [1.2, 1.7]) {
      for (let clearness = 0.31; clearness < 0.8; clearness += 0.01) {
        for (const of of [diffuseShareOfHour, (kt: number) => diffuseShareOfDay(kt, sunset)]) {
          expect(of(clearness)).toBeGreaterThan(0.1);
          expect(of(clearness)).toBeLessThanOrEqual(1);
        }
        expect(diffuseShareOfMonth(clearness, sunset)).toBeLessThan(
          diffuseShareOfMonth(clearness - 0.01, sunset),
        );
      }
    }
    expect(() => diffuseShareOfMonth(0.9, 1.5)).toThrow(DomainError);
    expect(() => diffuseShareOfHour(-0.1)).toThrow(DomainError);
  });

  test("of an hour, over all hours of the day, make one day", () => {
    for (const sunset of [1.1, 1.5, 1.9]) {
      const hours = (of: (hour: number, sunset: number) => number) =>
        integral((hour) => of(hour, sunset), -sunset, sunset) / (Math.PI / 12);
      expect(hours(diffuseHourShare)).toBeCloseTo(1, 6);
      // The other is a fit.
      expect(Math.abs(hours(hourShare) - 1)).toBeLessThan(0.02);
    }
  });

  test("of ground and sky are all of it for a plane on its head or on its back", () => {
    const sun = { global: 500, diffuse: 500, beamRatio: 0, albedo: 0.4 };
    expect(onTilted(sun, 0)).toBeCloseTo(500, 9);
    expect(onTilted(sun, Math.PI)).toBeCloseTo(200, 9);
    expect(() => onTilted({ ...sun, diffuse: 501 }, 1)).toThrow(DomainError);
  });
});

describe("wet and dry days", () => {
  test("keep the month's mean", () => {
    fc.assert(
      fc.property(real(0, 30), real(0, 1), real(0.1, 1), (mean, wetShare, ratio) => {
        const { dry, wet } = drySunWetSun(mean, wetShare, ratio);
        expect(wetShare * wet + (1 - wetShare) * dry).toBeCloseTo(mean, 9);
        expect(wet).toBeLessThanOrEqual(dry);
      }),
      { verbose: 1 },
    );
  });
});
