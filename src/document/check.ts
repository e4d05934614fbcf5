// Whatever claims to be a worksheet, read: a deeply frozen worksheet, or the places that are wrong. Never a throw.
// Wrong ids, unknown kinds and dead links pass: the graph reports them where they stand, with the rest still answered.

import type * as z from "zod/mini";
import { frozen } from "./freeze.ts";
import { lenientCard, lenientSheet } from "./lenient.ts";
import { LIMITS } from "./limits.ts";
import { migrate } from "./migrate.ts";
import {
  FORBIDDEN_NAMES,
  isPlainObject,
  type Plain,
  type PlainObject,
  pathOf,
  plainCopy,
  type ReadProblem,
} from "./plain.ts";
import { cardShape, sheetShape } from "./shape.ts";
import { placeInText } from "./text-place.ts";
import { type Card, CURRENT_VERSION, type Worksheet } from "./worksheet.ts";

export type WorksheetReading =
  | {
      readonly ok: true;
      readonly worksheet: Worksheet;
      /** Written by a newer version: shown whole, not to be edited or saved over. */
      readonly readOnly: boolean;
      readonly notes: readonly string[];
    }
  | { readonly ok: false; readonly problems: readonly ReadProblem[] };

/** Cards whose inside could not be read at all are kept under this key of the worksheet, and go back out on saving. */
export const SET_ASIDE = "set_aside";

type Issue = z.core.$ZodIssue;

const EXPECTED: Readonly<Record<string, string>> = {
  string: "a text",
  number: "a number",
  int: "a whole number",
  array: "a list",
  object: "a group of named values",
  record: "a group of named values",
  null: "nothing",
};

function issueText(issue: Issue): string {
  switch (issue.code) {
    case "invalid_type":
      return `Here should be ${EXPECTED[issue.expected] ?? issue.expected}.`;
    case "too_big":
      return `This is too long: at most ${issue.maximum}.`;
    case "too_small":
      return `This is too small: at least ${issue.minimum}.`;
    case "invalid_value":
      return `Here should be one of: ${issue.values.map(String).join(", ")}.`;
    case "invalid_format":
      return "This text is not written as it should be.";
    case "invalid_union":
      return "Here should be a number, a text, or a list of them.";
    default:
      return "This cannot be read.";
  }
}

function problemsOf(issues: readonly Issue[], under: readonly PropertyKey[]): ReadProblem[] {
  return issues.map((issue) => ({ path: pathOf([...under, ...issue.path]), message: issueText(issue) }));
}

type ReadCards = { readonly cards: Card[]; readonly aside: Plain[]; readonly notes: string[] };

function nameOfCard(card: Plain): string {
  const name = isPlainObject(card) ? (card.title ?? card.id) : null;
  return typeof name === "string" && name !== "" ? ` ("${name.slice(0, LIMITS.id)}")` : "";
}

function readCards(list: readonly Plain[]): ReadCards {
  const read: ReadCards = { cards: [], aside: [], notes: [] };
  list.forEach((given, index) => {
    const checked = cardShape.safeParse(lenientCard(given));
    if (checked.success) {
      const card = checked.data;
      read.cards.push(card.title === "" ? { ...card, title: card.id } : card);
      return;
    }
    const first = problemsOf(checked.error.issues, ["cards", index])[0];
    read.aside.push(given);
    read.notes.push(
      `Card ${index + 1}${nameOfCard(given)} was set aside. ${first ? `${first.path}: ${first.message}` : ""}`.trim(),
    );
  });
  return read;
}

function cardsOf(worksheet: PlainObject): readonly Plain[] | ReadProblem {
  const cards = worksheet.cards;
  if (!Array.isArray(cards)) return { path: "cards", message: "A worksheet has a list of cards." };
  if (cards.length > LIMITS.cards) {
    return {
      path: "cards",
      message: `A worksheet holds at most ${LIMITS.cards} cards; this has ${cards.length}.`,
    };
  }
  return cards;
}

/** Ids and kinds become names of things looked up: one that reaches into the objects themselves is refused. */
function forbiddenName(list: readonly Plain[]): ReadProblem | null {
  for (const [index, card] of list.entries()) {
    if (!isPlainObject(card)) continue;
    for (const key of ["id", "kind"] as const) {
      const name = card[key];
      if (typeof name === "string" && FORBIDDEN_NAMES.has(name))
        return { path: pathOf(["cards", index, key]), message: `The name "${name}" is not allowed.` };
    }
  }
  return null;
}

function assemble(worksheet: PlainObject, newer: boolean, earlier: readonly string[]): WorksheetReading {
  const list = cardsOf(worksheet);
  if ("path" in list) return { ok: false, problems: [list] };
  const forbidden = forbiddenName(list);
  if (forbidden) return { ok: false, problems: [forbidden] };
  const { cards: _cards, ...rest } = worksheet;
  const sheet = sheetShape.safeParse(lenientSheet(rest));
  if (!sheet.success) return { ok: false, problems: problemsOf(sheet.error.issues, []) };
  const { cards, aside, notes } = readCards(list);
  const before = worksheet[SET_ASIDE];
  const kept = [...(Array.isArray(before) ? before : []), ...aside];
  const whole = { ...sheet.data, cards, ...(kept.length > 0 ? { [SET_ASIDE]: kept } : {}) };
  const newerNotes = newer
    ? [
        `This worksheet was written by a newer version (${sheet.data.version}; this one knows ${CURRENT_VERSION}). ` +
          "It can be read here, not changed.",
      ]
    : [];
  return {
    ok: true,
    worksheet: frozen(whole),
    readOnly: newer,
    notes: [...earlier, ...newerNotes, ...notes],
  };
}

/**
 * Reads data that should be a worksheet of this or an earlier or later version.
 *
 * @param data anything, from a file, a link, a save
 * @returns the worksheet, deeply frozen, with notes on what was put right; or every place that is wrong
 */
export function readWorksheet(data: unknown): WorksheetReading {
  const plain = plainCopy(data);
  if (!plain.ok) return { ok: false, problems: [plain.problem] };
  const migrated = migrate(plain.value);
  if (!migrated.ok) return { ok: false, problems: [migrated.problem] };
  return assemble(migrated.worksheet, migrated.newer, migrated.notes);
}

/**
 * Reads the JSON text of a worksheet.
 *
 * @param text JSON text
 * @returns as readWorksheet; a slip in the JSON is told with its line and column
 */
export function readWorksheetText(text: string): WorksheetReading {
  const parsed = parseJson(text);
  return parsed.ok ? readWorksheet(parsed.data) : { ok: false, problems: [parsed.problem] };
}

/** JSON text to data, or the line and column at which it stops being JSON. */
export function parseJson(
  text: string,
  longest: number = LIMITS.characters,
): { readonly ok: true; readonly data: unknown } | { readonly ok: false; readonly problem: ReadProblem } {
  if (text.length > longest) {
    return { ok: false, problem: { path: "", message: `This text is longer than ${longest} characters.` } };
  }
  // Editors on some systems begin a file with this invisible mark.
  const bare = text.startsWith("\uFEFF") ? text.slice(1) : text;
  try {
    return { ok: true, data: JSON.parse(bare) };
  } catch {
    const place = placeInText(bare);
    const path = `line ${place.line}, column ${place.column}`;
    return { ok: false, problem: { path, message: `This is no JSON: ${place.what}` } };
  }
}
