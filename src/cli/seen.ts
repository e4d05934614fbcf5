// `--today`, and levels and soaks that are `--set`: written down as notes of that day, as they are on the page.

import { noteProblem } from "../document/note-kinds.ts";
import { dayOf, NOTED_GIVENS, notedInstead, noteOfGiven, withSeen } from "../document/notes.ts";
import type { Worksheet } from "../document/worksheet.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import type { Wanted } from "./arguments.ts";
import { typedForecast } from "./forecast.ts";
import { findRow, setValue } from "./set-value.ts";
import { UsageError } from "./usage.ts";

type Set = { readonly name: string; readonly value: string };

/** A start that is a note once it is known which day it is. */
const NOTED_AS: Readonly<Record<string, string>> = { charge_today: "charge_noted" };

/** A level that cannot be is none on any day. */
const SOME_DAY = "2000-01-01";

/** Sets a value; where its home is the notes and it is known which day it is, as a note of today. */
function setOrNote(worksheet: Worksheet, { name, value }: Set): Worksheet {
  const set = setValue(worksheet, CARD_KINDS, name, value);
  const { card, row } = findRow(worksheet, CARD_KINDS, name);
  const entry = set.cards.find(({ id }) => id === card.id)?.givens[row.name];
  const day = dayOf(worksheet, null);
  const given = NOTED_AS[row.name] ?? row.name;
  if (!NOTED_GIVENS.has(given) || !entry) return set;
  const note = noteOfGiven(card.id, given, entry, day ?? SOME_DAY);
  const problem = note && noteProblem(note);
  if (problem) throw new UsageError(`${name}: ${problem.message} ("${value}")`);
  return note && day !== null ? notedInstead(worksheet, note) : set;
}

/** The worksheet with all that is set, and with what is noted of today and expected of the coming days laid over it. */
export function withSets(
  worksheet: Worksheet,
  { today, sets, fromToday }: Pick<Wanted, "today" | "sets" | "fromToday">,
): Worksheet {
  const dated = today === null ? worksheet : setValue(worksheet, CARD_KINDS, "site.today", today);
  const forecast = typedForecast(fromToday?.forecast ?? "", today ?? "");
  return withSeen(sets.reduce(setOrNote, dated), null, forecast);
}
