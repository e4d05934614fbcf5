// Short ways to write the rows of a card kind, so that a card file reads as a list of quantities.

import type {
  ChoiceGiven,
  DateGiven,
  Default,
  FormulaRow,
  GatherRow,
  ListGiven,
  NumberGiven,
  OutputRow,
  TextGiven,
} from "../graph/types.ts";
import type { MeasureName } from "../units/measures.ts";
import type { Use, WantingLink } from "./kind.ts";

export const DEFINITION = "definition";
export const PRACTICE = "common practice, no source";
export const MEMORY = "from memory";
const YOURS = "your own entry";
export const RECORD = "your record";

type Optional<T, Fixed extends keyof T> = Partial<Omit<T, Fixed>>;

/** A number the user gives, with its usual value. */
export function given(
  name: string,
  label: string,
  measure: MeasureName,
  usual: Default,
  help: string,
  more: Optional<NumberGiven, "row" | "name"> = {},
): NumberGiven {
  return { row: "given", name, label, measure, default: usual, help, source: YOURS, min: 0, ...more };
}

/** One word out of a few. */
export function choice(
  name: string,
  label: string,
  options: Readonly<Record<string, string>>,
  usual: string,
  help: string,
  more: Optional<ChoiceGiven, "row" | "name"> = {},
): ChoiceGiven {
  const listed = Object.entries(options).map(([word, text]) => ({ word, label: text }));
  return { row: "choice", name, label, options: listed, default: usual, help, source: YOURS, ...more };
}

/** A link to one card of a kind that has that use; which kinds these are is known when all of them are. */
export function link(name: string, label: string, wants: Use, absent: string, help: string): WantingLink {
  return { row: "link", name, label, wants, kinds: [], many: false, absent, help, source: YOURS };
}

/** An ordered list of links. */
export function links(name: string, label: string, wants: Use, absent: string, help: string): WantingLink {
  return { ...link(name, label, wants, absent, help), many: true };
}

/** Free text. */
export function text(
  name: string,
  label: string,
  usual: string,
  help: string,
  more: Optional<TextGiven, "row"> = {},
): TextGiven {
  return { row: "text", name, label, default: usual, help, source: YOURS, ...more };
}

/** A date, `MM-DD` or `YYYY-MM-DD`. */
export function date(
  name: string,
  label: string,
  form: DateGiven["form"],
  usual: string | null,
  help: string,
  absent?: string,
): DateGiven {
  return {
    row: "date",
    name,
    label,
    form,
    default: usual,
    help,
    source: YOURS,
    ...(absent ? { absent, minor: true as const } : {}),
  };
}

/** Twelve monthly numbers. */
export function months(
  name: string,
  label: string,
  measure: MeasureName,
  usual: readonly number[] | null,
  unit: string,
  help: string,
  absent?: string,
): ListGiven {
  return {
    row: "list",
    of: "months",
    name,
    label,
    measures: [measure],
    default: usual,
    unit,
    help,
    source: YOURS,
    minor: true,
    ...(absent ? { absent } : {}),
  };
}

/** A number worked out by a formula that the reader can check with a pencil. */
export function formula(
  name: string,
  label: string,
  measure: MeasureName,
  relation: string,
  words: string,
  source: string,
  more: Optional<FormulaRow, "row" | "name"> = {},
): FormulaRow {
  return { row: "formula", name, label, measure, formula: relation, words, help: words, source, ...more };
}

/** A number that one of the card's models, or a worksheet-wide one, works out. */
export function output(
  name: string,
  label: string,
  of: string,
  measure: OutputRow["measure"],
  words: string,
  source: string,
  more: Optional<OutputRow, "row" | "name"> = {},
): OutputRow {
  return { row: "output", name, label, of, measure, words, help: words, source, ...more };
}

/** What every card that points here brings, put together. */
export function gather(
  name: string,
  label: string,
  measure: GatherRow["measure"],
  from: { readonly kind: string; readonly by: string; readonly take: string; readonly how: GatherRow["how"] },
  words: string,
  more: Optional<GatherRow, "row" | "name"> = {},
): GatherRow {
  return { row: "gather", name, label, measure, ...from, words, help: words, source: DEFINITION, ...more };
}

/** What the thing cost and how long it lasts; both may stay empty. */
export const COSTS: readonly NumberGiven[] = [
  given("price", "Price", "money", null, "What you paid, or would pay, for this part.", {
    absent: "no price given",
    stored: "card",
    minor: true,
  }),
  given("life", "Lasts", "span", null, "How long it serves before it is bought again.", {
    absent: "no life given",
    stored: "card",
    minor: true,
  }),
];
