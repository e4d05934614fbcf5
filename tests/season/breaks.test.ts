// What is noted broken waters nothing and fills nothing from that day on, until it is noted mended.

import { describe, expect, test } from "vitest";
import { networkOf } from "../../src/network/network.ts";
import { withBreaks } from "../../src/season/breaks.ts";
import { fromToday } from "../../src/season/from-today.ts";
import type { PartEvent, SeasonInput } from "../../src/season/input.ts";
import { type WeekGiven, weekPlan } from "../../src/season/week-plan.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { happening, morning } from "./carried.ts";
import {
  battery,
  bed,
  carry,
  crop,
  delivery,
  inputOf,
  line,
  MM,
  recordOf,
  roof,
  steadyEto,
  tank,
} from "./made.ts";

const YEAR = dayNumber(2021, 1, 1);
const TODAY = dayNumber(2021, 6, 15);
const dry = () => recordOf(new Float64Array(365), YEAR, { madeUp: false });

/** A big tank above a tub that a hose fills; the bed is watered from the tub by a pump, or with cans. */
const plan = (more: Partial<SeasonInput> = {}): SeasonInput =>
  inputOf({
    start: "05-01",
    end: "08-31",
    eto: steadyEto(4 * MM),
    tanks: [tank(5, { id: "big", floor: 2 }), tank(0.2, { id: "tub" })],
    lines: [line({ id: "hose", from: "big", startHeight: 2, endHeight: 0.9, shutLevel: 0.95 })],
    deliveries: [delivery({ id: "pump", from: "tub" })],
    carries: [carry({ id: "cans", from: "tub" })],
    beds: [
      bed({
        wateredBy: ["pump"],
        crops: [crop({ planted: "05-01", stages: [0, 0, 120, 0], kcMiddle: 1, rootStart: 0.3 })],
      }),
    ],
    ...more,
  });

const given = (more: Partial<WeekGiven> = {}): WeekGiven => ({
  today: TODAY,
  days: 7,
  drying: "usual",
  levels: { big: 1, tub: 1 },
  charges: {},
  lastSoaked: { bed: TODAY - 5 },
  ...more,
});
const broke = (where: string, date = TODAY): PartEvent => ({ what: "broke", where, date });
const mended = (where: string, date = TODAY): PartEvent => ({ what: "mended", where, date });

function weekOf(breaks: readonly PartEvent[], more: Partial<SeasonInput> = {}, now: Partial<WeekGiven> = {}) {
  const answer = weekPlan(withBreaks(plan(more), breaks), dry(), given(now));
  if ("failed" in answer) throw new Error(answer.failed);
  const volume = answer.lines.reduce((sum, one) => sum + one.volume, 0);
  return { ...answer, volume, why: [...answer.lines, ...answer.refused].map(({ why }) => why) };
}

describe("a hose that broke", () => {
  test("brings nothing more: the week has what is in the tub, and says that the line cannot run", () => {
    const { volume, why, broken } = weekOf([broke("hose")]);
    expect(weekOf([]).volume).toBeGreaterThan(0.4);
    expect(volume).toBeLessThanOrEqual(0.2 + 1e-9);
    expect(volume).toBeGreaterThan(0.1);
    expect(why).toContain("line");
    expect(broken).toEqual(["hose"]);
  });

  test("counts from its day on, and no more once it is mended", () => {
    expect(weekOf([broke("hose", TODAY - 4), mended("hose", TODAY - 1)]).volume).toBe(weekOf([]).volume);
    expect(weekOf([broke("hose", TODAY + 1)]).volume).toBe(weekOf([]).volume);
    expect(weekOf([broke("hose", TODAY - 40)], {}, { levels: { big: 1, tub: 1 } }).broken).toEqual(["hose"]);
  });

  test("leaves the state of the days between as they were: what was drawn before was filled up, what was after was not", () => {
    const at = (breaks: readonly PartEvent[]) =>
      morning(withBreaks(plan(), breaks), dry(), TODAY, [
        happening("dipped", "big", TODAY - 6, 1, { side: "before" }),
        happening("dipped", "tub", TODAY - 6, 1, { side: "before" }),
        happening("gave", "bed", TODAY - 5, 0.1, { by: "pump" }),
        happening("gave", "bed", TODAY - 2, 0.1, { by: "pump" }),
      ]).tanks["tub"] as number;
    const whole = at([]);
    expect(whole).toBeGreaterThan(0.18);
    expect(at([broke("hose", TODAY - 6)])).toBeCloseTo(0, 9);
    expect(at([broke("hose", TODAY - 4)])).toBeCloseTo(whole - 0.1, 2);
    expect(at([broke("hose", TODAY - 4), mended("hose", TODAY - 1)])).toBeCloseTo(whole, 3);
  });

  test("makes what lies behind it no water to last on", () => {
    const heldNow = (breaks: readonly PartEvent[]) => {
      const answer = fromToday(withBreaks(plan(), breaks), dry(), given());
      if ("failed" in answer) throw new Error(answer.failed);
      return answer.now;
    };
    expect(heldNow([])).toBeGreaterThan(5);
    expect(heldNow([broke("hose")])).toBeLessThan(0.21);
  });
});

