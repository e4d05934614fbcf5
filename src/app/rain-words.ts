// What an import found and did, in sentences, and what it took for granted, as choices.

import type { Choices, ImportReport, Question } from "../rainfall/import-result.ts";
import { UNIT_NAMES } from "../rainfall/rain-units.ts";
import type { RainAssumption } from "../ui/dialogs/rain-import.ts";

const listed = (words: Readonly<Record<string, string>>) =>
  Object.entries(words).map(([value, label]) => ({ value, label }));

function columnChoices(report: ImportReport, choices: Choices): RainAssumption[] {
  const options = report.columns.map(({ name }) => ({ value: name, label: name }));
  const used = (use: string): string => report.columns.find((column) => column.use === use)?.name ?? "";
  const none = { value: "", label: "none" };
  return [
    { id: "date_column", text: "Date in", value: choices.date_column ?? used("date"), options },
    { id: "rain_column", text: "Rain in", value: choices.rain_column ?? used("rain"), options },
    {
      id: "highest_column",
      text: "Highest temperature in",
      value: choices.highest_column ?? used("highest temperature of the day"),
      options: [none, ...options],
    },
    {
      id: "lowest_column",
      text: "Lowest temperature in",
      value: choices.lowest_column ?? used("lowest temperature of the day"),
      options: [none, ...options],
    },
  ];
}

const DONE: Readonly<
  Record<
    "duplicates" | "multi_day" | "within_day" | "flagged",
    { text: string; usual: string; words: Record<string, string> }
  >
> = {
  duplicates: {
    text: "Of a day that stands twice",
    usual: "keep_last",
    words: { keep_last: "take the later", keep_first: "take the earlier", sum: "add both" },
  },
  multi_day: {
    text: "An amount read over several days",
    usual: "spread",
    words: { spread: "is spread over them", last_day: "is booked on the last" },
  },
  within_day: {
    text: "Rows within a day",
    usual: "sum",
    words: {
      day: "are each a whole day",
      sum: "are added",
      running_total: "run up through the day",
      counter: "are a counter's, over longer",
    },
  },
  flagged: {
    text: "Values the source doubts",
    usual: "keep",
    words: { keep: "are kept", drop: "are dropped" },
  },
};

function handlingChoices(report: ImportReport, choices: Choices): RainAssumption[] {
  const found = {
    duplicates: report.duplicates !== null,
    multi_day: report.multiDay !== null,
    within_day: report.withinDay !== null,
    flagged: report.flagged.length > 0,
  };
  const running = report.withinDay ? { within_day: report.withinDay.reading } : {};
  return (Object.keys(DONE) as (keyof typeof DONE)[])
    .filter((id) => found[id])
    .map((id) => {
      const { text, usual, words } = DONE[id];
      const value = { [id]: usual, ...running, ...choices }[id] ?? usual;
      return { id, text, value: String(value), options: listed(words) };
    });
}

/** What was asked and has been answered, to be answered otherwise. */
export function answeredOf(choices: Choices, asked: readonly Question[]): readonly RainAssumption[] {
  return asked
    .filter((question) => question.id in choices)
    .map(({ id, text, options }) => ({
      id,
      text,
      options,
      value: String((choices as Readonly<Record<string, unknown>>)[id]),
    }));
}

/** Everything that was taken for granted, the answers to what was asked among it. */
export function assumptionsOf(
  report: ImportReport,
  choices: Choices,
  asked: readonly Question[],
): readonly RainAssumption[] {
  const shown = ["unit", "date_order", "rain_column"];
  const answered = answeredOf(
    choices,
    asked.filter(({ id }) => !shown.includes(id)),
  );
  const { unit, temperatureUnit, dayRule } = report;
  return [
    { id: "unit", text: "Rain is in", value: unit.value ?? "", options: listed(UNIT_NAMES) },
    {
      id: "date_order",
      text: "Dates such as 3/4",
      value: choices.date_order ?? "",
      options: listed({ "": "as the file shows", dmy: "day first", mdy: "month first" }),
    },
    {
      id: "day_shift",
      text: "A reading belongs to",
      value: String(choices.day_shift ?? dayRule.shift),
      options: listed({ "0": "the day it is dated", "-1": "the day before", "1": "the day after" }),
    },
    ...columnChoices(report, choices),
    ...(temperatureUnit
      ? [
          {
            id: "temperature_unit",
            text: "Temperatures are in",
            value: temperatureUnit.value,
            options: listed({ C: "Celsius", F: "Fahrenheit", tenth_C: "tenths of a degree Celsius" }),
          },
        ]
      : []),
    ...handlingChoices(report, choices),
    ...answered,
    {
      id: "missing_codes",
      text: "Further numbers that stand for missing",
      value: choices.missing_codes?.join(", ") ?? "",
      options: [],
    },
  ];
}

/** The choices after one of them was made; an emptied one goes back to what the file shows. */
export function withChoice(choices: Choices, id: string, value: string): Choices {
  const rest = Object.fromEntries(Object.entries(choices).filter(([key]) => key !== id));
  if (value.trim() === "") return rest;
  if (id === "day_shift" || id === "year") return { ...rest, [id]: Number(value) };
  if (id === "missing_codes") {
    const codes = value
      .split(/[,;\s]+/)
      .map(Number)
      .filter(Number.isFinite);
    return codes.length > 0 ? { ...rest, missing_codes: codes } : rest;
  }
  return { ...rest, [id]: value };
}
