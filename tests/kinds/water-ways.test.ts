// Lines, joints, humps and filters, from cards to numbers.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { buildGraph } from "../../src/graph/build.ts";
import { evaluate } from "../../src/graph/evaluate.ts";
import { twinId } from "../../src/graph/nodes.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { toSi } from "../../src/units/unit.ts";
import { cautionIds, type Givens, numberAt, sheetOf, workedOut } from "./made-up-sheets.ts";

const UPPER: Givens = { capacity: [1000, "gal"], water_height: [4, "ft"], ground_height: [4, "ft"] };
const TUB: Givens = { capacity: [50, "gal"], water_height: [24, "in"], outlet_height: [0, "in"] };

function twoTanks(line: Givens, upper: Givens = {}, measured: Givens = {}) {
  return sheetOf({
    upper: ["tank", { ...UPPER, ...upper }],
    tub: ["tank", TUB],
    feed: ["line", { from: "upper", to: "tub", ...line }, measured],
  });
}

/** What does not wait for the season. */
function light(worksheet: ReturnType<typeof sheetOf>, id: string): number {
  const results = evaluate(buildGraph(worksheet, CARD_KINDS), worksheet, {
    answers: new Map(),
    records: new Map(),
  });
  const result = results.get(id);
  if (result?.state !== "ready" || typeof result.value !== "number")
    throw new Error(`${id}: ${JSON.stringify(result)}`);
  return result.value;
}

describe("a refill", () => {
  test("a wider or a shorter hose never refills slower", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.3, max: 2, noNaN: true }),
        fc.double({ min: 1, max: 500, noNaN: true }),
        fc.double({ min: 1, max: 12, noNaN: true }),
        fc.double({ min: 1.01, max: 2, noNaN: true }),
        (bore, length, seat, more) => {
          const time = (inches: number, feet: number) =>
            light(
              twoTanks({ bore: [inches, "in"], length: [feet, "ft"], valve_bore: [seat, "mm"] }),
              "feed.refill_time",
            );
          const plain = time(bore, length);
          // The integral itself is good to about 1e-9 of the time.
          expect(time(bore * more, length)).toBeLessThanOrEqual(plain * (1 + 1e-8));
          expect(time(bore, length / more)).toBeLessThanOrEqual(plain * (1 + 1e-8));
        },
      ),
      { numRuns: 60 },
    );
  });

  test("a measured one teaches the opening: twice the drop then takes the time over the square root of 2", () => {
    // A pond for an upper tank, so that its water hardly falls; a short wide hose, so that the valve governs.
    const pond: Givens = {
      capacity: [1_000_000, "gal"],
      water_height: [4, "ft"],
      plan_area: [30_000, "ft2"],
    };
    const hose: Givens = { length: [5, "ft"], bore: [1.5, "in"], valve_bore: [3.2, "mm"] };
    const measured: Givens = { refill_time: [7, "h"] };
    const ground = (feet: number) => ({ ...pond, ground_height: [feet, "ft"] }) as Givens;
    const before = twoTanks(hose, ground(4), measured);
    const drop = light(before, "feed.head");
    expect(light(before, "feed.refill_time")).toBe(toSi(7, "h"));
    // The raised worksheet keeps the lesson in the place of the measured time.
    const kept: Givens = { opening: [light(before, "feed.opening"), "m2"] };
    const raised = twoTanks(hose, ground(4 + drop / toSi(1, "ft")), kept);
    expect(light(raised, "feed.head")).toBeCloseTo(2 * drop, 9);
    // 0.1 % for the little that the hose takes and the pond falls.
    expect(light(raised, "feed.refill_time") / (toSi(7, "h") / Math.SQRT2)).toBeCloseTo(1, 3);
  });

  test("a float set over the brim never shuts: said, and no failure", () => {
    const whole = workedOut(twoTanks({ shut_level: [30, "in"] }));
    for (const row of ["refill_time", "refill_end", "refill_after_watering"])
      expect(whole.results.get(`feed.${row}`)?.state, row).toBe("none");
    expect(whole.results.get("feed.refill_time")).toMatchObject({
      reason: "its float shuts higher than the lower tank's brim, so it runs over and never shuts",
    });
    expect(cautionIds(whole)).toContain("feed: float_over_brim");
    expect(cautionIds(workedOut(twoTanks({})))).not.toContain("feed: float_over_brim");
  });

  test("a kept opening stands for the seat, and over a refill timed as the tanks stand now", () => {
    const kept: Givens = { opening: [3, "mm2"] };
    expect(light(twoTanks({}, {}, kept), "feed.opening")).toBeCloseTo(3e-6, 15);
    const both = twoTanks({}, {}, { ...kept, refill_time: [2, "h"] });
    expect(light(both, "feed.opening")).toBeCloseTo(3e-6, 15);
    expect(light(both, "feed.flow")).toBe(light(twoTanks({}, {}, kept), "feed.flow"));
  });

  test("beside a measured refill or flow stands what the seat alone would give", () => {
    const plain = twoTanks({}, {});
    for (const [row, value] of [
      ["refill_time", [9, "h"]],
      ["flow", [0.1, "gpm"]],
    ] as const) {
      const timed = twoTanks({}, {}, { [row]: value });
      expect(light(timed, `feed.${row}`)).toBe(toSi(value[0], value[1]));
      expect(light(timed, twinId(`feed.${row}`))).toBe(light(plain, `feed.${row}`));
    }
  });

  test("the season uses what was learned", () => {
    const sheet = (measured: Givens) =>
      sheetOf({
        upper: ["tank", { ...UPPER, start_share: [100, "%"] }],
        tub: ["tank", { ...TUB, start_share: [0, "%"] }],
        feed: ["line", { from: "upper", to: "tub" }, measured],
        cans: ["carry", { from: "tub" }],
        bed_one: ["bed", { watered_by: ["cans"] }],
      });
    const quick = workedOut(sheet({}));
    const slow = workedOut(sheet({ refill_time: [2000, "h"] }));
    expect(numberAt(slow, "bed_one.season_got")).toBeLessThan(numberAt(quick, "bed_one.season_got"));
  });
});

