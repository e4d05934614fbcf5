// Any edit of a made-up worksheet, for properties that must hold whatever was done to it.
import fc from "fast-check";
import {
  addCard,
  changeId,
  copyCard,
  moveCard,
  removeCard,
  renameCard,
} from "../../src/document/card-edits.ts";
import { setGiven, setLife, setMeasured, setPrice, setWorksheet } from "../../src/document/edits.ts";
import { dropPlan, keepBeside, renamePlan, takeOver } from "../../src/document/plan-edits.ts";
import type { Worksheet } from "../../src/document/worksheet.ts";
import { anyEntry, fixture, ROLES } from "./made-up.ts";

export type Edit = (worksheet: Worksheet) => Worksheet;

const someId = fc.constantFrom(
  "site",
  "blue_tank",
  "shed_roof",
  "tank_2",
  "tank",
  "tunnel_bed",
  "spare",
  "nobody",
  "x_1",
);
const someName = fc.constantFrom("capacity", "drains_to", "watered_by", "formula", "record", "note");
const somePlan = fc.constantFrom("one", "two", "Blue tank: second barrel", "A tub instead of the hose", "");
const someTitle = fc.string({ maxLength: 12 });

export const anyEdit: fc.Arbitrary<Edit> = fc.oneof(
  fc.tuple(someId, someName, fc.option(anyEntry)).map(
    ([id, name, entry]): Edit =>
      (sheet) =>
        setGiven(sheet, id, name, entry),
  ),
  fc.tuple(someId, someName, fc.option(anyEntry)).map(
    ([id, name, entry]): Edit =>
      (sheet) =>
        setMeasured(sheet, id, name, entry),
  ),
  fc.tuple(someId, fc.option(anyEntry)).map(
    ([id, entry]): Edit =>
      (sheet) =>
        setPrice(setLife(sheet, id, entry), id, entry),
  ),
  fc.tuple(fc.constantFrom("tank", "bed", "site"), someTitle).map(
    ([kind, title]): Edit =>
      (sheet) =>
        addCard(sheet, kind, { title }),
  ),
  someId.map(
    (id): Edit =>
      (sheet) =>
        removeCard(sheet, id, ROLES),
  ),
  someId.map(
    (id): Edit =>
      (sheet) =>
        copyCard(sheet, id),
  ),
  fc.tuple(someId, someTitle).map(
    ([id, title]): Edit =>
      (sheet) =>
        renameCard(sheet, id, title),
  ),
  fc.tuple(someId, someId).map(
    ([from, to]): Edit =>
      (sheet) =>
        changeId(sheet, from, to, ROLES),
  ),
  fc.tuple(someId, fc.integer({ min: -2, max: 20 })).map(
    ([id, to]): Edit =>
      (sheet) =>
        moveCard(sheet, id, to),
  ),
  somePlan.map(
    (name): Edit =>
      (sheet) =>
        keepBeside(sheet, fixture(), name, ROLES),
  ),
  fc.tuple(somePlan, somePlan).map(
    ([name, back]): Edit =>
      (sheet) =>
        takeOver(sheet, name, back, ROLES),
  ),
  fc.tuple(somePlan, somePlan).map(
    ([from, to]): Edit =>
      (sheet) =>
        renamePlan(sheet, from, to),
  ),
  somePlan.map(
    (name): Edit =>
      (sheet) =>
        dropPlan(sheet, name),
  ),
  someTitle.map(
    (title): Edit =>
      (sheet) =>
        setWorksheet(sheet, { title }),
  ),
);
