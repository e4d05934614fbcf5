// Energy through the season: it closes, more of it never waters less, and a day says what its watering lacked.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BOUNDS, type Bound } from "../../src/network/bounds.ts";
import { WET_DAY } from "../../src/physics/sky-radiation.ts";
import type { SeasonAnswer } from "../../src/season/answer.ts";
import type { BatteryPart, SeasonInput, SunOnPump } from "../../src/season/input.ts";
import { drawdownOf, drawnWithin } from "../../src/season/run-pump.ts";
import type { Source } from "../../src/season/sources.ts";
import { elapsedAt, fullTimeBy } from "../../src/season/sun-run.ts";
import { calendarDate, dayNumber } from "../../src/units/calendar.ts";
import { DAY, HOUR } from "../../src/units/constants.ts";
import { tries } from "../tries.ts";
import {
  battery,
  bed,
  carry,
  crop,
  delivery,
  inputOf,
  LITRE,
  MM,
  ran,
  recordOf,
  roof,
  seattle,
  sunny,
  tank,
} from "./made.ts";

const FIRST = dayNumber(2021, 1, 1);
const dry = (days = 365) => recordOf(new Float64Array(days), FIRST);
const months = (value: number): readonly number[] => Array(12).fill(value);
const share = fc.double({ min: 0, max: 1, noNaN: true });
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const twoYears = (() => {
  const whole = seattle();
  const cut = (series: Float64Array | null) => series?.slice(0, 731) ?? null;
  return { ...whole, rain: whole.rain.slice(0, 731), highest: cut(whole.highest), lowest: cut(whole.lowest) };
})();

/** A bed that is due so many litres every day. */
const thirsty = (litres: number, more: Partial<SeasonInput["beds"][number]> = {}) =>
  bed({
    wateredBy: ["pump"],
    crops: [crop({ planted: "01-01", stages: [100, 100, 100, 66] })],
    rule: { kind: "fixed", volume: litres * LITRE, every: DAY },
    ...more,
  });

/** One pump on a full tank that never empties, and one bed. */
const pumping = (more: Partial<SeasonInput> = {}): SeasonInput =>
  inputOf({
    tanks: [tank(1000, { startShare: 1 })],
    deliveries: [delivery()],
    beds: [thirsty(100)],
    ...more,
  });

const given = (answer: SeasonAnswer, place = 0): number =>
  answer.beds[place]?.given.reduce((sum, amount) => sum + amount, 0) ?? 0;
const lackOn = (answer: SeasonAnswer, day: number, place = 0): Bound | null =>
  BOUNDS[(answer.beds[place]?.lacked[day] ?? 0) - 1] ?? null;

const cells: fc.Arbitrary<BatteryPart> = fc
  .record({
    usable: between(1e4, 1e6),
    efficiency: between(0.5, 1),
    startShare: share,
    charged: fc.constantFrom("mains" as const, "in_place" as const, "carried" as const, "swapped" as const),
    carriedEvery: fc.integer({ min: 1, max: 14 }),
    dryCharge: fc.array(between(0, 2e5), { minLength: 12, maxLength: 12 }),
    wetCharge: fc.array(between(0, 1e5), { minLength: 12, maxLength: 12 }),
    selfDischarge: between(0, 0.02),
    leastChargingTemperature: fc.constantFrom(null, 273.15, 280),
  })
  .map((part) => battery(part));

