// Wire and fuse, from cards to numbers: what a table or rule says stands beside each.

import { describe, expect, test } from "vitest";
import { cautionsOf } from "../../src/graph/cautions.ts";
import { KIND_WORDS } from "../../src/kinds/words.ts";
import { toSi } from "../../src/units/unit.ts";
import { cautionIds, type Givens, numberAt, workedOut } from "./made-up-sheets.ts";
import { light, rig } from "./power-rig.ts";

const SHOWN = { units: "us", locale: "en-US", currency: "$" } as const;
const HOT: Givens = { wire_temperature: [75, "degC"] };
const draws = (amperes: number) =>
  ({ measured: { current: [amperes, "A"] }, battery: { nominal_voltage: [12, "V"] } }) as const;
const wordAt = (whole: ReturnType<typeof workedOut>, id: string) => {
  const result = whole.results.get(id);
  return result?.state === "ready" ? result.value : result;
};

describe("a wire", () => {
  // NEC chapter 9 table 8, stranded, 75 °C (read in a copy): 5 A, 50 ft one way, 12 V; drops computed from it.
  test.each([
    ["14 AWG", 1.57, 13.1],
    ["12 AWG", 0.99, 8.3],
    ["10 AWG", 0.62, 5.2],
    ["8 AWG", 0.389, 3.2],
  ])("%s loses %d V of 12 at 5 A over 50 ft, there and back: %d percent", (gauge, volts, percent) => {
    const at = light(rig({ ...draws(5), wire: { ...HOT, gauge, one_way_length: [50, "ft"] } }));
    expect(at("lead.drop")).toBeCloseTo(volts, 3);
    expect(Math.abs(100 * at("lead.drop_share") - percent)).toBeLessThanOrEqual(0.05 + 1e-12);
  });

  test("of colder copper less is lost: 0.822 of it at 20 °C", () => {
    // Computed with 0.00393 a kelvin.
    const drop = (celsius: number) =>
      light(
        rig({
          ...draws(5),
          wire: { gauge: "12 AWG", one_way_length: [50, "ft"], wire_temperature: [celsius, "degC"] },
        }),
      )("lead.drop");
    expect(drop(20) / drop(75)).toBeCloseTo(0.822, 3);
  });

  // hollandmarine.com 2021 p. 53 (read): 12 V pump, 10 A, 21 ft there and back: 10 AWG for 3 %, 16 AWG for 10 %.
  test.each([
    [3, "10 AWG"],
    [10, "16 AWG"],
  ])("for 10 A over 21 ft there and back and %d percent the thinnest is %s", (percent, gauge) => {
    const whole = workedOut(
      rig({
        ...draws(10),
        wire: { ...HOT, one_way_length: [10.5, "ft"], wanted_drop: [percent, "%"] },
      }),
    );
    expect(wordAt(whole, "lead.thinnest_gauge")).toBe(gauge);
  });

  // 33 CFR 183.425 table 5 (read in a copy); a metric wire by the largest gauge not thicker.
  test.each([
    ["18 AWG", "unknown", 10],
    ["16 AWG", "unknown", 15],
    ["16 AWG", "75", 15],
    ["16 AWG", "105", 25],
    ["14 AWG", "75", 20],
    ["12 AWG", "90", 40],
    ["10 AWG", "60", 40],
    ["8 AWG", "75", 65],
    ["6 AWG", "80", 100],
    ["1.5 mm2", "75", 15],
    ["2.5 mm2", "75", 20],
    ["4 mm2", "90", 40],
    ["6 mm2", "unknown", 40],
    ["10 mm2", "105", 80],
  ])("%s in a sheath of %s °C may carry %d A", (gauge, insulation, amperes) => {
    expect(light(rig({ wire: { gauge, insulation } }))("lead.ampacity")).toBe(amperes);
  });

  test("one thinner than the table begins has no figure, and says so", () => {
    const whole = workedOut(rig({ wire: { gauge: "0.75 mm2" } }));
    expect(whole.results.get("lead.ampacity")).toMatchObject({
      state: "none",
      reason: "the table begins with thicker wire: too thin to fuse",
    });
  });

  test("ABYC E-11: over 10 % is trouble, over 3 % a note, under it nothing", () => {
    const over = (feet: number) =>
      cautionIds(
        workedOut(rig({ ...draws(5), wire: { ...HOT, gauge: "12 AWG", one_way_length: [feet, "ft"] } })),
      ).filter((id) => id.startsWith("lead: drop"));
    // 8.25 % over 50 ft, in proportion to the length.
    expect(over(70)).toEqual(["lead: drop_too_big"]);
    expect(over(50)).toEqual(["lead: drop_over_wanted"]);
    expect(over(15)).toEqual([]);
  });
});

