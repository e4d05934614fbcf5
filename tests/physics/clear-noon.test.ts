import { describe, expect, test } from "vitest";
import { clearNoonIrradiance } from "../../src/physics/clear-noon.ts";
import { DomainError } from "../../src/physics/domain-error.ts";
import { normalAboveAir } from "../../src/physics/sky-radiation.ts";
import { toSi } from "../../src/units/unit.ts";

const june = {
  latitude: toSi(40, "deg"),
  day: 172,
  plane: { tilt: toSi(17, "deg"), azimuth: Math.PI },
  albedo: 0.2,
  elevation: 100,
};

describe("a clear noon", () => {
  test("on a panel that faces the sun is near the 1000 W/m2 in which panels are rated", () => {
    // 1000 W/m2 is the rated light; clear noons lie within about a tenth of it (common practice, no source).
    const winter = { ...june, day: 355, plane: { tilt: toSi(63, "deg"), azimuth: Math.PI } };
    for (const noon of [june, winter]) {
      expect(clearNoonIrradiance(noon)).toBeGreaterThan(880);
      expect(clearNoonIrradiance(noon)).toBeLessThan(1120);
    }
  });

  test("is brighter higher up, and never as bright as above the air", () => {
    const high = clearNoonIrradiance({ ...june, elevation: 2500 });
    expect(high).toBeGreaterThan(clearNoonIrradiance(june));
    expect(high).toBeLessThan(normalAboveAir(172));
  });

  test("is weaker on a panel that faces away", () => {
    const away = { ...june, plane: { tilt: toSi(60, "deg"), azimuth: 0 } };
    expect(clearNoonIrradiance(away)).toBeLessThan(clearNoonIrradiance(june) / 2);
  });

  test("is none in a polar night, and refused off the earth", () => {
    expect(clearNoonIrradiance({ ...june, latitude: toSi(85, "deg"), day: 355 })).toBe(0);
    expect(() => clearNoonIrradiance({ ...june, elevation: 20_000 })).toThrow(DomainError);
  });
});
