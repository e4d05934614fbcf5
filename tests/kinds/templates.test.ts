import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { jsonReport } from "../../src/cli/report.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { workOut } from "../../src/studies/work-out.ts";
import { toSi } from "../../src/units/unit.ts";
import { readWorksheetText } from "../document/read-text.ts";

const FOLDER = new URL("../../templates/", import.meta.url);

function opened(name: string) {
  const read = readWorksheetText(readFileSync(new URL(name, FOLDER), "utf8"));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  expect(read.notes).toEqual([]);
  return read.worksheet;
}

const finite = (value: unknown): boolean =>
  typeof value === "number" ? Number.isFinite(value) : Array.isArray(value) ? value.every(finite) : true;

describe.each(readdirSync(FOLDER).filter((name) => name.endsWith(".json")))("template %s", (name) => {
  const report = jsonReport(workOut(opened(name), CARD_KINDS), CARD_KINDS);

  test("every quantity is ready, or none with its reason; none is non-finite", () => {
    for (const [id, shown] of Object.entries(report.quantities)) {
      expect(["ready", "none"], `${id}: ${shown.problem}`).toContain(shown.state);
      if (shown.state === "none") expect(shown.problem, id).not.toBe("");
      expect(finite(shown.value), id).toBe(true);
    }
    expect(report.problems).toEqual([]);
    expect(report.left_out).toEqual([]);
  });

  test("every computed quantity has its working in words and its source", () => {
    for (const [id, shown] of Object.entries(report.quantities)) {
      // A usual value that would be worked out, where there is none, says why instead.
      if (shown.origin !== "given") expect(shown.how || shown.problem, id).not.toBe("");
      expect(shown.source, id).not.toBe("");
    }
  });

  test("it says that it is made up", () => {
    expect(opened(name).made_by).toContain("made-up");
    expect(report.cautions.some((caution) => caution.id === "made_up_weather")).toBe(true);
  });

  test("no part but the place is called made up: its name would stay when a record comes in", () => {
    const parts = opened(name).cards.filter(({ kind }) => kind !== "site");
    for (const { title } of parts) expect(title).not.toMatch(/made.up/i);
  });
});

describe("common practice, no source, in the demo's kind of place", () => {
  const { results } = workOut(opened("hillside-totes.json"), CARD_KINDS);
  const barrel = workOut(opened("one-barrel.json"), CARD_KINDS).results;
  const number = (from: typeof results, id: string): number => {
    const result = from.get(id);
    if (result?.state !== "ready" || typeof result.value !== "number") throw new Error(`${id} is not ready`);
    return result.value;
  };
  const gallon = toSi(1, "gal");

  test("water is about 8 lb a US gallon", () => {
    const pounds =
      number(results, "tub.full_weight") / toSi(1, "lb") / (number(results, "tub.capacity") / gallon);
    expect(Math.round(pounds)).toBe(8);
  });

  test("a 55-gallon drum used open yields 45 to 50 gallons", () => {
    const gallons = number(barrel, "barrel.reachable") / gallon;
    expect(gallons).toBeGreaterThanOrEqual(45);
    expect(gallons).toBeLessThanOrEqual(50.5);
  });

  test("a float valve refills a small tank in hours to a day, far slower than the pump draws", () => {
    const refill = number(results, "hose_down.refill_time");
    expect(refill).toBeGreaterThan(toSi(1, "h"));
    expect(refill).toBeLessThan(toSi(1, "day"));
    expect(number(results, "wand.flow")).toBeGreaterThan(5 * number(results, "hose_down.flow"));
  });

  test("around 20 gallons is a good soak for a small tunnel: between a good watering and all its ground holds", () => {
    // Crops that drink fast leave a smaller share of their water in easy reach (FAO-56 Table 22 footnote 2), so at the peak a
    // good watering is less than what is often said; and 20 gallons are well within what dry ground there takes up.
    const gallons = number(results, "tunnel_bed.watering_volume") / gallon;
    expect(gallons).toBeGreaterThan(14);
    expect(gallons).toBeLessThanOrEqual(20.5);
    expect(number(results, "tunnel_bed.first_soak") / gallon).toBeGreaterThan(20.5);
    const cans = number(results, "tunnel_bed.cans_per_watering");
    expect(cans).toBeGreaterThanOrEqual(8);
    expect(cans).toBeLessThanOrEqual(10);
  });
});