describe("a joint", () => {
  const cards = (second: boolean) =>
    ({
      upper: ["tank", UPPER],
      left: ["tank", TUB],
      right: ["tank", TUB],
      joint: ["tee", { height: [3, "ft"] }],
      main: ["line", { from: "upper", to: "joint", valve_bore: null, length: [60, "ft"] }],
      to_left: ["line", { from: "joint", to: "left", valve_bore: [6.4, "mm"] }],
      ...(second
        ? { to_right: ["line", { from: "joint", to: "right", valve_bore: [6.4, "mm"], length: [20, "ft"] }] }
        : {}),
    }) as Parameters<typeof sheetOf>[0];
  const both = workedOut(sheetOf(cards(true)));
  const alone = workedOut(sheetOf(cards(false)));

  test("as much leaves as arrives, and both together give less than each alone", () => {
    const [main, left, right] = ["main", "to_left", "to_right"].map((id) => numberAt(both, `${id}.flow`));
    expect((left ?? 0) + (right ?? 0)).toBeCloseTo(main ?? 0, 12);
    expect(left).toBeLessThan(numberAt(alone, "to_left.flow"));
    expect(numberAt(alone, "to_left.flow")).toBeCloseTo(numberAt(alone, "main.flow"), 12);
    expect(numberAt(both, "joint.head")).toBeLessThan(numberAt(alone, "joint.head"));
  });

  test("a refill through it is that of the other float shut", () => {
    expect(numberAt(both, "to_left.refill_time")).toBeCloseTo(numberAt(alone, "to_left.refill_time"), 6);
    expect(both.results.get("main.refill_time")).toMatchObject({ state: "none", reason: "it fills no tank" });
  });

  test("a flow measured behind it teaches the float there, as if the other were shut", () => {
    const timed = (second: boolean, measured: Givens) =>
      sheetOf({
        ...cards(second),
        to_left: ["line", { from: "joint", to: "left", valve_bore: [6.4, "mm"] }, measured],
      });
    const slow = light(sheetOf(cards(false)), "to_left.flow") / 2;
    const taught = timed(true, { flow: [slow, "m3/s"] });
    const opening = light(taught, "to_left.opening");
    expect(opening).toBeLessThan(light(timed(true, {}), "to_left.opening"));
    // Such a float by itself lets just so much through, and that of one alone stands beside what was measured.
    expect(light(timed(false, { opening: [opening, "m2"] }), "to_left.flow")).toBeCloseTo(slow, 12);
    expect(light(taught, twinId("to_left.flow"))).toBeCloseTo(light(timed(false, {}), "to_left.flow"), 12);
    expect(light(taught, "to_left.refill_time")).toBeGreaterThan(
      1.5 * light(timed(true, {}), "to_left.refill_time"),
    );
    // More than the hose could pass at all teaches nothing, and that is said.
    const much = workedOut(timed(true, { flow: [100, "gpm"] }));
    expect(much.results.get("to_left.opening")?.state).toBe("failed");
  });

  test("the season runs over it, with water accounted for and nothing left out", () => {
    expect(numberAt(both, "season.left_out")).toBe(0);
    expect(Math.abs(numberAt(both, "season.balance_error"))).toBeLessThan(1e-9);
    expect(numberAt(both, "upper.lowest_level")).toBeLessThan(toSi(2, "ft"));
  });

  test("a line to a joint is shut by the floats behind it, and fills no tank itself", () => {
    expect(cautionIds(both)).not.toContain("main: end_below_tank");
    expect(both.results.get("main.refill_after_watering")).toMatchObject({
      state: "none",
      reason: "it fills no tank",
    });
  });

  test("joints that follow each other settle", () => {
    const chain = workedOut(
      sheetOf({
        ...cards(true),
        far: ["tank", TUB],
        next: ["tee", { height: [2, "ft"] }],
        between: ["line", { from: "joint", to: "next", valve_bore: null }],
        to_far: ["line", { from: "next", to: "far" }],
      }),
    );
    const flow = (id: string) => numberAt(chain, `${id}.flow`);
    expect(flow("to_left") + flow("to_right") + flow("between")).toBeCloseTo(flow("main"), 9);
    expect(flow("to_far")).toBeCloseTo(flow("between"), 9);
    expect(chain.results.get("joint.lowest_end")).toMatchObject({ value: toSi(24, "in") });
  });

  test("a joint without lines says so; one whose line is wrong says which", () => {
    const bare = workedOut(sheetOf({ joint: ["tee", {}] }));
    expect(bare.results.get("joint.head")).toMatchObject({ state: "none", reason: "no line meets here yet" });
    const wrong = workedOut(
      sheetOf({ ...cards(true), main: ["line", { from: "upper", to: "joint", bore: [1, "gal"] }] }),
    );
    expect(wrong.results.get("joint.head")).toMatchObject({
      state: "failed",
      problem: {
        text: expect.stringContaining("main: Inside bore: gal is a volume, but a length is wanted here."),
      },
    });
  });
});

