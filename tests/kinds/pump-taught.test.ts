// What a bucket teaches of a pump and its wand, and that the rest of the place then moves with it.

import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { setGiven } from "../../src/document/edits.ts";
import type { Worksheet } from "../../src/document/worksheet.ts";
import { cautionsOf } from "../../src/graph/cautions.ts";
import { keepConditions } from "../../src/graph/keep-conditions.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { KIND_WORDS } from "../../src/kinds/words.ts";
import { fromSi, toSi } from "../../src/units/unit.ts";
import { readWorksheetText } from "../document/read-text.ts";
import { cautionIds, type Givens, given, numberAt, workedOut } from "./made-up-sheets.ts";
import { light, rig, TUB } from "./power-rig.ts";

type Set = readonly [card: string, name: string, value: number, unit: string];

function template(): Worksheet {
  const read = readWorksheetText(readFileSync("templates/pump-battery-panel.json", "utf8"));
  if (!read.ok) throw new Error("The template does not read.");
  return read.worksheet;
}

/** As the page and the command line set a given: what it was measured under is written down with it. */
function typed(sheet: Worksheet, sets: readonly Set[]): Worksheet {
  return sets.reduce((at, [card, name, value, unit]) => {
    const kind = at.cards.find(({ id }) => id === card)?.kind ?? "";
    const row = CARD_KINDS[kind]?.rows.find((one) => one.name === name);
    if (!row) throw new Error(`${card}.${name}`);
    return keepConditions(setGiven(at, card, name, given([value, unit])), CARD_KINDS, card, row, true);
  }, sheet);
}

const gallons = (sheet: Worksheet): number => fromSi(light(sheet)("hose.flow"), "gal/min");

const WIDER: Set = ["hose", "hose_bore", 0.75, "in"];
const HIGHER: Set = ["hose", "outlet_height", 5, "ft"];
const BUCKET: readonly Set[] = [
  ["hose", "bucket_volume", 5, "gal"],
  ["hose", "bucket_time", 143.6, "s"],
];

describe("a pump of 2.5 m shut-off in the template with pump, battery and panel", () => {
  const SHUTOFF: Set = ["bilge", "shutoff_head", 2.5, "m"];

  // Worked out independently of this code: H = H0 - a Q², Darcy-Weisbach with Churchill, wire and battery.
  test.each([
    ["50 ft of 5/8 in", [], 2.089, 0.0005],
    ["3/4 in hose", [WIDER], 2.82, 0.005],
    ["its outlet 5 ft up", [HIGHER], 1.71, 0.005],
  ] as const)("with %s gives %j: %d gal/min", (_, sets, flow, rounding) => {
    expect(Math.abs(gallons(typed(template(), [SHUTOFF, ...sets])) - flow)).toBeLessThanOrEqual(rounding);
  });

  test.each([
    ["as it is", [], 2.089],
    ["then in 3/4 in hose", [WIDER], 2.82],
    ["then with its outlet 5 ft up", [HIGHER], 1.71],
  ] as const)(
    "is met from the usual pump by a bucket of 5 gal in 143.6 s, %s, within a tenth",
    (_, sets, flow) => {
      const taught = typed(template(), [...BUCKET, ...sets]);
      expect(Math.abs(gallons(taught) / flow - 1)).toBeLessThan(0.1);
    },
  );

  test("as it was timed gives just what the bucket showed", () => {
    expect(gallons(typed(template(), BUCKET)) / ((5 / 143.6) * 60)).toBeCloseTo(1, 9);
  });
});

const bucket = (flow: number, name = "bucket_time"): Givens => ({
  bucket_volume: [5, "gal"],
  [name]: [toSi(5, "gal") / flow, "s"],
});

