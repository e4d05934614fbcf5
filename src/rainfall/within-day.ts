// What the rows of a file are: a day's own amounts, amounts within a day to add, a total that runs, or a counter.
// Told by the header, proven by the amounts themselves, or asked.
import { type Choices, type Question, Refusal, type RowsTold } from "./import-result.ts";
import { type Group, groupsOf, type Series } from "./row-series.ts";
import { fallsAnywhere, type Pattern, patternOf, type Steps, stepsOf } from "./running-pattern.ts";

export type Rows = NonNullable<Choices["within_day"]>;

export type RowsFound = {
  readonly reading: Rows;
  readonly pattern: Pattern;
  /** Other readings that the file allows, the likeliest first; empty where it is told or proven. */
  readonly open: readonly Rows[];
  /** A row for each moment at which something fell, and none where nothing did. */
  readonly isEventLog: boolean;
};

/** Days of which two rows are borne as one that stands twice: one day, or this share. */
const OCCASIONAL = 0.05;

const MIDNIGHT: Pattern = { period: "day", minute: 0, monthDay: 0, exact: true };
const NEVER: Pattern = { period: "never", minute: 0, monthDay: 0, exact: true };

type Facts = {
  readonly steps: Steps;
  readonly timed: boolean;
  /** Days with more than one row are more than a slip. */
  readonly many: boolean;
  readonly pattern: Pattern | null;
  readonly sorted: boolean;
};

/** Whether more rows stand on a day than the odd day that stands twice. */
export function isMany(groups: readonly Group[]): boolean {
  let [several, most] = [0, 1];
  for (const { from, to } of groups) {
    if (to - from > 1) several++;
    most = Math.max(most, to - from);
  }
  return most > 2 || several > Math.max(1, groups.length * OCCASIONAL);
}

function factsOf(series: Series): Facts {
  const groups = groupsOf(series);
  const steps = stepsOf(series, groups);
  const timed = series.minute.every((minute) => minute >= 0);
  const many = isMany(groups);
  return { steps, timed, many, pattern: patternOf(steps, many, timed), sorted: series.sorted };
}

/** The reading that a pattern is called. */
const named = (pattern: Pattern): Rows => (pattern.period === "day" ? "running_total" : "counter");

function likeliest({ many, pattern, timed, sorted }: Facts): readonly Rows[] {
  if (pattern) return [named(pattern), many ? "sum" : "day"];
  if (timed) return ["sum", "running_total"];
  return sorted ? ["sum", "running_total", "day"] : ["day", "sum"];
}

/** What the header says, where the amounts do not speak against it. */
function toldReading(told: RowsTold, { steps, many, pattern }: Facts): Rows | null {
  if (told === "day" || told === "sum") return told;
  if (told === "total" || told === "counter") {
    if (pattern) return named(pattern);
    return steps.falls + steps.slight === 0 ? "counter" : null;
  }
  if (told !== "running_total" || !many) return null;
  const isConstant = steps.riseDays === 0;
  return pattern || isConstant || !fallsAnywhere(steps) ? told : null;
}

function settledReading(told: RowsTold, facts: Facts): Rows | null {
  const { steps, timed, many, pattern } = facts;
  const byHeader = toldReading(told, facts);
  if (byHeader) return byHeader;
  if (steps.positive === 0) return many ? "sum" : "day";
  if (pattern || told === "counter") return null;
  if (!many) return timed ? "sum" : "day";
  return timed && told === null && fallsAnywhere(steps) ? "sum" : null;
}

/** What the rows are, and what else they could be. */
export function rowsOf(series: Series, told: RowsTold, chosen: Rows | undefined): RowsFound {
  const facts = factsOf(series);
  const { pattern, steps, many } = facts;
  if (told === "window" && many && !chosen)
    throw new Refusal(
      "Its header says a total over the hours before, yet rows stand closer than that: each rain is told many times.",
      null,
    );
  const isEventLog = many && steps.zeros === 0;
  const fallback = (reading: Rows): Pattern => pattern ?? (reading === "counter" ? NEVER : MIDNIGHT);
  const settled = settledReading(told, facts);
  if (told === "counter" && !settled && !chosen)
    throw new Refusal(
      "Its header says a total of the month or the year, yet it goes up and down like amounts.",
      null,
    );
  if (settled && !chosen) return { reading: settled, pattern: fallback(settled), open: [], isEventLog };
  const open = settled ? [] : likeliest(facts);
  const reading = chosen ?? open[0] ?? "day";
  return { reading, pattern: fallback(reading), open, isEventLog };
}

const LABELS: Readonly<Record<Rows, string>> = {
  day: "each row is its whole day: of a day that stands twice the later row counts",
  sum: "each row is what fell since the row before: they are added",
  running_total: "each row is the total of the day so far",
  counter: "each row is what a counter shows, over a month, a year or longer",
};

/** Asks what the rows are; the yearly rain of each is filled in once it is known. */
export function rowsQuestion(open: readonly Rows[], yearly: (reading: Rows) => number | null): Question {
  return {
    id: "within_day",
    text: "What does each row of rain say?",
    options: open.map((value) => ({ value, label: LABELS[value], yearly: yearly(value) })),
    likely: open[0] ?? null,
  };
}
