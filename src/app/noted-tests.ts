// A bucket or a refill that was timed in season, written to the card's own entry, which is its only home.

import { setGiven, setMeasured } from "../document/edits.ts";
import { inForce } from "../document/note-order.ts";
import { sameData } from "../document/same.ts";
import type { Card, Entry, Note, Worksheet } from "../document/worksheet.ts";
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

/** Whether water runs from such a card to that tank, by its ties. */
function fills({ kind, givens }: Card, tank: string): boolean {
  const ends = (CARD_KINDS[kind]?.season?.ties ?? []).flatMap(({ kind: tie, to }) =>
    tie === "feeds" && to !== "itself" ? to : [],
  );
  return ends.some((row) => givens[row]?.value === tank);
}

/** The card that such a test tells of: its own, or of a tank refilled the one that fills it; of several the one that is named. */
function testedCard({ cards }: Worksheet, { what, where, by }: Note): Card | undefined {
  const those = cards.filter((card) =>
    what === "timed" ? fills(card, where) && (by === undefined || card.id === by) : card.id === where,
  );
  return those.length === 1 ? those[0] : undefined;
}

function entriesOf(note: Note, worksheet: Worksheet): readonly Written[] {
  const { value, unit = "", with: time } = note;
  const card = testedCard(worksheet, note);
  const rows = card && CARD_KINDS[card.kind]?.timed;
  if (value === undefined || !time || !rows) return [];
  const seen = { from: "measured" as const };
  if ("volume" in rows)
    return [
      { card: card.id, part: "givens", row: rows.volume, entry: { value, unit, ...seen } },
      { card: card.id, part: "givens", row: rows.time, entry: { ...time, ...seen } },
    ];
  const flow = flowOf(note, worksheet);
  return flow === null ? [] : [{ card: card.id, part: "measured", row: rows.flow, entry: flow }];
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
