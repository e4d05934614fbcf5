// The gravity step on its own: against closed forms, against half the steps, and never uphill.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { gravityFlow } from "../../src/physics/gravity-line.ts";
import { runGravity, STEPPING } from "../../src/season/gravity.ts";
import type { LinePart, TankPart, TeePart } from "../../src/season/input.ts";
import { readFlows } from "../../src/season/pipe-flow.ts";
import type { PipeLine } from "../../src/season/pipe-line.ts";
import { type Pipes, readyPipes } from "../../src/season/pipes.ts";
import { levelOf, readyTanks, type Tanks } from "../../src/season/tanks.ts";
import { DAY } from "../../src/units/constants.ts";

const WATER = 1.1386e-6;

function tank(
  id: string,
  area: number,
  height: number,
  level: number,
  more: Partial<TankPart> = {},
): TankPart {
  return {
    id,
    vessel: { form: "upright", height, volume: area * height },
    floor: 0,
    outlet: 0,
    openArea: 0,
    overflowsTo: null,
    startShare: level / height,
    leak: 0,
    ...more,
  };
}

function line(id: string, from: string, to: string | null, more: Partial<LinePart> = {}): LinePart {
  return {
    id,
    from,
    to,
    length: 15,
    bore: 0.0159,
    roughness: 1.5e-6,
    fittingsK: 1.5,
    opening: null,
    valveBand: 0,
    shutLevel: null,
    startHeight: 0,
    endHeight: 0,
    checkValve: false,
    blocked: null,
    viscosity: WATER,
    ...more,
  };
}

function network(tanks: readonly TankPart[], lines: readonly LinePart[], tees: readonly TeePart[] = []) {
  const ready = readyTanks(tanks, []);
  return { tanks: ready, pipes: readyPipes(lines, tees, ready, []) };
}

function readAll({ tanks, pipes }: ReturnType<typeof network>): void {
  for (const group of pipes.groups) readFlows(pipes, group, tanks);
}

const total = (tanks: Tanks) => tanks.volume.reduce((sum, volume) => sum + volume, 0);
const lineOf = (pipes: Pipes, i: number) => pipes.lines[i] as PipeLine;
const movedOf = (pipes: Pipes, i: number) => lineOf(pipes, i).moved;

describe("two tanks joined below water", () => {
  // hydraulics reference 4.3 (computed): two 1 m2 tanks, 15 m of 15.9 mm hose, 1.0 to 0.01 m in 6181 s with Churchill.
  const pair = () => network([tank("a", 1, 2, 1.5), tank("b", 1, 2, 0.5)], [line("l", "a", "b")]);

  test("come from 1 m to 10 mm apart in the published time to 3 %, and move 495 L", () => {
    const apart = (time: number) => {
      const { tanks, pipes } = pair();
      runGravity(pipes, tanks, time);
      return levelOf(tanks, 0) - levelOf(tanks, 1);
    };
    expect(apart(6181 * 0.97)).toBeGreaterThan(0.01);
    expect(apart(6181 * 1.03)).toBeLessThan(0.01);
    const { tanks, pipes } = pair();
    runGravity(pipes, tanks, 6181);
    expect(movedOf(pipes, 0)).toBeGreaterThan(0.495 * 0.997);
    expect(movedOf(pipes, 0)).toBeLessThan(0.495 * 1.003);
  });

  test("stand level to 1 mm after a day, whichever was fuller, and a check valve keeps the lower one low", () => {
    const { tanks, pipes } = pair();
    runGravity(pipes, tanks);
    expect(Math.abs(levelOf(tanks, 0) - levelOf(tanks, 1))).toBeLessThan(0.001);
    const back = network([tank("a", 1, 2, 0.5), tank("b", 1, 2, 1.5)], [line("l", "a", "b")]);
    runGravity(back.pipes, back.tanks);
    expect(Math.abs(levelOf(back.tanks, 0) - levelOf(back.tanks, 1))).toBeLessThan(0.001);
    expect(movedOf(back.pipes, 0)).toBeLessThan(-0.49);
    const checked = network(
      [tank("a", 1, 2, 0.5), tank("b", 1, 2, 1.5)],
      [line("l", "a", "b", { checkValve: true })],
    );
    runGravity(checked.pipes, checked.tanks);
    expect(movedOf(checked.pipes, 0)).toBe(0);
  });

  test("where an opening governs, reach 1 mm in the closed-form time within 3 %", () => {
    // t = 2 (sqrt h1 - sqrt h2) / (C (1/A1 + 1/A2)), C = opening sqrt(2 g); hydraulics reference 4.1, general rule.
    // A short wide line with its loss all in one fitting: K V2/2g is an opening of bore area over sqrt K.
    const bore = 0.05;
    const opening = (Math.PI * bore ** 2) / 4 / Math.sqrt(1e4);
    const c = opening * Math.sqrt(2 * 9.80665);
    const time = (2 * (Math.sqrt(0.6) - Math.sqrt(0.001))) / (c * (1 / 1.2 + 1 / 0.6));
    const apart = (after: number) => {
      const { tanks, pipes } = network(
        [tank("a", 1.2, 2, 1), tank("b", 0.6, 2, 0.4)],
        [line("l", "a", "b", { bore, length: 0.01, fittingsK: 1e4 })],
      );
      runGravity(pipes, tanks, after);
      return levelOf(tanks, 0) - levelOf(tanks, 1);
    };
    expect(apart(time * 0.97)).toBeGreaterThan(0.001);
    expect(apart(time * 1.03)).toBeLessThan(0.001);
  });
});

