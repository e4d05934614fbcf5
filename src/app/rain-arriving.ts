// A record that is on its way in: joined and filled as asked, and what the page shows of it before it is taken.

import { FILLED, fillGaps, type GapFilling } from "../rainfall/fill-gaps.ts";
import { DRIER, doubtsOf, factsOf, fewYearsFact, isStretched } from "../rainfall/import-facts.ts";
import type {
  Choices,
  ImportReport,
  ImportResult,
  Question,
  RainFigures,
} from "../rainfall/import-result.ts";
import { joinRecords } from "../rainfall/join-records.ts";
import type { GaugeResult } from "../rainfall/own-gauge.ts";
import { rainFigures } from "../rainfall/rain-figures.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { gapsOf } from "../rainfall/record-gaps.ts";
import { wholeDays } from "../telling/words/lists.ts";
import type { RainAssumption, RainOpen, RainPreview, RainTold } from "../ui/dialogs/rain-import.ts";
import { isoDate } from "../units/calendar.ts";
import { DAYS_A_YEAR } from "../units/constants.ts";
import { type ShowOptions, showQuantity } from "../units/show.ts";
import { stripOf } from "./rain-strip.ts";
import { answeredOf, assumptionsOf } from "./rain-words.ts";

/** What is being brought in, before it is taken. */
export type Arriving = {
  readonly record: DailyRecord | null;
  readonly facts: readonly string[];
  readonly assumptions: readonly RainAssumption[];
  /** What stands in its way: no answer to it is likely. */
  readonly questions: readonly Question[];
  /** All that it leaves open, answered or taken at its likeliest. */
  readonly open: readonly Question[];
  /** The answers in force. */
  readonly answers: Choices;
  readonly table: ImportReport["preview"];
  readonly taken: readonly boolean[];
};

export type Words = { readonly fill: string; readonly warm: string; readonly join: string };

/** Nothing filled, nothing joined. */
export const AS_IT_IS: Words = { fill: "missing", warm: "missing", join: "alone" };
const MOST_GAPS = 30;
const SHOWN_ROWS = 3;
const NO_TABLE = { header: [], rows: [] } as const;

function joined(record: DailyRecord, join: string, others: readonly DailyRecord[]) {
  const [first, key = ""] = join.split("|");
  const other = others.find((candidate) => candidate.key === key);
  if (!other) return { record, facts: [] };
  const made = first === "new" ? joinRecords(record, other) : joinRecords(other, record);
  const facts = [
    `Joined with ${other.title}: ${wholeDays(made.bothDays)} in both, ${made.differingDays} of them different, ${wholeDays(made.daysBetween)} between the two.`,
  ];
  return { record: made.record, facts };
}

function fillingOf(fill: string, others: readonly DailyRecord[]): GapFilling {
  if (fill === "zero" || fill === "month_mean" || fill === "made_up") return { kind: fill };
  const other = others.find((candidate) => candidate.key === fill);
  return other ? { kind: "record", other } : { kind: "missing" };
}

/** The record as it would be taken: joined, then filled, each only as asked. */
export function settled(record: DailyRecord, words: Words, others: readonly DailyRecord[]) {
  const whole = joined(record, words.join, others);
  const fillings = [
    { by: words.fill, which: FILLED.rain },
    { by: words.warm, which: FILLED.drying },
  ].filter(({ by }) => by !== "missing");
  return fillings.reduce(({ record: before, facts }, { by, which }) => {
    const filled = fillGaps(before, fillingOf(by, others), null, which);
    return { record: filled.record, facts: [...facts, `${filled.note}; ${filled.left} stay missing.`] };
  }, whole);
}

function fillChoice(words: Words, others: readonly DailyRecord[]): RainAssumption {
  return {
    id: "fill",
    text: "Missing days",
    value: words.fill,
    options: [
      { value: "missing", label: "stay missing" },
      { value: "zero", label: "had no rain" },
      { value: "month_mean", label: "get their month's mean" },
      { value: "made_up", label: "are made up after the record's own months" },
      ...others.map(({ key, title }) => ({ value: key, label: `come from ${title}` })),
    ],
  };
}

function warmChoice(words: Words, others: readonly DailyRecord[]): RainAssumption {
  return {
    id: "warm",
    text: "Days without warmth",
    value: words.warm,
    options: [
      { value: "missing", label: "go by the monthly warm and cold figures" },
      { value: "month_mean", label: "get their month's mean in this record" },
      ...others
        .filter(({ highest, lowest }) => highest && lowest)
        .map(({ key, title }) => ({ value: key, label: `come from ${title}` })),
    ],
  };
}