describe("a battery's energy", () => {
  const rigs = fc
    .record({ one: cells, two: cells, litres: between(20, 400), slope: share })
    .map(({ one, two, litres, slope }) =>
      inputOf({
        roofs: [roof({ footprint: 20 })],
        tanks: [tank(2, { startShare: 0.5 }), tank(3, { id: "other", startShare: 1 })],
        deliveries: [
          delivery({
            battery: "one",
            depths: [0, 0.5, 1],
            flows: [1e-4 * (1 - slope / 2), 1e-4, 1.2e-4],
            powers: [60, 55, 50],
          }),
          delivery({ id: "second", from: "other", battery: "two" }),
          delivery({ id: "third", battery: "one", pump: "second" }),
        ],
        batteries: [
          { ...one, id: "one" },
          { ...two, id: "two" },
        ],
        beds: [
          thirsty(litres, { wateredBy: ["pump", "second"] }),
          bed({ id: "soil", wateredBy: ["second", "third"], priority: 2, area: 30 }),
        ],
      }),
    );

  test("in is out, loss and change to 1e-9 of what went through, measured from the days", () => {
    fc.assert(
      fc.property(rigs, (plan) => {
        const answer = ran(plan, twoYears);
        expect(answer.totals.energyBalanceError).toBeLessThan(1e-9);
        let used = 0;
        for (const part of plan.batteries) {
          const days = answer.batteries.find(({ id }) => id === part.id);
          if (!days) throw new Error("a battery has no answer");
          const both = part.charged === "swapped" ? 2 : 1;
          let before = part.usable * part.startShare * both;
          const through = days.entered.reduce((sum, energy) => sum + energy, before);
          for (let day = 0; day < days.stored.length; day++) {
            const [entered, drawn, lost] = [days.entered[day], days.used[day], days.lost[day]] as number[];
            const after = days.stored[day] as number;
            expect(
              Math.abs((entered as number) - (drawn as number) - (lost as number) - (after - before)),
            ).toBeLessThanOrEqual(1e-9 * through);
            expect(after).toBeGreaterThanOrEqual(0);
            expect(after).toBeLessThanOrEqual(part.usable * both * (1 + 1e-12));
            expect(lost).toBeGreaterThanOrEqual(0);
            before = after;
          }
          used += days.seasonUsed;
        }
        const pumped = answer.deliveries.reduce((sum, { seasonEnergy }) => sum + seasonEnergy, 0);
        expect(Math.abs(pumped - used)).toBeLessThanOrEqual(1e-9 * Math.max(1, pumped));
      }),
      { numRuns: tries(40) },
    );
  });

  test("[G11] of permuted parts is the same to the last bit", () => {
    fc.assert(
      fc.property(rigs, (plan) => {
        const turned = {
          ...plan,
          tanks: [...plan.tanks].reverse(),
          deliveries: [...plan.deliveries].reverse(),
          batteries: [...plan.batteries].reverse(),
          beds: [...plan.beds].reverse(),
        };
        expect(ran(turned, twoYears)).toEqual(ran(plan, twoYears));
      }),
      { numRuns: tries(15) },
    );
  });
});

describe("with one delivery, one tank and a fixed demand", () => {
  const base = fc.record({
    cell: cells,
    volume: between(0.2, 3),
    litres: between(20, 300),
    slope: between(0, 0.3),
  });
  type Base = {
    readonly cell: BatteryPart;
    readonly volume: number;
    readonly litres: number;
    readonly slope: number;
  };
  const met = ({ volume, litres, slope }: Base, cell: BatteryPart): number =>
    given(
      ran(
        inputOf({
          roofs: [roof({ footprint: 40 })],
          tanks: [tank(volume, { startShare: 1 })],
          deliveries: [
            delivery({
              battery: "battery",
              depths: [0, 1],
              flows: [1e-4 * (1 - slope), 1e-4],
              powers: [50, 50],
            }),
          ],
          batteries: [cell],
          beds: [thirsty(litres)],
        }),
        twoYears,
      ),
    );
  const never = (better: (cell: BatteryPart, by: number) => BatteryPart) =>
    fc.assert(
      fc.property(base, between(1, 3), (rig, by) => {
        const before = met(rig, rig.cell);
        expect(met(rig, better(rig.cell, by))).toBeGreaterThanOrEqual(before * (1 - 1e-9) - 1e-12);
      }),
      { numRuns: tries(40) },
    );
  const times = (values: readonly number[], by: number) => values.map((value) => value * by);

  test("more panel never meets less", () => {
    never((cell, by) => ({
      ...cell,
      dryCharge: times(cell.dryCharge, by),
      wetCharge: times(cell.wetCharge, by),
    }));
  });

  test("a battery that holds more never meets less", () => {
    never((cell, by) => ({ ...cell, usable: cell.usable * by }));
  });

  test("one that gives more of it back, or loses less by itself, never meets less", () => {
    never((cell, by) => ({ ...cell, efficiency: Math.min(1, cell.efficiency * by) }));
    never((cell, by) => ({ ...cell, selfDischarge: cell.selfDischarge / by }));
  });

  test("one that is charged where it stands never meets less than one carried to the same panel", () => {
    never((cell) => (cell.charged === "carried" ? { ...cell, charged: "in_place" } : cell));
  });
});

