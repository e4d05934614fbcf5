// What an import found and did, in sentences: the page and the command line say the same.
import { isoDate } from "../units/calendar.ts";
import type { ImportReport, RainFigures } from "./import-result.ts";
import { UNIT_NAMES } from "./rain-units.ts";

const TOLD: Readonly<Record<string, string>> = {
  header: "as its header says",
  cells: "as its cells say",
  format: "as this kind of file always has it",
  choice: "as you said",
};

/** Days of eleven months: what leaves out a month may leave out the wet one; common practice, no source. */
const MOST_OF_A_YEAR = 330;

/** A count of days in words. */
const days = (count: number): string => `${count} ${count === 1 ? "day" : "days"}`;

function handled(report: ImportReport): string[] {
  const { absent, duplicates, multiDay, withinDay } = report;
  return [
    report.traces > 0 ? `Traces, too little to measure: ${report.traces}, taken as no rain.` : "",
    ...report.missingCodes.map(({ code, count }) => `${code} stands for a missing value, ${count} times.`),
    ...report.flagged.map(({ flag, count, done }) => `Marked ${flag} by the source, ${count}: ${done}.`),
    multiDay
      ? `Amounts read over several days: ${multiDay.totals}, over ${days(multiDay.days)}: ${multiDay.done}.`
      : "",
    duplicates
      ? `${days(duplicates.days)} stood twice, ${duplicates.differing} of them with different amounts: ${duplicates.done}.`
      : "",
    withinDay
      ? `About ${withinDay.usualRows} ${withinDay.usualRows === 1 ? "row" : "rows"} a day: ${withinDay.done}. Days with too few rows: ${withinDay.thinDays}.`
      : "",
    absent
      ? `${days(absent.days)} without a row in a file of wet days: ${absent.areDry ? "taken as dry" : "missing"}.`
      : "",
    report.sorted ? "" : "The rows were out of order and have been sorted.",
  ].filter((fact) => fact !== "");
}

/** What a report says, in sentences. */
export function factsOf(report: ImportReport): readonly string[] {
  const facts = [`${report.format.name}: ${days(report.days)} in ${report.rows} rows.`];
  if (report.firstDay !== null && report.lastDay !== null)
    facts.push(`From ${isoDate(report.firstDay)} to ${isoDate(report.lastDay)}.`);
  if (report.unit.value && report.unit.told)
    facts.push(`Rain in ${UNIT_NAMES[report.unit.value]}, ${TOLD[report.unit.told]}.`);
  facts.push(report.dayRule.text);
  facts.push(`Columns: ${report.columns.map((column) => `${column.name} (${column.use})`).join(", ")}.`);
  facts.push(report.missingDays > 0 ? `${days(report.missingDays)} missing.` : "No day is missing.");
  const part = report.years.filter((year) => year.rain === null).map((year) => year.year);
  if (part.length > 0) facts.push(`Not whole, and left out of yearly totals: ${part.join(", ")}.`);
  return [...facts, ...handled(report), ...report.notes];
}

/**
 * The figures that betray a mistake, in sentences.
 *
 * @param shown how an amount of rain [m] is shown
 */
export function figureFacts(figures: RainFigures, shown: (metres: number) => string): readonly string[] {
  const { meanYear, wholeYears, wetDays, wettestRain, wettestDay } = figures;
  if (meanYear === null) return [];
  const over =
    wholeYears === 0
      ? "by the days that were read, none of its years being whole"
      : `over ${wholeYears} whole ${wholeYears === 1 ? "year" : "years"}`;
  return [
    `Mean yearly rain ${shown(meanYear)}, ${over}.`,
    `About ${Math.round(wetDays)} wet days a year; the wettest day ${shown(wettestRain)} on ${isoDate(wettestDay)}.`,
    ...doubtsOf(figures),
  ].filter((fact) => fact !== "");
}

/** Whether the days that were read are not most of a year: a year stretched from them is not a usual one. */
export const isStretched = ({ days: read, wholeYears }: Pick<RainFigures, "days" | "wholeYears">): boolean =>
  wholeYears === 0 && read < MOST_OF_A_YEAR;

/** Why the yearly figure is in doubt, each in a sentence; none where it is not. */
export function doubtsOf(figures: RainFigures): readonly string[] {
  return [
    ...(isStretched(figures)
      ? [`${days(figures.days)} cannot tell what a year brings: is there a file of a whole year or more?`]
      : []),
    ...(figures.isDoubtful
      ? ["Few places have that: are the unit, the column and what a row says right?"]
      : []),
  ];
}

/** Beyond this many whole years a record is no longer one of few; common practice, no source. */
const FEW_YEARS = 5;

/** Whether a record of so many whole years is one of few. */
export const isFew = (wholeYears: number): boolean => wholeYears < FEW_YEARS;

/** What the drier versions are compared with. */
export const AS_IT_IS = "As it is";

/** The drier versions that stand beside a record of few years. */
export const DRIER = [
  { name: "With a quarter less rain", share: 0.75 },
  { name: "With half less rain", share: 0.5 },
] as const;

/** What a record of few years cannot tell, or empty: that less than a year tells nothing of years is said by its doubts. */
export function fewYearsFact(figures: Pick<RainFigures, "days" | "wholeYears">): string {
  const { wholeYears } = figures;
  if (!isFew(wholeYears) || isStretched(figures)) return "";
  const span = wholeYears <= 1 ? "One year" : `${wholeYears} years`;
  return `${span} cannot tell how dry it gets: look at the same record with a quarter and with half less rain too.`;
}
