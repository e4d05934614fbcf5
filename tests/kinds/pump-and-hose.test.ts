// A pump at its hose, from cards to numbers; what is expected comes from the source named beside it.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Figure } from "../../src/graph/figure.ts";
import { fromSi, toSi } from "../../src/units/unit.ts";
import { cautionIds, type Givens, numberAt, workedOut } from "./made-up-sheets.ts";
import { light, rig, TUB } from "./power-rig.ts";

const litresAMinute = (flow: number): number => fromSi(flow, "L/min");

describe("a pump at its hose", () => {
  // Computed with a public library of fluid mechanics: shut-off 4.0 m, lift 1.0 m, K 2.5, Churchill, at 13.6 V, no nozzle.
  test.each([
    [500, 0.625, 50, 13.6, 14.5],
    [500, 0.625, 100, 13.6, 11.0],
    [500, 0.75, 50, 13.6, 19.2],
    [1100, 0.625, 50, 13.6, 16.7],
    [1100, 0.75, 50, 13.6, 25.2],
    [500, 0.625, 50, 12.2, 12.3],
    [500, 0.625, 100, 12.2, 9.3],
    [500, 0.75, 50, 12.2, 16.4],
    [1100, 0.625, 50, 12.2, 14.1],
    [1100, 0.75, 50, 12.2, 21.4],
  ])("%d gph on %s in of %d ft at %s V gives %s L/min", (gph, bore, length, volts, expected) => {
    const at = light(
      rig({
        pump: { open_flow: [gph, "gph"], shutoff_head: [4, "m"], figures: "tested" },
        hose: { hose_bore: [bore, "in"], hose_length: [length, "ft"] },
        wire: null,
        battery: { nominal_voltage: [volts, "V"] },
      }),
    );
    // Bores there are 15.9 mm for 5/8 in, here 15.875 mm: 0.4 % of the flow at most, on top of its rounding.
    expect(Math.abs(litresAMinute(at("hose.flow")) - expected)).toBeLessThanOrEqual(0.05 + 0.004 * expected);
  });

  test("a label is believed to 0.8 of its flow, BoatUS Foundation Findings 14; what was tested is believed whole", () => {
    const open = (figures: string) => light(rig({ pump: { figures }, wire: null }))("bilge.flow_at_no_head");
    expect(fromSi(open("label"), "gph")).toBeCloseTo(400, 9);
    expect(fromSi(open("tested"), "gph")).toBeCloseTo(500, 9);
  });

  test("points of a data sheet stand for the ratings: 30, 24 and 16 L/min at 0, 1 and 2 m shut off at 2.793 m", () => {
    const points: Givens = {
      curve: [
        [
          [30, 0],
          [24, 1],
          [16, 2],
        ],
        "L/min, m",
      ],
    };
    expect(light(rig({ pump: points, wire: null }))("bilge.head_at_no_flow")).toBeCloseTo(2.793, 3);
  });

  test("its head is lift and all losses, and the source's power the pump's and the wire's, to 1e-9", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 200, max: 2000, noNaN: true }),
        fc.double({ min: 2, max: 8, noNaN: true }),
        fc.double({ min: 0.4, max: 1.5, noNaN: true }),
        fc.double({ min: 5, max: 200, noNaN: true }),
        fc.double({ min: 0, max: 150, noNaN: true }),
        fc.constantFrom("18 AWG", "14 AWG", "10 AWG", "2.5 mm2"),
        (gph, head, bore, length, k, gauge) => {
          const at = light(
            rig({
              pump: { open_flow: [gph, "gph"], shutoff_head: [head, "m"] },
              hose: { hose_bore: [bore, "in"], hose_length: [length, "ft"], head_k: [k, "1"] },
              wire: { gauge, one_way_length: [length / 4, "ft"] },
            }),
          );
          const made = at("hose.head");
          const speed = at("hose.arriving_voltage") / 13.6;
          const flow = at("hose.flow");
          const open = 0.8 * toSi(gph, "gph");
          // The pump's own curve, written out.
          expect((head * (speed ** 2 - (flow / open) ** 2)) / made).toBeCloseTo(1, 9);
          const taken = at("hose.drawn_power");
          const inWire = at("hose.current") ** 2 * at("lead.resistance");
          expect((at("hose.power") + inWire) / taken).toBeCloseTo(1, 9);
          expect(at("hose.current") * 13.6).toBeCloseTo(taken, 9);
        },
      ),
      { numRuns: 60, seed: 20261125 },
    );
  });

  test("thicker or shorter wire never lowers what comes out", () => {
    const gauges = ["18 AWG", "16 AWG", "14 AWG", "12 AWG", "10 AWG", "8 AWG", "6 AWG"];
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 50, noNaN: true }),
        fc.double({ min: 0.5, max: 8, noNaN: true }),
        (length, current) => {
          const flows = gauges.map((gauge) =>
            light(
              rig({
                pump: { rated_current: [current, "A"] },
                wire: { gauge, one_way_length: [length, "ft"] },
              }),
            )("hose.flow"),
          );
          // The solved flow itself is good to about 1e-12 of itself.
          for (let next = 1; next < flows.length; next++)
            expect(flows[next]).toBeGreaterThanOrEqual((flows[next - 1] ?? 0) * (1 - 1e-11));
        },
      ),
      { numRuns: 15, seed: 20261125 },
    );
  });

  test("a rose of 100 holes of 1.0 mm takes 0.60 m at 10 L/min, and a bucket timed through it stands instead", () => {
    // Computed: N holes of d as one orifice of d √N with Cd 0.62, rounded to 0.01 m.
    const rose: Givens = { rose_holes: [100, "1"], rose_hole: [1, "mm"] };
    const at = light(rig({ hose: rose }));
    const takes = at("hose.wand_head") * (10 / litresAMinute(at("hose.flow"))) ** 2;
    expect(Math.abs(takes - 0.6)).toBeLessThanOrEqual(0.005);
    const bucket: Givens = { ...rose, bucket_volume: [10, "L"], bucket_time: [80, "s"] };
    const whole = workedOut(rig({ hose: bucket }));
    expect(litresAMinute(numberAt(whole, "hose.flow"))).toBeCloseTo(7.5, 9);
    expect(numberAt(whole, "hose.rose_k")).toBe(0);
    expect(numberAt(whole, "hose.head_k_in_use")).toBeGreaterThan(0);
  });

  test("a strainer behind it costs flow, more when it clogs", () => {
    const flow = (clogged: number) =>
      light(rig({ more: { mesh: ["filter", { on: "hose", clogged_share: [clogged, "%"] }] } }))("hose.flow");
    expect(flow(0)).toBeLessThan(light(rig({}))("hose.flow"));
    expect(flow(80)).toBeLessThan(flow(0));
  });

  test("a tank runs down to the pump's lowest water and no further; the lift grows meanwhile", () => {
    const whole = workedOut(rig({ pump: { lowest_water: [10, "cm"] }, hose: { tank_share: [100, "%"] } }));
    const steady = (numberAt(whole, "tub.capacity") * (1.2192 - 0.1)) / 1.2192 / numberAt(whole, "hose.flow");
    expect(numberAt(whole, "hose.drawdown_time")).toBeGreaterThan(steady);
    const shallow = workedOut(rig({ pump: { lowest_water: [60, "cm"] } }));
    expect(numberAt(shallow, "hose.drawdown_time")).toBeLessThan(numberAt(whole, "hose.drawdown_time"));
  });

  test("hose under the brim: it runs on as a siphon down to the hose's end, and the caution says so; over it, not", () => {
    const end = (feet: number) => workedOut(rig({ hose: { outlet_height: [feet, "ft"] } }));
    expect(cautionIds(end(1))).toContain("hose: end_below_tank");
    expect(numberAt(end(1), "hose.siphons_down_to")).toBeCloseTo(toSi(1, "ft"), 12);
    expect(cautionIds(end(-1))).toContain("hose: siphons_empty");
    expect(cautionIds(end(5)).filter((id) => /siphon|end_below/.test(id))).toEqual([]);
  });

  test("a hose higher than the pump lifts gives nothing and says why", () => {
    const whole = workedOut(rig({ hose: { outlet_height: [20, "ft"] } }));
    expect(whole.results.get("hose.flow")).toMatchObject({
      state: "none",
      reason: "its hose ends higher than this pump lifts",
    });
    expect(cautionIds(whole)).toContain("hose: lift_above_shutoff");
  });

  test("a pump carried between two tanks is told of", () => {
    const second = workedOut(
      rig({ more: { other: ["tank", TUB], hose_two: ["delivery", { from: "other", pump: "bilge" }] } }),
    );
    expect(numberAt(second, "bilge.places")).toBe(2);
    expect(cautionIds(second)).toContain("bilge: one_place");
  });

  test("well under its label, with the reason", () => {
    const whole = workedOut(rig({ battery: { nominal_voltage: [12, "V"] } }));
    expect(numberAt(whole, "hose.share_of_label")).toBeLessThan(0.4);
    expect(cautionIds(whole)).toContain("hose: far_under_label");
    expect(cautionIds(whole)).toContain("hose: hose_before_pump");
    // Through a few feet of wide hose hardly anything is lost: then the bigger pump gains more.
    const short = workedOut(rig({ hose: { hose_length: [5, "ft"], hose_bore: [0.75, "in"] } }));
    expect(cautionIds(short)).not.toContain("hose: hose_before_pump");
  });
});