describe("the panel's days", () => {
  // Rain on every third day; each dry day brings 3 kJ, each wet one 1 kJ, all of it drawn again.
  const rain = Float64Array.from({ length: 365 }, (_, day) => (day % 3 === 0 ? WET_DAY : 0));
  const rainy = recordOf(rain, FIRST);
  const cell = (more: Partial<BatteryPart> = {}) =>
    battery({
      usable: 1e5,
      efficiency: 1,
      startShare: 0,
      charged: "in_place",
      dryCharge: months(3000),
      wetCharge: months(1000),
      ...more,
    });
  const daysOf = (part: BatteryPart, record = rainy) =>
    ran(pumping({ deliveries: [delivery({ battery: "battery" })], batteries: [part], beds: [] }), record)
      .batteries[0] as SeasonAnswer["batteries"][number];

  test("are darker with rain: 1 mm makes a wet day, a hair less does not", () => {
    expect([...daysOf(cell()).entered.slice(0, 4)]).toEqual([1000, 3000, 3000, 1000]);
    const hair = recordOf(
      rain.map((depth) => depth * 0.999),
      FIRST,
    );
    expect([...daysOf(cell(), hair).entered.slice(0, 4)]).toEqual([3000, 3000, 3000, 3000]);
  });

  test("go by the month", () => {
    const sunny = daysOf(cell({ dryCharge: Array.from({ length: 12 }, (_, month) => month * 10) }), dry());
    expect(sunny.entered[180]).toBe((calendarDate(FIRST + 180).month - 1) * 10);
  });

  test("fill it to the brim and no further: what it cannot take never leaves the panel", () => {
    const days = daysOf(cell({ usable: 4000, efficiency: 0.8 }), dry());
    expect([...days.stored.slice(0, 3)]).toEqual([2400, 4000, 4000]);
    expect(days.entered[1]).toBeCloseTo(1600 / 0.8, 9);
    expect(days.entered[2]).toBe(0);
    expect(days.lost[1]).toBeCloseTo(400, 9);
  });

  test("pass a carried one by, but for the one on which it stands at the panel", () => {
    const { entered } = daysOf(cell({ charged: "carried", carriedEvery: 4 }), dry());
    expect([...entered.slice(0, 9)]).toEqual([0, 0, 0, 3000, 0, 0, 0, 3000, 0]);
  });

  test("fill the second of two, and in the evening the fuller goes to the pump", () => {
    const plan = pumping({
      deliveries: [delivery({ battery: "battery" })],
      batteries: [cell({ charged: "swapped", startShare: 1, usable: 5000 })],
      // 40 W for 100 s is 4 kJ a day; the sun brings 3 kJ.
      beds: [thirsty(20)],
    });
    const [days] = ran(plan, dry()).batteries;
    expect([...(days?.stored.slice(0, 3) ?? [])]).toEqual([6000, 5000, 4000]);
    expect(days?.used[0]).toBe(4000);
  });

  test("do not charge one in the cold that cold would ruin", () => {
    const cold = recordOf(new Float64Array(365), FIRST, {
      highest: new Float64Array(365).fill(274),
      lowest: Float64Array.from({ length: 365 }, (_, day) => (day === 1 ? 271 : 273)),
    });
    const { entered } = daysOf(cell({ leastChargingTemperature: 273.15 }), cold);
    expect([...entered.slice(0, 3)]).toEqual([3000, 0, 3000]);
    expect(daysOf(cell(), cold).entered[1]).toBe(3000);
  });

  test("have nothing to do with one charged from the house, which is full every evening", () => {
    const plan = pumping({
      deliveries: [delivery({ battery: "battery" })],
      batteries: [cell({ charged: "mains", usable: 5000, efficiency: 0.5 })],
      beds: [thirsty(20)],
    });
    const [days] = ran(plan, rainy).batteries;
    expect(new Set(days?.stored)).toEqual(new Set([5000]));
    expect(days?.entered[1]).toBe(8000);
  });

  test("one left alone loses by itself the same share of what is in it every day", () => {
    const { stored, lost } = daysOf(
      cell({ dryCharge: months(0), wetCharge: months(0), startShare: 1, selfDischarge: 0.01 }),
    );
    expect(stored[29]).toBeCloseTo(1e5 * 0.99 ** 30, 6);
    expect(lost[0]).toBeCloseTo(1000, 9);
  });
});

