// Which column of a table holds the rain: by its name, by a unit of rain, or asked; never one that says it is something else.
import {
  isVague,
  namesCounter,
  namesHourlyRain,
  namesOther,
  namesRain,
  namesRunningTotal,
  rainUnitOf,
  temperatureEnd,
} from "./header-words.ts";
import { type Question, Refusal } from "./import-result.ts";
import type { Head } from "./intake.ts";
import { isReading, mostly, type Table } from "./table-shape.ts";

export type RainFound = {
  readonly candidates: readonly number[];
  /** The columns of the question, where the first of them is not certain to be rain. */
  readonly isOpen: boolean;
};

function byName(cells: readonly string[], free: readonly number[]): readonly number[] {
  const named = free.filter((column) => namesRain(cells[column] ?? ""));
  const running = named.filter((column) => namesRunningTotal(cells[column] ?? ""));
  if (named.length > 1 && running.length === 1) return running;
  const notHourly = named.filter((column) => !namesHourlyRain(cells[column] ?? ""));
  if (notHourly.length) return notHourly;
  if (named.length) return named;
  return free.filter((column) => namesCounter(cells[column] ?? ""));
}

function refuseOthers(cells: readonly string[], others: readonly number[]): never {
  const names = others.map((column) => `"${cells[column]?.trim()}"`).join(", ");
  throw new Refusal(
    names ? `No column is rain: ${names} is something else.` : "No column with an amount of rain is found.",
    null,
  );
}

/** Candidates for the rain, the likeliest first; where one is chosen, none need be there. */
export function rainCandidates(
  head: Head,
  table: Table,
  taken: readonly number[],
  isChosen: boolean,
): RainFound {
  const { cells, named } = table;
  const decimalComma = head.delimiter !== ",";
  const isNumeric = (column: number) => mostly(head, table, column, (cell) => isReading(cell, decimalComma));
  const free = cells.flatMap((_, column) => (taken.includes(column) ? [] : [column]));
  if (!named) {
    const candidates = free.filter(isNumeric);
    return { candidates, isOpen: candidates.length > 1 };
  }
  const found = byName(cells, free);
  if (found.length) return { candidates: found, isOpen: found.length > 1 };
  const numeric = free.filter(isNumeric);
  const could = numeric.filter(
    (column) => !namesOther(cells[column] ?? "") && temperatureEnd(cells[column] ?? "") === null,
  );
  if (!isChosen && numeric.length > 0 && could.length === 0) refuseOthers(cells, numeric);
  const withUnit = could.filter((column) => rainUnitOf(cells[column] ?? "") !== null);
  const candidates = withUnit.length ? withUnit : could;
  const isSure = candidates.length === 1 && isVague(cells[candidates[0] ?? -1] ?? "");
  return { candidates, isOpen: candidates.length > 0 && !isSure };
}

/** Asks which of the columns is the rain. */
export function columnQuestion(cells: readonly string[], candidates: readonly number[]): Question {
  const only = candidates.length === 1;
  return {
    id: "rain_column",
    text: only ? "Is this column the rain? Its name does not say so." : "Which column is the rain?",
    options: candidates.map((column) => {
      const name = cells[column]?.trim() || `column ${column + 1}`;
      return { value: name, label: name };
    }),
    likely: only ? null : (cells[candidates[0] ?? -1]?.trim() ?? null),
  };
}