describe("a float valve", () => {
  // hydraulics reference 4.3 (computed): 100 L through 30 m of 15.9 mm and a 5 mm valve at a constant 0.30 m: 3786 s;
  // from a 1 m2 source that falls from 0.30 m: 4216 s.
  const opening = (0.62 * Math.PI * 0.005 ** 2) / 4;
  const drum = (sourceArea: number) =>
    network(
      [tank("source", sourceArea, 1, 0.3, { floor: 1 }), tank("tub", 0.2, 0.5, 0)],
      [line("l", "source", "tub", { length: 30, opening, shutLevel: 0.5, startHeight: 1, endHeight: 1 })],
    );

  test.each([
    [1e6, 3786],
    [1, 4216],
  ])("fills 100 L from a source of %d m2 in %d s to 3 %%", (area, time) => {
    const { tanks, pipes } = drum(area);
    runGravity(pipes, tanks, DAY);
    expect(movedOf(pipes, 0)).toBeCloseTo(0.1, 6);
    expect(lineOf(pipes, 0).doneAt).toBeGreaterThan(time * 0.97);
    expect(lineOf(pipes, 0).doneAt).toBeLessThan(time * 1.03);
  });

  test("never lets the level over the one at which it is shut, and closes over its band", () => {
    const { tanks, pipes } = network(
      [tank("source", 5, 1, 0.9, { floor: 1 }), tank("tub", 0.2, 0.5, 0.1)],
      [
        line("l", "source", "tub", {
          opening,
          shutLevel: 0.4,
          valveBand: 0.05,
          startHeight: 1,
          endHeight: 0.4,
        }),
      ],
    );
    runGravity(pipes, tanks);
    expect(levelOf(tanks, 1)).toBeLessThanOrEqual(0.4);
    expect(levelOf(tanks, 1)).toBeGreaterThan(0.399);
  });
});