describe("a watering that the battery cannot lift", () => {
  // 100 L at 0.2 L/s and 40 W take 20 kJ; the battery holds 5 kJ: 25 L.
  const plan = pumping({
    deliveries: [delivery({ battery: "battery" })],
    batteries: [battery({ usable: 5000 })],
    carries: [carry()],
    beds: [thirsty(100, { wateredBy: ["pump", "cans"] })],
  });

  test("falls back to the next way in the bed's list, and the day says that power was lacking", () => {
    const answer = ran(plan, dry());
    const [days] = answer.beds;
    expect(days?.given[10]).toBeCloseTo(100 * LITRE, 12);
    expect(days?.lastBy[10]).toBe(2);
    expect(days?.unfilled[10]).toBe(0);
    expect(lackOn(answer, 10)).toBe("energy");
    expect(days?.daysHelped).toBe(365);
    expect(days?.lackedDays[BOUNDS.indexOf("energy")]).toBe(365);
    expect(answer.batteries[0]?.daysEmpty).toBe(365);
    expect(answer.totals.binding).toBeNull();
    expect(answer.deliveries[0]?.seasonVolume).toBeCloseTo(365 * 25 * LITRE, 9);
  });

  test("stays short where there is no other, and power is what gives out first", () => {
    const answer = ran({ ...plan, beds: [thirsty(100)] }, dry());
    expect(answer.beds[0]?.given[10]).toBeCloseTo(25 * LITRE, 9);
    expect(answer.beds[0]?.unfilled[10]).toBe(1);
    expect(lackOn(answer, 10)).toBe("energy");
    expect(answer.totals.binding).toBe("energy");
    expect(answer.beds[0]?.binding).toBe("energy");
  });

  test("says nothing of power on days on which it could", () => {
    const answer = ran({ ...plan, batteries: [battery({ usable: 30_000 })] }, dry());
    expect(lackOn(answer, 10)).toBeNull();
    expect(answer.beds[0]?.lastBy[10]).toBe(1);
    expect(answer.beds[0]?.daysHelped).toBe(0);
  });
});

