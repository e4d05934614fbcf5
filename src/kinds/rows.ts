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
import { GRAVITY } from "../units/constants.ts";
import type { MeasureName } from "../units/measures.ts";
import type { Use, WantingLink } from "./kind.ts";
import { limitsOf, measuredWithin } from "./limits.ts";

/** Standard acceleration of gravity, as formula texts have it. */
export const STANDARD_GRAVITY = `${GRAVITY} m/s2`;

type Optional<T, Fixed extends keyof T> = Partial<Omit<T, Fixed>>;

/** A number the user gives, with its usual value. */
export function given(
  name: string,
  label: string,
  measure: MeasureName,
  usual: Default,
  more: Optional<NumberGiven, "row" | "name"> = {},
): NumberGiven {
  return { row: "given", name, label, measure, default: usual, ...limitsOf(measure), ...more };
}

/** One word out of a few. */
export function choice(
  name: string,
  label: string,
  options: Readonly<Record<string, string>>,
  usual: string,
  more: Optional<ChoiceGiven, "row" | "name"> = {},
): ChoiceGiven {
  const listed = Object.entries(options).map(([word, text]) => ({ word, label: text }));
  return { row: "choice", name, label, options: listed, default: usual, ...more };
}

/** A link to one card of a kind that has that use; which kinds these are is known when all of them are. */
export function link(name: string, label: string, wants: Use, absent: string): WantingLink {
  return { row: "link", name, label, wants, kinds: [], many: false, absent };
}

/** An ordered list of links. */
export function links(name: string, label: string, wants: Use, absent: string): WantingLink {
  return { ...link(name, label, wants, absent), many: true };
}

/** Free text. */
export function text(
  name: string,
  label: string,
  usual: string,
  more: Optional<TextGiven, "row"> = {},
): TextGiven {
  return { row: "text", name, label, default: usual, ...more };
}

/** A date, `MM-DD` or `YYYY-MM-DD`. */
export function date(
  name: string,
  label: string,
  form: DateGiven["form"],
  usual: string | null,
  absent?: string,
): DateGiven {
  return {
    row: "date",
    name,
    label,
    form,
    default: usual,
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
  absent?: string,
): ListGiven {
  return {
    row: "list",
    of: "months",
    name,
    label,
    measures: [measure],
    limits: [limitsOf(measure)],
    default: usual,
    unit,
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
  more: Optional<FormulaRow, "row" | "name"> = {},
): FormulaRow {
  return {
    row: "formula",
    name,
    label,
    measure,
    formula: relation,
    ...more,
    ...measuredWithin(measure, more),
  };
}

/** A number that one of the card's models, or a worksheet-wide one, works out. */
export function output(
  name: string,
  label: string,
  of: string,
  measure: OutputRow["measure"],
  more: Optional<OutputRow, "row" | "name"> = {},
): OutputRow {
  return { row: "output", name, label, of, measure, ...more, ...measuredWithin(measure, more) };
}

/** An output that only other rows, models, charts or the drawing read. */
export function hidden(
  name: string,
  label: string,
  of: string,
  measure: OutputRow["measure"],
  more: Optional<OutputRow, "row" | "name"> = {},
): OutputRow {
  return output(name, label, of, measure, { ...more, hidden: true });
}

/** What every card that points here brings, put together. */
export function gather(
  name: string,
  label: string,
  measure: GatherRow["measure"],
  from: { readonly kind: string; readonly by: string; readonly take: string; readonly how: GatherRow["how"] },
  more: Optional<GatherRow, "row" | "name"> = {},
): GatherRow {
  return { row: "gather", name, label, measure, ...from, ...more };
}

/** The same of the cards of a kind that point here by a link, for other rows, models or charts alone to read. */
export const hiddenFrom =
  (kind: string, by: string) =>
  (name: string, label: string, measure: GatherRow["measure"], take: string, how: GatherRow["how"]) =>
    gather(name, label, measure, { kind, by, take, how }, { hidden: true });

/** What the thing cost and how long it lasts; both may stay empty. */
export const COSTS: readonly NumberGiven[] = [
  given("price", "Price", "money", null, {
    absent: "no price given",
    stored: "card",
    minor: true,
  }),
  given("life", "Lasts", "span", null, {
    absent: "no life given",
    stored: "card",
    minor: true,
  }),
];