describe("a slow refill", () => {
  const full = 0.5;
  const tubArea = 0.3;
  /** Level after a time of a float valve alone, in steps of a second: dh/dt = C (gap / band, at most 1) sqrt(2 g drop) / A. */
  const filledBy = (opening: number, band: number, time: number) => {
    let level = 0;
    for (let second = 0; second < time; second++)
      level +=
        (opening *
          Math.min(1, (full - level) / band) *
          Math.sqrt(2 * 9.80665 * (3 - Math.max(full, level)))) /
        tubArea;
    return level;
  };
  const bands = [0.01, 0.02, 0.03, 0.05, 0.0508, 0.07, 0.1];

  test.each(bands)(
    "runs on through the band of %d m over which its float closes, at every hour",
    (valveBand) => {
      for (const hours of [5, 8, 12, 15, 18, 23]) {
        const opening = (full * tubArea) / (hours * 3600) / Math.sqrt(2 * 9.80665 * 2.5);
        for (const time of [0.5, 0.9, 1, 1.1, 1.5].map((share) => Math.round(share * hours * 3600))) {
          // A hose so short and wide that the valve alone holds the water back.
          const { tanks, pipes } = network(
            [tank("high", 500, 1, 1, { floor: 2 }), tank("tub", tubArea, 0.6, 0)],
            [
              line("l", "high", "tub", {
                ...{ length: 0.01, bore: 0.1, fittingsK: 0, startHeight: 2, endHeight: full },
                ...{ opening, shutLevel: full, valveBand },
              }),
            ],
          );
          const before = total(tanks);
          runGravity(pipes, tanks, time);
          expect(levelOf(tanks, 1) / filledBy(opening, valveBand, time), `${hours} h, ${time} s`).toBeCloseTo(
            1,
            2,
          );
          expect(Math.abs(total(tanks) - before)).toBeLessThan(1e-9 * before);
        }
      }
    },
  );
});

describe("a tee", () => {
  const opening = (0.62 * Math.PI * 0.005 ** 2) / 4;
  const forked = (firstLevel: number) =>
    network(
      [tank("high", 10, 1, 1, { floor: 2 }), tank("one", 0.3, 0.5, firstLevel), tank("two", 0.3, 0.5, 0)],
      [
        line("a_trunk", "high", "tee", { startHeight: 2 }),
        line("b_one", "tee", "one", { opening, shutLevel: 0.4, endHeight: 0.4 }),
        line("c_two", "tee", "two", { opening, shutLevel: 0.4, endHeight: 0.4 }),
      ],
      [{ id: "tee", height: 0.5 }],
    );
  const flowsOf = (firstLevel: number) => {
    const { tanks, pipes } = forked(firstLevel);
    readAll({ tanks, pipes });
    return pipes.lines.map(({ flow }) => flow);
  };

  test("with one float shut gives the other line's flow alone to 0.1 %", () => {
    // Trunk and branch in a row: the same hose twice as long, with both lines' fittings.
    const alone = gravityFlow(
      { length: 30, bore: 0.0159, roughness: 1.5e-6, fittingsK: 3, opening, viscosity: WATER },
      3 - 0.4,
    );
    const [trunk, one, two] = flowsOf(0.4);
    expect(one).toBe(0);
    expect((two as number) / alone).toBeGreaterThan(0.999);
    expect((two as number) / alone).toBeLessThan(1.001);
    expect(trunk).toBeCloseTo(two as number, 12);
  });

  test("with both open gives each less than alone, and water balances there", () => {
    const [trunk, one, two] = flowsOf(0);
    const alone = flowsOf(0.4)[2] as number;
    expect((one as number) + (two as number)).toBeLessThan(2 * alone);
    expect((trunk as number) - (one as number) - (two as number)).toBeCloseTo(0, 15);
  });

  test("fills both tubs to their floats and loses no water", () => {
    const { tanks, pipes } = forked(0);
    const before = total(tanks);
    runGravity(pipes, tanks);
    expect(total(tanks)).toBeCloseTo(before, 12);
    expect(levelOf(tanks, 1)).toBeCloseTo(0.4, 3);
    expect(levelOf(tanks, 2)).toBeCloseTo(0.4, 3);
  });
});