describe("a pump that hangs on a panel alone", () => {
  /** Runs at so large a share of full flow for so many hours. */
  const sunOf = (dryShare: number, wetShare: number, hours: number): SunOnPump => {
    const running = (part: number) => Array.from({ length: hours + 1 }, (_, hour) => hour * part * HOUR);
    return {
      ...sunny([], running(1)),
      dry: Array(12).fill(running(dryShare)),
      wet: Array(12).fill(running(wetShare)),
    };
  };
  const onPanel = (sun: SunOnPump, litres = 100, more: Partial<SeasonInput> = {}) =>
    pumping({ deliveries: [delivery({ sun })], beds: [thirsty(litres)], ...more });

  test("takes as much longer as the sun is weaker, and needs no battery", () => {
    const full = ran(onPanel(sunOf(1, 1, 6)), dry());
    const half = ran(onPanel(sunOf(0.5, 0.5, 6)), dry());
    expect(full.deliveries[0]?.seasonTime).toBeCloseTo(365 * 500, 6);
    expect(half.deliveries[0]?.seasonTime).toBeCloseTo(365 * 1000, 6);
    expect(given(half)).toBeCloseTo(given(full), 9);
    expect(half.batteries).toEqual([]);
  });

  test("gives what the sun that is left of the day lifts, and the day says that power was lacking", () => {
    // A tenth of full flow for two hours is 720 s in full: 144 L of 200.
    const answer = ran(onPanel(sunOf(0.1, 0.1, 2), 200), dry());
    expect(answer.beds[0]?.given[10]).toBeCloseTo(144 * LITRE, 9);
    expect(lackOn(answer, 10)).toBe("energy");
    // 14 mm a day is still more than its crops drink: it is never short, whatever its rule wants.
    expect(answer.beds[0]?.ruleKept).toBeLessThan(1);
    expect(answer.totals.binding).toBeNull();
  });

  test("gives nothing at night, and little on a wet day", () => {
    const night = ran(onPanel(sunOf(1, 1, 0)), dry());
    expect(given(night)).toBe(0);
    expect(lackOn(night, 10)).toBe("daylight");
    const rain = recordOf(
      Float64Array.from({ length: 365 }, (_, day) => (day === 10 ? 5 * MM : 0)),
      FIRST,
    );
    const wet = ran(onPanel(sunOf(1, 0.01, 2)), rain);
    expect(wet.beds[0]?.given[9]).toBeCloseTo(100 * LITRE, 9);
    expect(wet.beds[0]?.given[10]).toBeCloseTo(0.01 * 7200 * 0.2 * LITRE, 9);
  });

  test("goes on where it stopped when a second bed wants water", () => {
    // An hour in full in two: 100 L take 500 s in full and so 1000 s; the second bed has what is left.
    const answer = ran(
      onPanel(sunOf(0.5, 0.5, 2), 600, { beds: [thirsty(600), thirsty(600, { id: "last", priority: 2 })] }),
      dry(),
    );
    expect(answer.beds.map((one) => one.given[3])).toEqual([
      expect.closeTo(600 * LITRE, 9),
      expect.closeTo(120 * LITRE, 9),
    ]);
    expect(answer.deliveries[0]?.seasonTime).toBeCloseTo(365 * 2 * HOUR, 4);
  });

  test("counts the hand that holds the hose by the clock, not by full flow", () => {
    const answer = ran(onPanel(sunOf(0.5, 0.5, 6), 100, { minutesPerDay: 500 }), dry());
    expect(answer.beds[0]?.given[10]).toBeCloseTo(50 * LITRE, 9);
    expect(lackOn(answer, 10)).toBe("hands");
  });

  test("is when it has run so long and how long it has run by then: each turned round the other", () => {
    fc.assert(
      fc.property(fc.array(between(0.01, 1.2), { minLength: 1, maxLength: 12 }), share, (shares, part) => {
        const hours = [0];
        for (const one of shares) hours.push((hours.at(-1) as number) + one * HOUR);
        const elapsed = part * shares.length * HOUR;
        expect(elapsedAt(hours, fullTimeBy(hours, elapsed))).toBeCloseTo(elapsed, 6);
      }),
    );
    expect(fullTimeBy([0, 1800], 5 * HOUR)).toBe(1800);
    expect(elapsedAt([0, 0, 1800], 900)).toBe(1.5 * HOUR);
  });

  test("is not set up by someone who has no time for that, though nobody stands beside it", () => {
    const within = (seconds: number) =>
      given(
        ran(
          pumping({
            deliveries: [delivery({ sun: sunOf(1, 1, 6), setUp: 300, attended: false })],
            beds: [thirsty(100)],
            minutesPerDay: seconds,
          }),
          dry(),
        ),
      );
    expect(within(299)).toBe(0);
    expect(within(300)).toBeGreaterThan(0);
  });

  test("with more sun never gives less", () => {
    fc.assert(
      fc.property(share, share, fc.integer({ min: 0, max: 8 }), between(50, 2000), (a, b, hours, litres) => {
        const of = (part: number) => given(ran(onPanel(sunOf(part, part / 3, hours), litres), twoYears));
        expect(of(Math.max(a, b))).toBeGreaterThanOrEqual(of(Math.min(a, b)) * (1 - 1e-9));
      }),
      { numRuns: tries(25) },
    );
  });
});