describe("after a bucket", () => {
  const FROZEN: Givens = { tested_length: [50, "ft"], tested_bore: [0.625, "in"], tested_lift: [1, "m"] };
  const AT: Givens = { ...FROZEN, tested_voltage: [13.6, "V"], tested_resistance: [0, "ohm"] };
  const plain = light(rig({ wire: null }))("hose.flow");
  const weak: Givens = { ...bucket(plain * 0.7, "open_time"), ...AT };
  const flow = (parts: Parameters<typeof rig>[0]) => light(rig({ wire: null, ...parts }))("hose.flow");

  test("hose, bore, lift, volts and another tank all move what comes, the wrong way never", () => {
    const as = flow({ hose: weak });
    expect(as / plain).toBeCloseTo(0.7, 9);
    expect(flow({ hose: { ...weak, hose_length: [100, "ft"] } })).toBeLessThan(as * 0.95);
    expect(flow({ hose: { ...weak, hose_bore: [0.75, "in"] } })).toBeGreaterThan(as * 1.05);
    expect(flow({ hose: { ...weak, outlet_height: [5, "ft"] } })).toBeGreaterThan(as * 1.005);
    expect(flow({ hose: weak, battery: { nominal_voltage: [12, "V"] } })).toBeLessThan(as * 0.95);
    const deep = { tub: ["tank", { ...TUB, water_height: [5, "ft"] }] as const };
    expect(flow({ hose: weak, more: deep })).toBeGreaterThan(as * 1.005);
  });

  test("the same pump at another hose is the taught one", () => {
    const second = {
      hose_two: ["delivery", { from: "tub", pump: "bilge", outlet_height: [5, "ft"] }] as const,
    };
    const at = (hose: Givens) => light(rig({ wire: null, hose, more: second }))("hose_two.flow");
    expect(at(weak)).toBeLessThan(at({}) * 0.8);
  });

  test("nothing says until you test it", () => {
    expect(cautionIds(workedOut(rig({})))).toContain("bilge: label_not_believed");
    const tested = workedOut(rig({ hose: weak }));
    expect(cautionIds(tested)).not.toContain("bilge: label_not_believed");
    const wand = workedOut(rig({ hose: { head_k: [10, "1"], ...bucket(plain / 3) } }));
    expect(cautionIds(wand)).not.toContain("bilge: label_not_believed");
  });

  test("nothing asks for a bucket: one that shows too good a pump asks to look at it again", () => {
    const asks = (hose: Givens) => {
      const sheet = rig({ wire: null, hose, measured: { current: [0.4, "A"] } });
      const { graph, worksheet, results } = workedOut(sheet);
      const said = cautionsOf(
        graph,
        worksheet,
        results,
        { units: "us", locale: "en-US", currency: "$" },
        KIND_WORDS,
      );
      return said.filter(({ card }) => card === "hose" || card === "bilge");
    };
    const time = /time a bucket|until you test/i;
    expect(asks({}).map(({ id }) => id)).toContain("too_good");
    expect(asks({}).filter(({ text }) => time.test(text))).not.toEqual([]);
    for (const hose of [weak, bucket(plain), { head_k: [10, "1"], ...bucket(plain / 2) } as Givens])
      expect(asks(hose).filter(({ text }) => time.test(text))).toEqual([]);
    expect(asks(bucket(plain)).map(({ id }) => id)).toContain("too_good_as_timed");
  });

  test("slower than what runs downhill by itself, it is refused in a grower's words", () => {
    const whole = workedOut(rig({ wire: null, hose: { outlet_height: [0, "ft"], ...bucket(plain / 50) } }));
    const result = whole.results.get("bilge.tested_share");
    const text = expect.stringContaining("Look at bucket, clock, hose and heights again.");
    expect(result).toMatchObject({ state: "failed", problem: { at: "bilge.tested_share", text } });
    for (const id of whole.results.ids.filter((each) => /^(hose|bilge|cell)\./.test(each))) {
      const here = whole.results.get(id);
      const words = here?.state === "failed" ? here.problem.text : "";
      expect(words, id).not.toMatch(/\d\.\d{4}|must be/);
    }
  });

  test("that shows more than the figures allow the pump is better than they say", () => {
    const better = workedOut(rig({ wire: null, hose: bucket(plain * 1.2) }));
    expect(numberAt(better, "hose.flow") / plain).toBeCloseTo(1.2, 9);
    expect(numberAt(better, "bilge.tested_share")).toBeGreaterThan(1);
    expect(cautionIds(better)).toContain("bilge: bucket_beats_pump");
    expect(cautionIds(better)).toContain("hose: laid_to_pump");
    const slip = workedOut(rig({ wire: null, hose: bucket(plain * 3) }));
    expect(cautionIds(slip)).toContain("bilge: bucket_doubtful");
  });

  test("whose time is taken out again, what it was timed under goes too", () => {
    const timed = typed(template(), BUCKET);
    const hose = timed.cards.find(({ id }) => id === "hose");
    expect(hose?.givens["tested_bore"]).toMatchObject({ value: 0.625, unit: "in" });
    const row = CARD_KINDS["delivery"]?.rows.find(({ name }) => name === "bucket_time");
    if (!row) throw new Error("no such row");
    const out = keepConditions(setGiven(timed, "hose", "bucket_time", null), CARD_KINDS, "hose", row, false);
    expect(out.cards.find(({ id }) => id === "hose")?.givens["tested_bore"]).toBeUndefined();
  });
});