describe("the way a line lies", () => {
  const lying = (points: readonly (readonly [number, number])[], more: Givens = {}) =>
    workedOut(twoTanks({ route: [points, "ft, ft"], shut_level: [12, "in"], ...more }));

  test("a hose that only falls has no hump and no trouble", () => {
    const whole = lying([
      [0, 4],
      [25, 3],
      [50, 1],
    ]);
    expect(whole.results.get("feed.hump_height")).toMatchObject({ state: "none", reason: "it has no hump" });
    expect(cautionIds(whole).filter((id) => /hump|grade/.test(id))).toEqual([]);
  });

  test("a slow flow leaves air in a hump: where, and how much of the drop it may take", () => {
    const whole = lying([
      [0, 4],
      [10, 2],
      [30, 3.5],
      [50, 1],
    ]);
    expect(numberAt(whole, "feed.air_at")).toBeCloseTo(toSi(30, "ft"), 9);
    expect(numberAt(whole, "feed.air_head")).toBeCloseTo(toSi(1.5, "ft"), 9);
    expect(cautionIds(whole)).toContain("feed: hump_traps_air");
    expect(cautionIds(whole)).not.toContain("feed: hump_above_source");
  });

  test("a wide-open hose runs under suction where it lies over its grade line", () => {
    // Without a valve the grade line falls evenly from the water at 6 ft to the end: at 40 of 50 ft it has passed 4 ft.
    const whole = lying(
      [
        [0, 3],
        [10, 2.5],
        [40, 4.5],
        [50, 0],
      ],
      { valve_bore: null },
    );
    expect(numberAt(whole, "feed.suction_at")).toBeCloseTo(toSi(40, "ft"), 9);
    // The grade line there stands at 6 ft x 10/50 = 1.2 ft, less what fittings and speed take: 3.3 ft under the hose, hardly more.
    expect(numberAt(whole, "feed.suction_by")).toBeGreaterThan(toSi(3.3, "ft"));
    expect(numberAt(whole, "feed.suction_by")).toBeLessThan(toSi(3.5, "ft"));
    expect(cautionIds(whole)).toContain("feed: under_grade_line");
  });

  test("a hump over the water runs once it is primed, and the caution stays; under the brim the season still counts on it", () => {
    const hump: readonly (readonly [number, number])[] = [
      [0, 4],
      [20, 7],
      [50, 1],
    ];
    const unprimed = lying(hump);
    // A small seat is no news where the hump stops everything.
    expect(cautionIds(lying(hump, { valve_bore: [3.2, "mm"] })).find((id) => id.startsWith("feed"))).toBe(
      "feed: hump_above_source",
    );
    expect(unprimed.results.get("feed.flow")).toMatchObject({ state: "none" });
    expect(numberAt(unprimed, "season.left_out")).toBe(0);
    const primed = lying(hump, { primed: "yes" });
    // A full hose does not know how it lies: the same flow as of one that only falls between the same ends.
    const falling = lying([
      [0, 4],
      [50, 1],
    ]);
    expect(numberAt(primed, "feed.flow")).toBeCloseTo(numberAt(falling, "feed.flow"), 12);
    expect(cautionIds(primed)).toContain("feed: hump_above_source");
    // The upper water stands at 6 ft.
    expect(numberAt(primed, "feed.siphon_by")).toBeCloseTo(toSi(1, "ft"), 9);
  });

  test("a hump level with the water stands over it by nothing, not by what rounding leaves", () => {
    const points: readonly (readonly [number, number])[] = [
      [0, 20.2],
      [90, 23],
      [200, 1.6],
    ];
    const upper: Givens = { capacity: [3000, "gal"], water_height: [72, "in"], ground_height: [20, "ft"] };
    const whole = workedOut(twoTanks({ route: [points, "ft, ft"], length: [200, "ft"] }, upper));
    expect(numberAt(whole, "feed.siphon_by")).toBe(0);
    expect(whole.results.get("feed.flow")).toMatchObject({ state: "none" });
    expect(cautionIds(whole)).toContain("feed: hump_above_source");
  });

  test("no siphon lifts 60 ft", () => {
    const whole = lying(
      [
        [0, 4],
        [20, 60],
        [50, 1],
      ],
      { primed: "yes", length: [150, "ft"] },
    );
    expect(whole.results.get("feed.flow")).toMatchObject({ state: "none" });
    expect(cautionIds(whole)).toContain("feed: hump_too_high");
  });

  test.each([
    [
      [
        [0, 4],
        [20, 3],
        [10, 2],
      ],
      "Point 3 of the route lies no further along than the one before it.",
    ],
    [
      [
        [0, 4],
        [70, 3],
      ],
      "The route is longer than the line: distances are measured along the hose.",
    ],
    [
      [
        [-5, 4],
        [20, 3],
      ],
      "The way it lies: at least 0\u00a0ft is wanted here.",
    ],
  ] as const)("points that cannot be: %j", (points, words) => {
    expect(lying(points).results.get("feed.hump_at")).toMatchObject({
      state: "failed",
      problem: { text: words },
    });
  });
});

