import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type GravityLine,
  gravityFlow,
  gravityHead,
  laminarFlow,
  seriesFlow,
} from "../../src/physics/gravity-line.ts";
import { flowAt, lineTable, powerAt } from "../../src/physics/line-table.ts";
import { openingOf } from "../../src/physics/orifice.ts";

const hose: GravityLine = {
  length: 30,
  bore: 0.0159,
  roughness: 1.5e-6,
  fittingsK: 1.5,
  opening: null,
  viscosity: 1.1386e-6,
};

const anyLine: fc.Arbitrary<GravityLine> = fc.record({
  length: fc.double({ min: 0.1, max: 300, noNaN: true }),
  bore: fc.double({ min: 0.004, max: 0.08, noNaN: true }),
  roughness: fc.double({ min: 0, max: 1e-4, noNaN: true }),
  fittingsK: fc.double({ min: 0, max: 40, noNaN: true }),
  opening: fc.option(fc.double({ min: 5e-7, max: 5e-4, noNaN: true })),
  viscosity: fc.double({ min: 5.5e-7, max: 1.8e-6, noNaN: true }),
});
const anyHead = fc.double({ min: 1e-9, max: 20, noNaN: true });

describe("gravityFlow", () => {
  test("gives back the head that gravityHead needs for it, to 1e-11", () => {
    fc.assert(
      fc.property(anyLine, anyHead, (line, head) => {
        expect(Math.abs(gravityHead(line, gravityFlow(line, head)) / head - 1)).toBeLessThan(1e-11);
      }),
      { numRuns: 300, verbose: 1 },
    );
  });

  test("is never less under more head, in a wider or in a shorter hose", () => {
    fc.assert(
      fc.property(anyLine, anyHead, fc.double({ min: 1, max: 3, noNaN: true }), (line, head, more) => {
        const flow = gravityFlow(line, head) * (1 - 1e-11);
        expect(gravityFlow(line, head * more)).toBeGreaterThanOrEqual(flow);
        expect(gravityFlow({ ...line, bore: line.bore * more }, head)).toBeGreaterThanOrEqual(flow);
        expect(gravityFlow({ ...line, length: line.length / more }, head)).toBeGreaterThanOrEqual(flow);
      }),
      { verbose: 1 },
    );
  });

  test("is none without head, uphill, or through a shut valve", () => {
    expect(gravityFlow(hose, 0)).toBe(0);
    expect(gravityFlow(hose, -1)).toBe(0);
    expect(gravityFlow({ ...hose, opening: 0 }, 1)).toBe(0);
  });

  test("is that of Hagen and Poiseuille at a creeping head", () => {
    const bare = { ...hose, fittingsK: 0 };
    const flow = (Math.PI * 9.80665 * hose.bore ** 4 * 1e-9) / (128 * hose.viscosity * hose.length);
    expect(gravityFlow(bare, 1e-9) / flow).toBeCloseTo(1, 12);
  });

  test("refuses a line that nothing holds back", () => {
    expect(() => gravityFlow({ ...hose, length: 0, fittingsK: 0 }, 1)).toThrow(/length/);
    expect(() => gravityFlow(hose, Number.NaN)).toThrow(/head/);
  });
});