describe("a drawdown", () => {
  const source = (flows: readonly number[], powers: readonly number[]): Source =>
    ({
      volumes: Float64Array.from([0, 0.5, 1.5]),
      flows: Float64Array.from(flows),
      powers: Float64Array.from(powers),
    }) as unknown as Source;
  const rows = fc.tuple(between(1e-5, 1e-3), between(1e-5, 1e-3), between(1e-5, 1e-3));

  test("takes the time and charge of ten thousand thin slices, over the falling level", () => {
    fc.assert(
      fc.property(rows, rows, between(0.1, 1.9), share, (flows, powers, held, part) => {
        const pump = source(
          flows,
          powers.map((power) => power * 1e5),
        );
        const volume = held * part;
        const slices = 10_000;
        const at = (row: Float64Array, place: number) => {
          const [low, middle, high] = row as unknown as [number, number, number];
          if (place <= 0.5) return low + ((middle - low) * Math.max(0, place)) / 0.5;
          return middle + (high - middle) * Math.min(1, place - 0.5);
        };
        let [time, energy] = [0, 0];
        for (let slice = 0; slice < slices; slice++) {
          const place = held - (volume * (slice + 0.5)) / slices;
          const step = volume / slices / at(pump.flows, place);
          time += step;
          energy += step * at(pump.powers, place);
        }
        const drawdown = drawdownOf(pump, held, volume);
        expect(Math.abs(drawdown.time - time)).toBeLessThanOrEqual(1e-6 * time + 1e-9);
        expect(Math.abs(drawdown.energy - energy)).toBeLessThanOrEqual(1e-6 * energy + 1e-9);
      }),
      { numRuns: tries(30) },
    );
  });

  test("in two parts takes what it takes in one, and what fits a charge uses that charge", () => {
    fc.assert(
      fc.property(rows, rows, share, share, (flows, powers, part, charge) => {
        const pump = source(
          flows,
          powers.map((power) => power * 1e5),
        );
        const read = (held: number, volume: number) => {
          return drawdownOf(pump, held, volume);
        };
        const whole = read(1.5, 1.2);
        const [first, second] = [read(1.5, 1.2 * part), read(1.5 - 1.2 * part, 1.2 * (1 - part))];
        expect(first.time + second.time).toBeCloseTo(whole.time, 5);
        expect((first.energy + second.energy) / whole.energy).toBeCloseTo(1, 9);
        const budget = { time: Infinity, energy: whole.energy * charge };
        const drawn = drawnWithin(pump, 1.5, 1.2, budget);
        expect(read(1.5, drawn).energy / whole.energy).toBeCloseTo(charge, 9);
      }),
    );
  });

  test("down to where nothing comes any more never ends", () => {
    expect(drawdownOf(source([0, 1e-4, 2e-4], [10, 10, 10]), 1, 1).time).toBe(Infinity);
  });
});