describe("a line's cautions", () => {
  test("an open end under the tank runs it down; a float or a check valve changes what is said", () => {
    const open = cautionIds(workedOut(twoTanks({ valve_bore: null })));
    expect(open).toContain("feed: end_below_tank");
    expect(cautionIds(workedOut(twoTanks({})))).not.toContain("feed: end_below_tank");
    const level: Givens = { ground_height: [0, "ft"], reference_share: [100, "%"] };
    expect(cautionIds(workedOut(twoTanks({ valve_bore: null }, level)))).toContain("feed: runs_both_ways");
    expect(cautionIds(workedOut(twoTanks({ valve_bore: null, check_valve: "yes" }, level)))).not.toContain(
      "feed: runs_both_ways",
    );
  });

  test("little drop over a long hose asks for a careful survey: 4 ft over 300 ft does, 5 ft does not", () => {
    const drop = (feet: number) =>
      cautionIds(workedOut(twoTanks({ length: [300, "ft"] }, {}, { head: [feet, "ft"] })));
    expect(drop(3.9)).toContain("feed: too_little_drop");
    expect(drop(5)).not.toContain("feed: too_little_drop");
  });
});

describe("a filter", () => {
  test("in a line adds its loss and says what it takes of the drop", () => {
    const sheet = {
      upper: ["tank", UPPER],
      tub: ["tank", TUB],
      feed: ["line", { from: "upper", to: "tub", valve_bore: null }],
    } as const;
    const plain = workedOut(sheetOf(sheet));
    const whole = workedOut(
      sheetOf({ ...sheet, mesh: ["filter", { on: "feed", k: [10, "1"], clogged_share: [50, "%"] }] }),
    );
    // Half of the mesh blinded: four times the loss.
    expect(numberAt(whole, "feed.all_k")).toBeCloseTo(3.4 + 40, 12);
    expect(numberAt(whole, "feed.flow")).toBeLessThan(numberAt(plain, "feed.flow"));
    const speed = numberAt(whole, "feed.velocity");
    expect(numberAt(whole, "mesh.head_lost")).toBeCloseTo((40 * speed ** 2) / (2 * 9.80665), 12);
  });

  test("on a roof throws its share away, in the usual year and in the season", () => {
    const sheet = { upper: ["tank", UPPER], barn: ["roof", { drains_to: "upper" }] } as const;
    const plain = workedOut(sheetOf(sheet));
    const whole = workedOut(sheetOf({ ...sheet, mesh: ["filter", { on: "barn", clogged_share: [0, "%"] }] }));
    expect(numberAt(whole, "barn.mean_yearly_catch")).toBeCloseTo(
      0.9 * numberAt(plain, "barn.mean_yearly_catch"),
      9,
    );
    expect(numberAt(whole, "upper.mean_yearly_spill")).toBeLessThan(
      numberAt(plain, "upper.mean_yearly_spill"),
    );
    expect(whole.results.get("mesh.head_lost")).toMatchObject({ state: "none" });
  });

  test("on nothing says so", () => {
    const whole = workedOut(sheetOf({ mesh: ["filter", {}] }));
    expect(whole.results.get("mesh.head_lost")).toMatchObject({
      state: "none",
      reason: "sits on nothing yet",
    });
  });
});

test("an end that lies under the tank by no more than rounding is not warned of", () => {
  // In metres 0.1 + 0.2 is over 0.3 by rounding alone.
  const warned = (ground: number) =>
    cautionIds(
      workedOut(
        sheetOf({
          upper: ["tank", { ...UPPER, ground_height: [0.1, "m"], stand_height: [0.2, "m"] }],
          tub: ["tank", { ...TUB, ground_height: [ground, "m"] }],
          feed: ["line", { from: "upper", to: "tub", valve_bore: null, check_valve: "yes" }],
        }),
      ),
    );
  expect(warned(0.3)).not.toContain("feed: end_below_tank");
  expect(warned(0.2)).toContain("feed: end_below_tank");
});
