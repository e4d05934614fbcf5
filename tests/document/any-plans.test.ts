// What holds of plans on whatever sheet.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { removeCard } from "../../src/document/card-edits.ts";
import { setGiven } from "../../src/document/edits.ts";
import { differences, effective, laidOver } from "../../src/document/effective.ts";
import { LIMITS } from "../../src/document/limits.ts";
import { keepBeside, planNamed, takeOver } from "../../src/document/plan-edits.ts";
import { recordNames, renameRecord } from "../../src/document/record-names.ts";
import { sameData } from "../../src/document/same.ts";
import type { Worksheet } from "../../src/document/worksheet.ts";
import { tries } from "../tries.ts";
import { anyEdit, type Edit } from "./any-edit.ts";
import { fixture, isDeeplyFrozen, ROLES } from "./made-up.ts";

const edits = fc.array(anyEdit, { maxLength: 12 });
const edited = (sheet: Worksheet, row: readonly Edit[]): Worksheet =>
  row.reduce((at, edit) => edit(at), sheet);
const ids = (sheet: Worksheet) => sheet.cards.map(({ id }) => id);
const runs = { numRuns: tries(500) };

/** The same sheet with the other's rain record, which no plan carries. */
const withRecordOf = (sheet: Worksheet, other: Worksheet): Worksheet => {
  const [mine, theirs] = [recordNames(sheet)[0], recordNames(other)[0]];
  const weather = other.cards.find(({ id }) => id === "weather")?.givens.record ?? null;
  return mine === undefined || theirs === undefined
    ? setGiven(sheet, "weather", "record", weather)
    : renameRecord(sheet, mine, theirs);
};
const sorted = (sheet: Worksheet) => [...sheet.cards].sort((a, b) => (a.id < b.id ? -1 : 1));

describe("plans of random sheets", () => {
  test("what differs between two sheets, laid over the first, is the second", () => {
    fc.assert(
      fc.property(edits, edits, (first, more) => {
        const one = edited(fixture(), first);
        const two = withRecordOf(edited(one, more), one);
        const laid = laidOver(one, differences(one, two, ROLES), ROLES);
        expect(sorted(laid.worksheet)).toEqual(sorted(two));
        expect(laid.left).toEqual([]);
        expect(isDeeplyFrozen(laid.worksheet)).toBe(true);
      }),
      runs,
    );
  });

  test("keeping beside gives the held sheet back, with a plan that is what was turned", () => {
    fc.assert(
      fc.property(edits, edits, (first, more) => {
        const held = edited(fixture(), first);
        const turned = edited(held, more);
        const kept = keepBeside(turned, held, "kept", ROLES);
        if (kept === turned) return;
        expect(sorted(kept)).toEqual(sorted(withRecordOf(held, turned)));
        const plan = kept.plans?.at(-1);
        expect(plan && sorted(effective(kept, plan, ROLES))).toEqual(sorted(turned));
      }),
      runs,
    );
  });

  test("taken over and back is the same sheet, in the same order", () => {
    fc.assert(
      fc.property(edits, edits, fc.nat(), (first, more, pick) => {
        const held = edited(fixture(), first);
        const sheet = keepBeside(edited(held, more), held, "kept", ROLES);
        const plan = sheet.plans?.[pick % (sheet.plans.length || 1)];
        if (!plan) return;
        const over = takeOver(sheet, plan.name, "back", ROLES);
        const home = planNamed(over, over.plans?.[sheet.plans?.indexOf(plan) ?? 0]?.name ?? "");
        const back = takeOver(over, home?.name ?? "", plan.name, ROLES);
        expect(back.cards).toEqual(sheet.cards);
        expect(back.plans?.map(({ name }) => name)).toEqual(sheet.plans?.map(({ name }) => name));
        const again = planNamed(back, plan.name);
        expect(again && effective(back, again, ROLES).cards).toEqual(effective(sheet, plan, ROLES).cards);
      }),
      runs,
    );
  });

  test("a correction to the sheet shows in every plan that did not change it", () => {
    const where = fc.tuple(fc.nat(), fc.constantFrom("capacity", "footprint", "note"), fc.integer());
    fc.assert(
      fc.property(edits, where, (row, [pick, given, value]) => {
        const sheet = edited(fixture(), row);
        const card = sheet.cards[pick % sheet.cards.length];
        const entry = { value, unit: "" };
        if (!card) return;
        const corrected = setGiven(sheet, card.id, given, entry);
        for (const plan of corrected.plans ?? []) {
          const own =
            plan.removed.includes(card.id) ||
            plan.added.some(({ id }) => id === card.id) ||
            plan.changes.some((change) => change.card === card.id && change.row === given);
          const shown = effective(corrected, plan, ROLES).cards.find(({ id }) => id === card.id);
          if (!own) expect(shown?.givens[given]).toEqual(entry);
        }
      }),
      runs,
    );
  });

  test("a plan of a card that is gone says so, and else counts as before", () => {
    fc.assert(
      fc.property(edits, fc.nat(), (row, pick) => {
        const sheet = edited(fixture(), row);
        const names = ids(sheet).filter((id) => !["site", "weather", "season", "cost"].includes(id));
        const gone = names[pick % (names.length || 1)];
        if (gone === undefined) return;
        const without = removeCard(sheet, gone, ROLES);
        (without.plans ?? []).forEach((plan, at) => {
          const said = laidOver(without, plan, ROLES).left.some(({ card }) => card === gone);
          const before = sheet.plans?.[at];
          const changes = before?.changes.some(
            ({ card, row: given }) => card === gone && !(card === "weather" && given === "record"),
          );
          const brings = plan.added.some(({ id }) => id === gone);
          expect(said).toBe(changes === true && !brings);
        });
      }),
      runs,
    );
  });

  test("a plan never makes a worksheet that cannot be kept", () => {
    fc.assert(
      fc.property(edits, (row) => {
        const sheet = edited(fixture(), row);
        for (const plan of sheet.plans ?? []) {
          const laid = effective(sheet, plan, ROLES);
          expect(laid.cards.length).toBeLessThanOrEqual(LIMITS.cards);
          expect(new Set(ids(laid)).size).toBe(laid.cards.length);
          expect(sameData(recordNames(laid), recordNames(sheet))).toBe(true);
        }
      }),
      runs,
    );
  });
});
