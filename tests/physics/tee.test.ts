import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DomainError } from "../../src/physics/domain-error.ts";
import { type GravityLine, gravityFlow } from "../../src/physics/gravity-line.ts";
import { openingOf } from "../../src/physics/orifice.ts";
import { type TeeBranch, teeFlows } from "../../src/physics/tee.ts";

const hose = (length: number, seat: number | null = null): GravityLine => ({
  length,
  bore: 0.0159,
  roughness: 1.5e-6,
  fittingsK: 1.5,
  opening: seat === null ? null : openingOf(seat, 0.62),
  viscosity: 1.14e-6,
});

const from = (length: number, end: number): TeeBranch => ({
  line: hose(length),
  end,
  inward: true,
  outward: false,
});
const to = (length: number, end: number, seat: number | null): TeeBranch => {
  return { line: hose(length, seat), end, inward: false, outward: true };
};
const shut = (branch: TeeBranch): TeeBranch => ({ ...branch, line: { ...branch.line, opening: 0 } });

describe("teeFlows", () => {
  test("with one float shut gives the other line's flow alone, to 0.1 %", () => {
    const alone = gravityFlow({ ...hose(30, 0.005), fittingsK: 3 }, 1.2);
    const { flows } = teeFlows([from(18, 1.2), to(12, 0, 0.005), shut(to(9, 0.1, 0.005))]);
    expect(Math.abs((flows[0] as number) / alone - 1)).toBeLessThan(0.001);
    expect(flows[2]).toBeCloseTo(0, 15);
  });

  test("with both open gives each less than alone, and less than their sum together", () => {
    const [first, second] = [to(12, 0, 0.009), to(9, 0.1, 0.009)];
    const alone = [
      teeFlows([from(18, 1.2), first, shut(second)]),
      teeFlows([from(18, 1.2), shut(first), second]),
    ];
    const both = teeFlows([from(18, 1.2), first, second]);
    const sum = alone.reduce((total, { flows }) => total + (flows[0] as number), 0);
    expect(both.flows[0]).toBeLessThan(sum);
    expect(both.flows[0]).toBeGreaterThan(Math.max(...alone.map(({ flows }) => flows[0] as number)));
  });

  test("lets in as much as it lets out, never uphill, and does not care for the lines' order", () => {
    const branch: fc.Arbitrary<TeeBranch> = fc.record({
      line: fc.record({
        length: fc.double({ min: 1, max: 60, noNaN: true }),
        bore: fc.double({ min: 0.01, max: 0.04, noNaN: true }),
        roughness: fc.constant(1.5e-6),
        fittingsK: fc.double({ min: 0.5, max: 10, noNaN: true }),
        opening: fc.option(fc.double({ min: 0, max: 1e-4, noNaN: true })),
        viscosity: fc.constant(1.14e-6),
      }),
      end: fc.double({ min: -3, max: 3, noNaN: true }),
      inward: fc.boolean(),
      outward: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(branch, { minLength: 1, maxLength: 5 }), (branches) => {
        const { head, flows } = teeFlows(branches);
        const through = flows.reduce((sum, flow) => sum + Math.abs(flow), 0);
        expect(Math.abs(flows.reduce((sum, flow) => sum + flow, 0))).toBeLessThanOrEqual(
          1e-9 * through + 1e-15,
        );
        branches.forEach(({ end }, index) => {
          expect((flows[index] as number) * (end - head)).toBeGreaterThanOrEqual(0);
        });
        const turned = teeFlows([...branches].reverse());
        flows.forEach((flow, index) => {
          expect(turned.flows[flows.length - 1 - index]).toBeCloseTo(flow, 9);
        });
      }),
      { verbose: 1 },
    );
  });

  test("refuses a tee without lines", () => {
    expect(() => teeFlows([])).toThrow(DomainError);
  });
});
