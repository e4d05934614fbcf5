// What the command line prints: every quantity with its working and source, the cautions, the problems, what was left out.

import { cautionsOf } from "../graph/cautions.ts";
import { explain } from "../graph/explain.ts";
import { isReady, valueIn } from "../graph/readers.ts";
import { shownValue } from "../graph/shown.ts";
import type { CardKinds, Result, Value } from "../graph/types.ts";
import { KIND_WORDS } from "../kinds/words.ts";
import type { LeftOut } from "../season/input.ts";
import type { Whole } from "../studies/work-out.ts";
import type { ShowOptions } from "../units/show.ts";

export type ShownQuantity = {
  readonly value: Value;
  readonly unit: string;
  readonly shown: string;
  readonly state: Result["state"];
  readonly origin: string;
  readonly how: string;
  readonly source: string;
  readonly problem: string;
};

export type JsonReport = {
  readonly quantities: Readonly<Record<string, ShownQuantity>>;
  readonly cautions: readonly { readonly id: string; readonly card: string; readonly text: string }[];
  readonly problems: readonly { readonly at: string; readonly code: string; readonly text: string }[];
  readonly left_out: readonly LeftOut[];
};

export const optionsOf = ({ worksheet }: Whole): ShowOptions => ({
  units: worksheet.units,
  locale: "en-US",
  currency: worksheet.currency,
  rounded: true,
});

const problemOf = (result: Result): string =>
  result.state === "failed" ? result.problem.text : result.state === "none" ? result.reason : "";

function plainValue(result: Result): Value {
  const value = valueIn(result);
  return ArrayBuffer.isView(value) ? Array.from(value as Float64Array) : value;
}

type ShownId = { readonly id: string; readonly fills: boolean };

function quantity(whole: Whole, { id, fills }: ShownId, result: Result, options: ShowOptions): ShownQuantity {
  const working = explain(whole.graph, whole.worksheet, whole.results, id, options, KIND_WORDS);
  const shown = shownValue(whole.graph, whole.worksheet, whole.results, id, options);
  const how = [working.words, working.numbers].filter((part) => part !== "").join(" ");
  return {
    value: fills && isReady(result) ? shown : plainValue(result),
    unit: whole.graph.siUnitOf(id),
    shown,
    state: result.state,
    origin: result.state === "ready" ? result.origin : working.origin,
    how,
    source: working.source,
    problem: problemOf(result),
  };
}

/** Ids of every quantity that is shown, in the order of cards and rows. */
function shownIds(whole: Whole, kinds: CardKinds): readonly ShownId[] {
  return whole.worksheet.cards.flatMap((card) =>
    (kinds[card.kind]?.rows ?? [])
      .filter((row) => !row.hidden)
      .map((row) => ({ id: `${card.id}.${row.name}`, fills: "fills" in row && row.fills === true })),
  );
}

function leftOut(whole: Whole): readonly LeftOut[] {
  return (valueIn(whole.results.get("season.left_out_list")) ?? []) as readonly LeftOut[];
}

/** The whole worksheet as one object; numbers in coherent SI. */
export function jsonReport(whole: Whole, kinds: CardKinds): JsonReport {
  const options = optionsOf(whole);
  const quantities: Record<string, ShownQuantity> = {};
  for (const asked of shownIds(whole, kinds)) {
    const result = whole.results.get(asked.id);
    if (result) quantities[asked.id] = quantity(whole, asked, result, options);
  }
  return {
    quantities,
    cautions: cautionsOf(whole.graph, whole.worksheet, whole.results, options, KIND_WORDS).map(
      ({ id, card, text }) => ({
        id,
        card,
        text,
      }),
    ),
    problems: whole.results.problems.map(({ at, code, text }) => ({ at, code, text })),
    left_out: leftOut(whole),
  };
}

/** All of it for reading. */
export function fullReport(whole: Whole, kinds: CardKinds): string {
  const report = jsonReport(whole, kinds);
  const lines: string[] = [whole.worksheet.title, ""];
  for (const card of whole.worksheet.cards) {
    lines.push(`${card.title} (${card.id}, ${kinds[card.kind]?.label ?? card.kind})`);
    for (const row of kinds[card.kind]?.rows ?? []) {
      const shown = report.quantities[`${card.id}.${row.name}`];
      if (!shown) continue;
      const text = shown.state === "ready" ? shown.shown : `${shown.state}: ${shown.problem || shown.shown}`;
      lines.push(`  ${row.name.padEnd(24)} ${text}`);
    }
    lines.push("");
  }
  const add = (head: string, items: readonly string[]): void => {
    if (items.length > 0) lines.push(head, ...items.map((item) => `  ${item}`), "");
  };
  add(
    "Cautions",
    report.cautions.map((caution) => `${caution.card}: ${caution.text}`),
  );
  add(
    "Problems",
    report.problems.map((problem) => `${problem.at}: ${problem.text}`),
  );
  add(
    "Left out of the season",
    report.left_out.map((part) => `${part.id}: ${part.reason}`),
  );
  return `${lines.join("\n")}\n`;
}
