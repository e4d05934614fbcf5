// `--work-back NAME --until "ANSWER<=VALUE"`: the wish as it was typed, and what the number must be for it.

import type { Worksheet } from "../document/worksheet.ts";
import { numberIn } from "../graph/readers.ts";
import type { CardKinds, NumberGiven } from "../graph/types.ts";
import { type Base, rebased } from "../studies/ask.ts";
import { scaleOf } from "../studies/scale.ts";
import { sheetToTry } from "../studies/try.ts";
import { tryOne } from "../studies/try-one.ts";
import { type Met, type Wish, workBack } from "../studies/work-back.ts";
import { unitFor } from "../units/show.ts";
import { fromSi, toSi } from "../units/unit.ts";
import { changeTo, findRow, quantityEntry } from "./set-value.ts";
import { UsageError } from "./usage.ts";

/** `--work-back`, with `--until` as it was typed. */
export type WorkingBack = { readonly name: string; readonly until: string };

type Told = {
  readonly value: number;
  readonly shown: string;
  readonly answer: number;
  readonly answer_shown: string;
};

export type WorkedBackReport = {
  readonly state: "found" | "already" | "never";
  readonly value: number | null;
  readonly unit: string;
  readonly shown: string;
  /** Further values at which it comes to be met. */
  readonly others: readonly Told[];
  /** The answer at the value that is told; where it is never met, the best there is. */
  readonly answer: number | null;
  readonly answer_shown: string;
  /** Never, as the number moves nothing. */
  readonly still?: true;
};

const WISH = /^\s*([a-z][a-z0-9_]*\.[a-z][a-z0-9_]*)\s*(<=|>=)\s*(.+)$/;

function wishOf(
  worksheet: Worksheet,
  kinds: CardKinds,
  until: string,
): { readonly id: string; readonly wish: Wish } {
  const [, id = "", sign, text = ""] = WISH.exec(until) ?? [];
  if (!id) throw new UsageError(`--until wants NAME<=VALUE or NAME>=VALUE, not "${until}".`);
  const { row } = findRow(worksheet, kinds, id);
  if (!("measure" in row) || row.measure === undefined || row.measure === "text" || row.measure === "series")
    throw new UsageError(`--until wants a number; ${id} is none.`);
  const { value, unit } = quantityEntry(id, text, row.measure, worksheet.currency);
  return { id, wish: { sense: sign === "<=" ? "at most" : "at least", target: toSi(value, unit) } };
}

function numberRow(worksheet: Worksheet, kinds: CardKinds, name: string): NumberGiven {
  const { row } = findRow(worksheet, kinds, name);
  if (row.row !== "given") throw new UsageError(`--work-back turns a number that is given; ${name} is none.`);
  return row;
}

/** Works a number back from an answer. */
export async function workedBackReport(
  own: Base,
  kinds: CardKinds,
  { name, until }: WorkingBack,
): Promise<WorkedBackReport> {
  const { worksheet } = own;
  const row = numberRow(worksheet, kinds, name);
  const { id, wish } = wishOf(worksheet, kinds, until);
  const unit = unitFor(row.measure, worksheet.units);
  const typed = (value: number) => `${value} ${unit === "1" ? "" : unit}`.trim();
  const trialAt = (value: number) => ({
    change: changeTo(worksheet, kinds, name, typed(value)),
    value: toSi(value, unit),
  });
  const now = numberIn(own.whole.results.get(name));
  if (now === null) throw new UsageError(`${name} has no value to begin from.`);
  const present = fromSi(now, unit);
  const sheet = sheetToTry(worksheet, kinds, row, trialAt(present));
  const base = sheet === worksheet ? own : rebased(own, sheet);
  const options = { units: worksheet.units, locale: "en-US", currency: worksheet.currency };
  const at = (value: number) => tryOne(base, trialAt(value), [id], options);
  const worked = await workBack(
    async (values) => values.map((value) => numberOrNull(at(value).answers[id])),
    scaleOf(row, unit, [now]),
    present,
    wish,
  );
  const told = ({ value, answer }: Met): Told => {
    const point = at(value);
    return { value: toSi(value, unit), shown: point.shown, answer, answer_shown: point.said[id] ?? "" };
  };
  return reportOf(worked, told, own.whole.graph.siUnitOf(name), present);
}

const numberOrNull = (value: unknown): number | null => (typeof value === "number" ? value : null);

function reportOf(
  worked: Awaited<ReturnType<typeof workBack>>,
  told: (met: Met) => Told,
  unit: string,
  present: number,
): WorkedBackReport {
  if (worked.state === "already") {
    return { state: "already", ...told({ value: present, answer: worked.answer }), unit, others: [] };
  }
  if (worked.state === "found") {
    return { state: "found", ...told(worked.nearest), unit, others: worked.others.map(told) };
  }
  const nothing = { value: null, shown: "", unit, others: [] };
  const best = worked.best && told(worked.best);
  const still = worked.still ? ({ still: true } as const) : {};
  return {
    state: "never",
    ...nothing,
    answer: best?.answer ?? null,
    answer_shown: best?.answer_shown ?? "",
    ...still,
  };
}

/** The same for reading. */
export function workedBackText({ name, until }: WorkingBack, report: WorkedBackReport): string {
  if (report.state === "already") return `${until}: already so, with ${name} at ${report.shown}.\n`;
  if (report.state === "never") {
    if (report.still) return `${until}: never, as ${name} moves nothing here (${report.answer_shown}).\n`;
    const best = report.answer_shown ? `; the best it comes to is ${report.answer_shown}` : "";
    return `${until}: never within the limits of ${name}${best}.\n`;
  }
  const others = report.others.map(({ shown, answer_shown }) => `Also at ${shown} (${answer_shown}).\n`);
  return `${until}: ${name} at ${report.shown} (${report.answer_shown}).\n${others.join("")}`;
}