describe("side by side", () => {
  const figureOf = (whole: ReturnType<typeof workedOut>, id: string): Figure => {
    const result = whole.results.get(id);
    if (result?.state !== "ready") throw new Error(JSON.stringify(result));
    return result.value as Figure;
  };
  const flowsOf = (whole: ReturnType<typeof workedOut>): Readonly<Record<string, number>> =>
    Object.fromEntries(
      figureOf(whole, "hose.what_if").rows.map(([label, flow]) => [label, litresAMinute(Number(flow))]),
    );
  const whole = { open_flow: [500, "gph"], shutoff_head: [4, "m"], figures: "tested" } as const;

  test("3/4 in hose gains more than the 1100 gph pump: 14.5, 19.2 and 16.7 L/min; both together 25.2", () => {
    // As the flows above: computed with a public library of fluid mechanics, to 0.1 L/min, bores to 0.4 %.
    const flows = flowsOf(workedOut(rig({ pump: whole, wire: null })));
    const near = (label: string, expected: number) =>
      expect(Math.abs((flows[label] ?? 0) - expected)).toBeLessThanOrEqual(0.05 + 0.004 * expected);
    near("As it is", 14.5);
    near("3/4 in hose", 19.2);
    near("1100 gph pump", 16.7);
    near("1100 gph pump, 3/4 in hose", 25.2);
    expect(flows["Half the hose"]).toBeGreaterThan(14.5);
  });

  test("with a rose the wider hose gains less", () => {
    const gain = (hose: Givens) => {
      const flows = flowsOf(workedOut(rig({ pump: whole, hose, wire: null })));
      return (flows["3/4 in hose"] ?? 0) / (flows["As it is"] ?? 1);
    };
    const rose = gain({ rose_holes: [100, "1"], rose_hole: [1, "mm"] });
    expect(rose).toBeGreaterThan(1);
    expect(rose).toBeLessThan(gain({}));
    // A wand's loss is on the speed in the hose it was timed with: it stays the same wand on a wider one.
    const wand = gain({ head_k: [60, "1"] });
    expect(wand).toBeLessThan(gain({}));
  });

  test("what stands there is what the card gives once the change is made", () => {
    const flows = flowsOf(workedOut(rig({ pump: whole })));
    const made = light(rig({ pump: whole, hose: { hose_bore: [0.75, "in"] } }));
    expect(flows["3/4 in hose"]).toBeCloseTo(litresAMinute(made("hose.flow")), 9);
    const rows = figureOf(workedOut(rig({ pump: whole })), "hose.what_if").rows;
    expect(rows[0]?.[2]).toBe(numberAt(workedOut(rig({ pump: whole })), "hose.watering_time"));
  });

  test("the curves cross where it runs", () => {
    const run = workedOut(rig({ pump: whole }));
    const { chart } = figureOf(run, "hose.curves");
    expect(chart?.marks[0]).toEqual({
      label: "it runs here",
      across: numberAt(run, "hose.flow"),
      up: numberAt(run, "hose.head"),
    });
    for (const [flow, made, used] of figureOf(run, "hose.curves").rows)
      expect(Number(made) > Number(used)).toBe(Number(flow) < numberAt(run, "hose.flow"));
  });
});