describe("other parts that broke", () => {
  test("a pump, its tank or what powers it waters nothing; another way of the bed does", () => {
    for (const part of ["pump", "tub"]) expect(weekOf([broke(part)]).lines).toEqual([]);
    const both = { beds: [bed({ ...plan().beds[0], wateredBy: ["pump", "cans"] })] };
    const { lines } = weekOf([broke("pump")], both);
    expect(lines.length).toBeGreaterThan(0);
    expect(new Set(lines.map(({ by }) => by))).toEqual(new Set(["cans"]));
  });

  /** So much rain each day from eight days before today on. */
  const wet = () =>
    recordOf(
      Float64Array.from({ length: 365 }, (_, day) => (YEAR + day >= TODAY - 8 ? 5 * MM : 0)),
      YEAR,
      { madeUp: false },
    );

  test("a roof fills its tank until the day on which it broke, and again once mended", () => {
    const parts = { roofs: [roof({ drainsTo: "big" })], beds: [] };
    const at = (breaks: readonly PartEvent[]) =>
      morning(withBreaks(plan(parts), breaks), wet(), TODAY, [
        happening("dipped", "big", TODAY - 6, 0.2, { side: "before" }),
        happening("dipped", "tub", TODAY - 6, 1, { side: "before" }),
      ]).tanks["big"] as number;
    const [whole, none] = [at([]), at([broke("roof", TODAY - 20)])];
    expect(none).toBeCloseTo(1, 9);
    expect(whole - none).toBeGreaterThan(1);
    // Six days of the same rain, of which it caught three.
    expect(at([broke("roof", TODAY - 3)])).toBeCloseTo((whole + none) / 2, 9);
    expect(at([broke("roof", TODAY - 20), mended("roof", TODAY - 3)])).toBeCloseTo((whole + none) / 2, 9);
  });

  /** A pump on a battery that brings a day's water from two panels, and nothing to begin with. */
  const powered = () => {
    const months = (joules: number) => Array(12).fill(joules);
    const charge = { dry: months(5_000), wet: months(5_000) };
    const parts = plan({
      tanks: [tank(5, { id: "tub" })],
      lines: [],
      deliveries: [delivery({ id: "pump", from: "tub", battery: "battery" })],
      batteries: [
        battery({
          charged: "in_place",
          startShare: 0,
          dryCharge: months(15_000),
          wetCharge: months(15_000),
          panels: { small: charge, large: { dry: months(10_000), wet: months(10_000) } },
        }),
      ],
    });
    const panels = ["small", "large"];
    const network = networkOf(
      [...parts.network.nodes, ...panels.map((id) => ({ id, role: "panel" as const }))],
      [
        ...parts.network.edges,
        ...panels.map((id) => ({ kind: "charges" as const, by: id, from: id, to: "battery", stopped: null })),
      ],
    );
    return { ...parts, network };
  };
  const pumped = (breaks: readonly PartEvent[]) => weekOf(breaks, powered(), { charges: { battery: 0 } });

  test("a battery drives its pump no more", () => {
    expect(pumped([]).volume).toBeGreaterThan(0.25);
    expect(pumped([broke("battery")])).toMatchObject({ lines: [], broken: ["battery"] });
  });

  test("of two panels the one that works still charges, and by what it brings itself", () => {
    const [both, none] = [pumped([]), pumped([broke("small"), broke("large")])];
    expect(none.volume).toBe(0);
    expect(none.why).toContain("energy");
    for (const [gone, share] of [
      ["small", 2 / 3],
      ["large", 1 / 3],
    ] as const)
      expect(pumped([broke(gone)]).volume / both.volume).toBeCloseTo(share, 1);
  });

  test("what is noted broken stands in no answer: how long it lasts is run without it too", () => {
    const emptyOf = (breaks: readonly PartEvent[]) => {
      const answer = fromToday(
        withBreaks(plan({ roofs: [roof({ drainsTo: "big" })] }), breaks),
        wet(),
        given({ levels: { big: 0.05, tub: 1 } }),
      );
      if ("failed" in answer || answer.kind !== "usual_and_dry") throw new Error("no usual run");
      return answer.dry.water.at(-1) as number;
    };
    expect(emptyOf([broke("roof")])).toBeLessThanOrEqual(emptyOf([]));
    expect(emptyOf([broke("battery")])).toBe(emptyOf([]));
  });

  test("an unknown part or one that carries nothing changes nothing", () => {
    expect(weekOf([broke("gone")]).lines).toEqual(weekOf([]).lines);
  });
});