describe("lineTable", () => {
  test("looks up what gravityFlow solves, to 5e-5, at any head up to the highest", () => {
    fc.assert(
      fc.property(
        anyLine,
        fc.array(fc.double({ min: 1e-7, max: 3, noNaN: true }), { minLength: 20 }),
        (line, heads) => {
          const table = lineTable(line, 3);
          for (const head of heads) {
            expect(Math.abs(flowAt(table, head) / gravityFlow(line, head) - 1)).toBeLessThan(5e-5);
          }
        },
      ),
      { verbose: 1 },
    );
  });

  test("keeps to 5e-5 through the steep middle regime of every bore, length and valve", () => {
    for (const bore of [0.004, 0.0095, 0.0159, 0.025, 0.05, 0.08])
      for (const length of [0, 0.1, 3, 30, 300])
        for (const opening of [null, 5e-7, openingOf(0.0032, 0.62), 5e-4]) {
          const line = { ...hose, bore, length, opening };
          const table = lineTable(line, 8);
          for (let reynolds = 500; reynolds < 20_000; reynolds *= 1.011) {
            const flow = (reynolds * Math.PI * bore * line.viscosity) / 4;
            const head = gravityHead(line, flow);
            if (head < 8) expect(Math.abs(flowAt(table, head) / flow - 1)).toBeLessThan(5e-5);
          }
        }
  });

  test("never falls as the head rises", () => {
    fc.assert(
      fc.property(anyLine, anyHead, fc.double({ min: 1, max: 1.1, noNaN: true }), (line, head, more) => {
        const table = lineTable(line, 20);
        expect(flowAt(table, head * more)).toBeGreaterThanOrEqual(flowAt(table, head) * (1 - 1e-12));
      }),
      { verbose: 1 },
    );
  });

  test("tells the power of the flow in the head over the tenth below it, to 1e-3", () => {
    fc.assert(
      fc.property(anyLine, anyHead, (line, head) => {
        const power = Math.log(gravityFlow(line, head * 0.9) / gravityFlow(line, head)) / Math.log(0.9);
        expect(Math.abs(powerAt(lineTable(line, 20), head) - power)).toBeLessThan(1e-3);
      }),
      { numRuns: 300, verbose: 1 },
    );
    expect(powerAt(lineTable({ ...hose, fittingsK: 0 }, 1), 1e-6)).toBeCloseTo(1, 9);
    expect(powerAt(lineTable({ ...hose, length: 0, opening: 1e-6 }, 1), 0.5)).toBeCloseTo(0.5, 4);
  });

  test("is exact in laminar flow and beyond its highest head", () => {
    const table = lineTable(hose, 1);
    expect(flowAt(table, 0.001)).toBe(laminarFlow(hose, 0.001));
    expect(flowAt(table, 5)).toBe(gravityFlow(hose, 5));
    expect(flowAt(table, 0)).toBe(0);
    expect(flowAt(table, -1)).toBe(0);
    expect(flowAt(lineTable({ ...hose, opening: 0 }, 1), 1)).toBe(0);
  });
});

describe("seriesFlow", () => {
  test("of a hose cut in two is the flow of the whole hose", () => {
    const first = { ...hose, length: 11, fittingsK: 0.5 };
    const second = { ...hose, length: 19, fittingsK: 1 };
    for (const head of [1e-4, 0.02, 0.5, 3])
      expect(seriesFlow(first, second, head) / gravityFlow(hose, head)).toBeCloseTo(1, 9);
  });

  test("shares the head between both, and is no more than either alone, whichever comes first", () => {
    fc.assert(
      fc.property(anyLine, anyLine, anyHead, (first, second, head) => {
        const flow = seriesFlow(first, second, head);
        expect(flow).toBeLessThanOrEqual(Math.min(gravityFlow(first, head), gravityFlow(second, head)));
        expect(flow).toBeGreaterThan(0);
        const used = gravityHead(first, flow) + gravityHead(second, flow);
        // Both heads are solved to 1e-12 of a flow; the rest is what a root between them leaves.
        expect(Math.abs(used / head - 1)).toBeLessThan(1e-6);
        expect(Math.abs(seriesFlow(second, first, head) / flow - 1)).toBeLessThan(1e-6);
      }),
      { numRuns: 200 },
    );
  });

  test("is none without head, uphill, or through a shut valve in either", () => {
    expect(seriesFlow(hose, hose, 0)).toBe(0);
    expect(seriesFlow(hose, hose, -1)).toBe(0);
    expect(seriesFlow({ ...hose, opening: 0 }, hose, 1)).toBe(0);
    expect(seriesFlow(hose, { ...hose, opening: 0 }, 1)).toBe(0);
  });
});
