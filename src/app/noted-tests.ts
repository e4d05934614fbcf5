// A bucket or a refill that was timed in season, written to the card's own entry, which is its only home.

import { setGiven, setMeasured } from "../document/edits.ts";
import { inForce } from "../document/note-order.ts";
import { sameData } from "../document/same.ts";
import type { Entry, Note, Worksheet } from "../document/worksheet.ts";
import { keepConditions } from "../graph/keep-conditions.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import { unitFor } from "../units/show.ts";
import { fromSi, toSi } from "../units/unit.ts";

type Part = "givens" | "measured";
type Written = { readonly card: string; readonly part: Part; readonly row: string; readonly entry: Entry };

const TESTS: ReadonlySet<string> = new Set(["bucket", "timed"]);
/** Digits that are kept of what is worked out. */
const DIGITS = 4;

/** Water over time, of a refill its mean, as a flow of the sheet's own unit. */
function flowOf({ value = 0, unit = "", with: time }: Note, worksheet: Worksheet): Entry | null {
  const seconds = time ? toSi(time.value, time.unit) : 0;
  if (!(seconds > 0)) return null;
  const flow = unitFor("flow", worksheet.units);
  return {
    value: Number(fromSi(toSi(value, unit) / seconds, flow).toPrecision(DIGITS)),
    unit: flow,
    from: "measured",
  };
}

/** The one line that fills a tank; null where there is none, or more than one. */
function fillingLine({ cards }: Worksheet, tank: string): string | null {
  const lines = cards.filter(({ kind, givens }) => kind === "line" && givens["to"]?.value === tank);
  return lines.length === 1 ? (lines[0]?.id ?? null) : null;
}

function entriesOf(note: Note, worksheet: Worksheet): readonly Written[] {
  const kind = worksheet.cards.find(({ id }) => id === note.where)?.kind;
  const { value, unit = "", with: time } = note;
  if (value === undefined || !time) return [];
  const seen = { from: "measured" as const };
  if (note.what === "bucket" && kind === "delivery")
    return [
      { card: note.where, part: "givens", row: "bucket_volume", entry: { value, unit, ...seen } },
      { card: note.where, part: "givens", row: "bucket_time", entry: { ...time, ...seen } },
    ];
  const line =
    note.what === "timed" ? fillingLine(worksheet, note.where) : kind === "line" ? note.where : null;
  const flow = flowOf(note, worksheet);
  return line === null || flow === null ? [] : [{ card: line, part: "measured", row: "flow", entry: flow }];
}

function written(worksheet: Worksheet, { card, part, row, entry }: Written, isThere: boolean): Worksheet {
  const set = part === "givens" ? setGiven : setMeasured;
  const next = set(worksheet, card, row, isThere ? entry : null);
  const kind = worksheet.cards.find(({ id }) => id === card)?.kind ?? "";
  const own = CARD_KINDS[kind]?.rows.find(({ name }) => name === row);
  return own ? keepConditions(next, CARD_KINDS, card, own, isThere) : next;
}

/** An entry that still is what a note wrote is taken out. */
function without(worksheet: Worksheet, one: Written): Worksheet {
  const held = worksheet.cards.find(({ id }) => id === one.card)?.[one.part][one.row];
  return held && sameData(held, one.entry) ? written(worksheet, one, false) : worksheet;
}

/**
 * The worksheet with what a note that was just written down tells of a test; taken back, the test before it stands again.
 *
 * @returns the very same where the note tells of none
 */
export function withTest(worksheet: Worksheet, note: Note): Worksheet {
  const notes = worksheet.notes ?? [];
  const told = note.undoes === undefined ? note : notes.find(({ id }) => id === note.undoes);
  if (!told || !TESTS.has(told.what)) return worksheet;
  const last = inForce(notes).findLast(({ what, where }) => what === told.what && where === told.where);
  if (last) return entriesOf(last, worksheet).reduce((sheet, one) => written(sheet, one, true), worksheet);
  return entriesOf(told, worksheet).reduce(without, worksheet);
}