describe("two tests tell pump and wand apart", () => {
  const WAND: Givens = { head_k: [40, "1"] };
  /** What a planted pump and wand would show in both buckets. */
  const shown = (pump: Givens, k: number) => {
    const at = (head: Givens) => light(rig({ pump, hose: head }))("hose.flow");
    return { open: at({}), wand: at({ head_k: [k, "1"] }) };
  };
  const both = (seen: ReturnType<typeof shown>): Givens => ({
    ...WAND,
    ...bucket(seen.wand),
    ...bucket(seen.open, "open_time"),
  });
  const blames = (whole: ReturnType<typeof workedOut>) => whole.results.get("hose.blames");

  // Planted: a pump at 0.8 of its speed has 0.64 of its head and 0.8 of its open flow.
  const worn: Givens = { open_flow: [400, "gph"], shutoff_head: [2.8 * 0.64, "m"], rated_current: [2, "A"] };
  const sound: Givens = { open_flow: [500, "gph"], shutoff_head: [2.8, "m"], rated_current: [2, "A"] };

  test("a worn pump behind a clean wand", () => {
    const whole = workedOut(rig({ pump: sound, hose: both(shown(worn, 40)) }));
    // The worn pump draws its full current at its own, lower open flow, and the wire's drop is a little other: 1 in 1000.
    expect(numberAt(whole, "bilge.tested_share")).toBeCloseTo(0.8, 3);
    expect(Math.abs(numberAt(whole, "hose.head_k_in_use") / 40 - 1)).toBeLessThan(0.01);
    expect(blames(whole)).toMatchObject({ value: "pump" });
    const gone = cautionIds(whole).filter((id) => /laid_to|label_not/.test(id));
    expect(gone).toEqual([]);
  });

  test("a sound pump behind a clogged wand", () => {
    const whole = workedOut(rig({ pump: sound, hose: both(shown(sound, 200)) }));
    expect(numberAt(whole, "bilge.tested_share")).toBeCloseTo(1, 9);
    expect(numberAt(whole, "hose.head_k_in_use")).toBeCloseTo(200, 6);
    expect(blames(whole)).toMatchObject({ value: "wand" });
  });

  test("both at once, and neither", () => {
    const bad = workedOut(rig({ pump: sound, hose: both(shown(worn, 200)) }));
    expect(blames(bad)).toMatchObject({ value: "both" });
    const good = workedOut(rig({ pump: sound, hose: both(shown(sound, 40)) }));
    expect(blames(good)).toMatchObject({ value: "neither" });
  });

  test("one alone says which it blames: the wand where there is one, else the pump", () => {
    const { open, wand } = shown(worn, 40);
    const through = workedOut(rig({ pump: sound, hose: { ...WAND, ...bucket(wand) } }));
    expect(blames(through)).toMatchObject({ value: "wand_by_one" });
    expect(cautionIds(through)).toContain("hose: laid_to_wand");
    expect(numberAt(through, "hose.flow") / wand).toBeCloseTo(1, 9);
    const at = workedOut(rig({ pump: sound, hose: bucket(open) }));
    expect(blames(at)).toMatchObject({ value: "pump_by_one" });
    expect(cautionIds(at)).toContain("hose: laid_to_pump");
  });

  test("a taught wand stays the same wand on a wider hose", () => {
    const seen = shown(sound, 200);
    const AT: Givens = { tested_bore: [0.625, "in"] };
    const wider = light(rig({ pump: sound, hose: { ...both(seen), ...AT, hose_bore: [0.75, "in"] } }));
    expect(wider("hose.head_k_in_use") / 200).toBeCloseTo((0.75 / 0.625) ** 4, 6);
  });
});
