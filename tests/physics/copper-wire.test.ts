import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type AmpacityRow,
  ampacity,
  circuitResistance,
  copperTemperatureRatio,
  thinnestForDrop,
} from "../../src/physics/copper-wire.ts";
import { DomainError } from "../../src/physics/domain-error.ts";
import { toSi } from "../../src/units/unit.ts";
import { areaForDrop, copperResistance, gaugeArea, gaugeDiameter } from "../oracles/copper-wire.ts";

const warm = toSi(50, "degC");
const wires = [18, 16, 14, 12, 10, 8].map((gauge) => ({
  gauge,
  area: gaugeArea(gauge),
  resistance: copperResistance(gaugeArea(gauge), toSi(20, "degC")),
  at: toSi(20, "degC"),
}));

describe("a gauge", () => {
  test("six numbers lower has twice the diameter, nearly", () => {
    expect(gaugeDiameter(6) / gaugeDiameter(12)).toBeCloseTo(2.005, 3);
  });

  test("is refused outside the standard", () => {
    expect(() => gaugeDiameter(-4)).toThrow(DomainError);
    expect(() => gaugeDiameter(Number.NaN)).toThrow(DomainError);
  });
});

describe("resistance", () => {
  test("from one temperature to another and back is as before", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 230, max: 470, noNaN: true }),
        fc.double({ min: 230, max: 470, noNaN: true }),
        (one, other) => {
          expect(copperTemperatureRatio(one, other) * copperTemperatureRatio(other, one)).toBeCloseTo(1, 12);
        },
      ),
      { verbose: 1 },
    );
  });

  test("counts the way there and the way back", () => {
    const [thin] = wires;
    if (!thin) throw new Error("no wire");
    expect(circuitResistance(thin, 10, thin.at)).toBeCloseTo(20 * thin.resistance, 12);
    expect(() => circuitResistance(thin, -1, warm)).toThrow(DomainError);
    expect(() => copperResistance(0, warm)).toThrow(DomainError);
  });
});

describe("the thinnest wire for a drop", () => {
  test("loses no more than wanted, and the next thinner one loses more", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 15, noNaN: true }),
        fc.double({ min: 1, max: 40, noNaN: true }),
        fc.double({ min: 0.1, max: 2, noNaN: true }),
        (current, oneWayLength, drop) => {
          const lost = (wire: (typeof wires)[number]) =>
            current * circuitResistance(wire, oneWayLength, warm);
          const found = thinnestForDrop(wires, { current, oneWayLength, temperature: warm, drop });
          const thinner = wires.filter((wire) => found === null || wire.area < found.area);
          if (found) expect(lost(found)).toBeLessThanOrEqual(drop);
          for (const wire of thinner) expect(lost(wire)).toBeGreaterThan(drop);
        },
      ),
      { verbose: 1 },
    );
  });

  test("has the area that the relation asks for, or more", () => {
    const duty = { current: 5, oneWayLength: 15, temperature: toSi(20, "degC"), drop: 0.5 };
    const resistivity = 1.7241e-8 * 1.02;
    const area = areaForDrop({ current: 5, roundTrip: 30, drop: 0.5, resistivity });
    const found = thinnestForDrop(wires, duty);
    expect(found?.area).toBeGreaterThanOrEqual(area);
    expect(() => thinnestForDrop(wires, { ...duty, drop: 0 })).toThrow(DomainError);
  });
});

describe("ampacity", () => {
  const rows: readonly AmpacityRow[] = [
    {
      area: 2,
      currents: [
        { insulation: 348, current: 20 },
        { insulation: 333, current: 15 },
      ],
    },
    {
      area: 1,
      currents: [
        { insulation: 333, current: 10 },
        { insulation: 348, current: 12 },
      ],
    },
  ];

  test("is that of the largest gauge not thicker, and of the highest column that the insulation stands", () => {
    expect(ampacity(rows, 1.9, 348)).toBe(12);
    expect(ampacity(rows, 2, 347)).toBe(15);
    expect(ampacity(rows, 9, 400)).toBe(20);
  });

  test("is the lowest where the insulation is not known", () => {
    expect(ampacity(rows, 2, null)).toBe(15);
  });

  test("is refused for a wire or an insulation below the table", () => {
    expect(() => ampacity(rows, 0.9, null)).toThrow(DomainError);
    expect(() => ampacity(rows, 1, 320)).toThrow(DomainError);
  });
});