function joinChoice(words: Words, others: readonly DailyRecord[]): RainAssumption | null {
  if (others.length === 0) return null;
  return {
    id: "join",
    text: "This record",
    value: words.join,
    options: [
      { value: "alone", label: "stands alone" },
      ...others.flatMap(({ key, title }) => [
        { value: `new|${key}`, label: `goes before ${title} where both have a day` },
        { value: `old|${key}`, label: `only fills what ${title} lacks` },
      ]),
    ],
  };
}

const USED = /^(date|rain|year|month|day|day of the year|time of day)$/;

/** What came out of a file, or null where it was refused. */
export function fromFile(
  result: ImportResult,
  choices: Choices,
  asked: readonly Question[],
): Arriving | null {
  if (result.state === "refused") return null;
  const { report } = result;
  return {
    record: result.state === "ready" ? result.record : null,
    facts: factsOf(report),
    assumptions: assumptionsOf(report, choices, asked),
    questions: result.state === "ask" ? result.questions : [],
    open: report.open,
    answers: choices,
    table: report.preview,
    taken: report.columns.map(({ use }) => USED.test(use)),
  };
}

/** What came out of typed readings, or null where they were refused. */
export function fromGauge(
  result: GaugeResult,
  choices: Choices,
  asked: readonly Question[],
): Arriving | null {
  if (result.state === "refused") return null;
  const isReady = result.state === "ready";
  return {
    record: isReady ? result.record : null,
    facts: isReady
      ? [`${result.readings} readings of your own gauge, ${result.traces} of them traces.`, ...result.notes]
      : [],
    assumptions: answeredOf(choices, asked),
    questions: isReady ? [] : result.questions,
    open: [],
    answers: choices,
    table: NO_TABLE,
    taken: [],
  };
}

function leadOf(figures: RainFigures): string {
  if (isStretched(figures)) return `Stretched from ${wholeDays(figures.days)}, a year would come to`;
  return figures.isDoubtful ? "A usual year: is that so?" : "A usual year comes to";
}

function toldOf(record: DailyRecord, options: ShowOptions): RainTold | null {
  const figures = rainFigures(record);
  const { meanYear, days, wetDays, wettestRain, wettestDay } = figures;
  if (meanYear === null) return null;
  const shown = (metres: number): string => showQuantity(metres, "rain", options);
  const few = fewYearsFact(figures);
  const wet = isStretched(figures)
    ? `${Math.round((wetDays * days) / DAYS_A_YEAR)} of them wet`
    : `${Math.round(wetDays)} wet days a year`;
  return {
    yearly: shown(meanYear),
    lead: leadOf(figures),
    wet: `${wet}; wettest day ${shown(wettestRain)}, ${isoDate(wettestDay)}`,
    doubts: doubtsOf(figures),
    few,
    drier: few ? DRIER.map(({ name, share }) => ({ name, yearly: shown(meanYear * share) })) : [],
  };
}

function openOf({ open, questions, answers }: Arriving, options: ShowOptions): readonly RainOpen[] {
  const said: Readonly<Record<string, unknown>> = answers;
  return open
    .filter(({ id }) => !questions.some((question) => question.id === id))
    .map(({ id, text, options: all }) => ({
      id,
      text,
      value: String(said[id] ?? ""),
      options: all.map(({ value, label, yearly }) => ({
        value,
        label,
        yearly: yearly == null ? "" : showQuantity(yearly, "rain", options),
      })),
    }));
}

/** What the page shows of it. */
export function previewOf(
  arriving: Arriving,
  words: Words,
  others: readonly DailyRecord[],
  options: ShowOptions,
): RainPreview {
  const { record, facts, assumptions, table, taken } = arriving;
  const open = openOf(arriving, options);
  const { header } = table;
  const rows = table.rows.slice(0, SHOWN_ROWS);
  const bare = { title: "", wrong: "", header, rows, taken, open, facts, assumptions };
  if (!record)
    return { ...bare, told: null, years: [], gaps: [], filling: null, warming: null, joining: null };
  const outcome = settled(record, words, others);
  const { rain, highest, lowest } = joined(record, words.join, others).record;
  const isCold = highest?.some(Number.isNaN) || lowest?.some(Number.isNaN);
  return {
    ...bare,
    title: outcome.record.title,
    told: toldOf(outcome.record, options),
    facts: [...facts, ...outcome.facts],
    years: stripOf(outcome.record, options),
    gaps: gapsOf(outcome.record).slice(0, MOST_GAPS),
    filling: rain.some(Number.isNaN) ? fillChoice(words, others) : null,
    warming: isCold ? warmChoice(words, others) : null,
    joining: joinChoice(words, others),
  };
}