/** Random tanks in a row or a loop, lines between them; levels and heights in a garden's range. */
const networks = fc
  .record({
    areas: fc.array(fc.double({ min: 0.1, max: 3, noNaN: true }), { minLength: 2, maxLength: 5 }),
    seeds: fc.infiniteStream(fc.double({ min: 0, max: 1, noNaN: true })),
  })
  .map(({ areas, seeds }) => {
    const next = () => seeds.next().value as number;
    const tanks = areas.map((area, index) =>
      tank(`t${index}`, area, 1, next(), {
        floor: next() * 2,
        vessel: { form: next() < 0.3 ? "lying" : "upright", height: 1, volume: area },
        outlet: next() * 0.1,
      }),
    );
    const lines = tanks.flatMap((from, index) => {
      const to = tanks[(index + 1) % tanks.length] as TankPart;
      if (next() < 0.2) return [];
      const valved = next() < 0.5;
      const end = to.floor + next() * (to.vessel.height * (valved ? 1 : 0.3));
      return [
        line(`l${index}`, from.id, to.id, {
          length: 1 + next() * 40,
          startHeight: from.floor + from.outlet,
          endHeight: end,
          opening: valved ? 1e-5 * (0.2 + next()) : null,
          shutLevel: valved ? 0.3 + next() * 0.6 : null,
          valveBand: valved && next() < 0.7 ? 0.05 : 0,
          checkValve: next() < 0.3,
        }),
      ];
    });
    return { tanks, lines };
  });

describe("random tanks and lines", () => {
  test("lose and make no water, and never go under what cannot be drawn", () => {
    fc.assert(
      fc.property(networks, ({ tanks, lines }) => {
        const made = network(tanks, lines);
        const before = Float64Array.from(made.tanks.volume);
        const sum = total(made.tanks);
        runGravity(made.pipes, made.tanks);
        expect(Math.abs(total(made.tanks) - sum)).toBeLessThan(1e-9 * sum + 1e-15);
        made.tanks.volume.forEach((volume, place) => {
          const floors = made.pipes.lines.flatMap(({ from, to, ends }) => [
            ...(from.place === place ? [ends.under] : []),
            ...(to?.place === place ? [ends.underBack] : []),
          ]);
          const drawable = Math.min(before[place] as number, ...floors);
          expect(volume).toBeGreaterThanOrEqual(drawable - 1e-12);
        });
      }),
      { numRuns: 300 },
    );
  });

  test("flow never runs uphill", () => {
    fc.assert(
      fc.property(networks, ({ tanks, lines }) => {
        const made = network(tanks, lines);
        readAll(made);
        for (const { flow, from, to } of made.pipes.lines) {
          if (flow === 0 || !to) continue;
          if (flow > 0) expect(from.surface).toBeGreaterThan(to.surface);
          else expect(to.surface).toBeGreaterThan(from.surface);
        }
      }),
      { numRuns: 300 },
    );
  });

  test("tanks that no line joins to others run to the last bit as if those were not there", () => {
    const renamed = ({ tanks, lines }: { tanks: readonly TankPart[]; lines: readonly LinePart[] }) => ({
      tanks: tanks.map((part) => ({ ...part, id: `u${part.id}` })),
      lines: lines.map((part) => ({ ...part, id: `u${part.id}`, from: `u${part.from}`, to: `u${part.to}` })),
    });
    fc.assert(
      fc.property(networks, networks.map(renamed), (first, second) => {
        const together = network([...first.tanks, ...second.tanks], [...first.lines, ...second.lines]);
        const alone = network(first.tanks, first.lines);
        runGravity(together.pipes, together.tanks);
        runGravity(alone.pipes, alone.tanks);
        alone.tanks.volume.forEach((volume, place) => {
          expect(together.tanks.volume[place]).toBe(volume);
        });
      }),
      { numRuns: 200 },
    );
  });

  test("half the steps move amounts by less than half a percent of what is moved", () => {
    const half = {
      first: STEPPING.first / 2,
      shortest: STEPPING.shortest / 2,
      growth: Math.sqrt(STEPPING.growth),
      change: STEPPING.change / 2,
    };
    fc.assert(
      fc.property(networks, ({ tanks, lines }) => {
        const [whole, halved] = [network(tanks, lines), network(tanks, lines)];
        runGravity(whole.pipes, whole.tanks);
        runGravity(halved.pipes, halved.tanks, DAY, half);
        const most = Math.max(...[0, ...halved.pipes.lines.map(({ moved }) => Math.abs(moved))]);
        whole.pipes.lines.forEach(({ moved }, i) => {
          expect(Math.abs(moved - movedOf(halved.pipes, i))).toBeLessThanOrEqual(0.005 * most + 1e-6);
        });
      }),
      { numRuns: 200 },
    );
  });
});