describe("a fuse", () => {
  // 1.25 times what it draws, NEC 210.20(A) (read second-hand), then the next blade size; computed.
  test.each([
    [4, 5],
    [7, 10],
    [12, 15],
  ])("for a pump of %d A is %d A", (amperes, size) => {
    const wire = { gauge: "14 AWG", insulation: "75" };
    expect(light(rig({ pump: { rated_current: [amperes, "A"] }, wire }))("lead.fuse_size")).toBe(size);
  });

  test("is the maker's figure where there is one, and none where the wire is too thin for any", () => {
    const maker: Givens = { rated_current: [2, "A"], maker_fuse: [2.5, "A"] };
    expect(workedOut(rig({ pump: maker })).results.get("lead.fuse_size")).toMatchObject({ state: "none" });
    const four: Givens = { ...maker, maker_fuse: [4, "A"] };
    // Of a stall of four times its 2 A a fuse of 4 A would not blow in seconds: then the next smaller that lets it run.
    expect(light(rig({ pump: four }))("lead.fuse_size")).toBe(3);
    expect(light(rig({ pump: { ...four, stall_current: [12, "A"] } }))("lead.fuse_size")).toBe(4);
    const thin = workedOut(rig({ pump: { rated_current: [12, "A"] }, wire: { gauge: "18 AWG" } }));
    expect(thin.results.get("lead.fuse_size")).toMatchObject({
      state: "none",
      reason: "every fuse that would run it is more than this wire may carry: a thicker wire first",
    });
  });

  test("too small for what its pump draws names the current, and whether the label or this place says so", () => {
    const said = (pump: Givens) => {
      const whole = workedOut(
        rig({
          pump,
          wire: { gauge: "16 AWG", fuse: [2.2, "A"] },
          battery: { nominal_voltage: [12, "V"] },
        }),
      );
      return cautionsOf(whole.graph, whole.worksheet, whole.results, SHOWN, KIND_WORDS)
        .filter(({ card, id }) => card === "lead" && /little_margin|under_running/.test(id))
        .map(({ text }) => text);
    };
    // 2.2 A is 1.1 times 2 A.
    expect(said({ rated_current: [2, "A"] }).join()).toMatch(
      /under 1.25 times the 2\sA that the pump draws, by its label:/,
    );
    // On a battery of more volts than its label's it draws more than the label says.
    expect(said({ rated_current: [2, "A"], rated_voltage: [9, "V"] }).join()).toMatch(/, as it runs here:/);
  });

  test("that none is right for is not told of with one text inside another", () => {
    const whole = workedOut(rig({ pump: { rated_current: [2, "A"] }, wire: { fuse: [15, "A"] } }));
    const texts = cautionsOf(whole.graph, whole.worksheet, whole.results, SHOWN, KIND_WORDS);
    expect(texts.filter(({ card, text }) => card === "lead" && text.includes("not known"))).toEqual([]);
  });

  const fitted = (fuse: number | null, more: Givens = {}, pump: Givens = {}) =>
    workedOut(
      rig({
        pump: { rated_current: [2, "A"], ...pump },
        wire: { gauge: "16 AWG", fuse: fuse === null ? null : [fuse, "A"], ...more },
        battery: { nominal_voltage: [12, "V"] },
      }),
    );
  const faults = (whole: ReturnType<typeof workedOut>) =>
    cautionIds(whole).filter((id) =>
      /lead: (no_fuse|over_|stall_|under_|little_|cannot_|fuse_too_far)/.test(id),
    );

  test("of 15 A on a 2 A pump over 16 AWG is taken as it is, marked unsafe, with the rule", () => {
    const whole = fitted(15);
    expect(numberAt(whole, "lead.fuse")).toBe(15);
    expect(wordAt(whole, "lead.fuse_state")).toBe("unsafe");
    // A stuck rotor draws four times its 2 A (common practice): no more than 12 V over 1.7 ohm, 7.1 A, under 30 A.
    expect(faults(whole)).toEqual(["lead: stall_does_not_blow"]);
    expect(numberAt(whole, "lead.stalled_current")).toBeLessThan(toSi(7.1, "A"));
    // The rest of the worksheet goes on.
    expect(numberAt(whole, "hose.flow")).toBeGreaterThan(0);
  });

  test.each([
    [3, {}, {}, "right", []],
    [null, {}, {}, "unsafe", ["lead: no_fuse"]],
    [5, {}, { maker_fuse: [3, "A"] }, "unsafe", ["lead: over_maker", "lead: stall_does_not_blow"]],
    [20, {}, {}, "unsafe", ["lead: over_ampacity", "lead: stall_does_not_blow"]],
    [25, {}, {}, "unsafe", ["lead: over_ampacity", "lead: over_regulation", "lead: stall_does_not_blow"]],
    [2, {}, {}, "blows_early", ["lead: under_running_current"]],
    [2.4, {}, {}, "blows_early", ["lead: little_margin"]],
    // Thin and long, the wire itself holds the stalled current under twice the right fuse.
    [3, { one_way_length: [120, "ft"] }, {}, "unsafe", ["lead: stall_does_not_blow"]],
    [3, { fuse_from_battery: [12, "in"] }, {}, "right", ["lead: fuse_too_far"]],
    [3, { fuse_from_battery: [12, "in"], sheathed: "yes" }, {}, "right", []],
  ] as const)("of %s A (%j, %j) is %s", (fuse, wire, pump, state, rules) => {
    const whole = fitted(fuse, wire, pump);
    expect(wordAt(whole, "lead.fuse_state")).toBe(state);
    expect(faults(whole).toSorted()).toEqual([...rules].toSorted());
  });

  test("on lithium must break 3,733 A: a blade of 1,000 A cannot, an MRBF of 10,000 A can", () => {
    // forum.expeditionportal.com 3226349 (read): 14 V over 3.75 mΩ. Blade from memory; MRBF read second-hand.
    const lithium = (kind: string) =>
      workedOut(
        rig({
          wire: { gauge: "16 AWG", fuse: [3, "A"], fuse_kind: kind },
          battery: { chemistry: "lifepo4", nominal_voltage: [12.8, "V"] },
        }),
      );
    expect(numberAt(lithium("blade"), "lead.short_current")).toBeCloseTo(3733.3, 1);
    expect(faults(lithium("blade"))).toEqual(["lead: cannot_break"]);
    expect(wordAt(lithium("blade"), "lead.fuse_state")).toBe("unsafe");
    expect(wordAt(lithium("mrbf"), "lead.fuse_state")).toBe("right");
    expect(faults(fitted(3, { fuse_kind: "blade" }))).toEqual([]);
  });
});
