// The command line's words, checked.

import { parseArgs } from "node:util";
import { MOST_RUNS, RUNS } from "../studies/not-sure/not-sure.ts";
import { parseIsoDate } from "../units/calendar.ts";
import type { Doubting } from "./not-sure-report.ts";
import { RAIN_HELP, RAIN_OPTIONS, type RainWanted, rainOf } from "./rain-arguments.ts";
import { UsageError } from "./usage.ts";
import type { WorkingBack } from "./work-back-report.ts";

export const HELP = `npm run -s evaluate -- WORKSHEET.json [options]

Works a worksheet out without a screen.

${RAIN_HELP}
  --set NAME=VALUE       set a given, or a measured value, e.g. --set blue_tank.capacity="500 gal"; may be repeated.
                         What is not sure is a span: "225 to 300 gal", "250 gal give or take 25".
                         A choice is its word, a link an id, a list comma-separated, a date as stored, none unfits.
                         A bare number only for counts, shares and factors; gal is the US gallon, imp gal the imperial.
  --plan NAME            lay a plan that is kept beside the sheet over it, before --rain and --set
  --try NAME=LOW..HIGH   try a given over a range, ends included: evenly, or in ratios where HIGH is 20 times LOW or more.
                         A choice is NAME=word,word; a date NAME=MM-DD..MM-DD. Needs --answer
  --answer NAME          which answer to show beside each value, or with its ends; may be repeated
  --steps N              how many values are tried (default 17)
  --work-back NAME       which value of a given number meets --until, by the whole worksheet; all of them, the nearest first
  --until "NAME<=VALUE"  the answer that is wished for, with its unit; or NAME>=VALUE
  --today YYYY-MM-DD     which day it is
  --from-today           how long the water lasts from today, what to water today and in the week, and whether to hold
                         any bed back; needs --today
  --forecast "DAY=5 mm 40 % 31 degC,..."  rain, its chance and heat of any of the next seven days, for --from-today
  --next-money AMOUNT    what to buy next: of what has a price, the things and pairs that take away most short days, best first
  --offer NAME=PRICE     the price of something that could be bought, e.g. --offer porch_roof.gutter=40; may be repeated
  --not-sure             between which ends the answers lie where numbers are not sure: those set as a span
                         (--set NAME="225 to 300 gal"), and defaults that their table gives a low and a high
  --runs N               how many times the worksheet is worked out for it (default 128; 1024 for closer shares)
  --series FILE.csv      write every day of every tank, line, draw, bed and battery of the season, in m3 and J
  --gives-out            what gives out first: the season once more for each limit set free
  --all                  the readable report with every number, by its name; with --today the year's jobs too
  --json                 one JSON object on standard output, numbers in coherent SI
  --help                 this text

Exit: 0 evaluated, 1 a file could not be read or is wrong, 2 wrong usage.
`;

export type Wanted = {
  readonly worksheet: string;
  readonly rain: RainWanted | null;
  readonly sets: readonly { readonly name: string; readonly value: string }[];
  readonly plan: string | null;
  readonly json: boolean;
  readonly all: boolean;
  readonly tried: Tried | null;
  readonly workingBack: WorkingBack | null;
  readonly givesOut: boolean;
  readonly nextMoney: string | null;
  readonly offers: readonly { readonly name: string; readonly value: string }[];
  readonly notSure: Doubting | null;
  readonly series: string | null;
  readonly today: string | null;
  readonly fromToday: FromTodayWanted | null;
};

/** `--from-today`, with its forecast as typed. */
export type FromTodayWanted = { readonly forecast: string | null };

/** `--try`, with its answers and how many values. */
export type Tried = {
  readonly name: string;
  readonly range: string;
  readonly answers: readonly string[];
  readonly steps: number;
};

const OPTIONS = {
  ...RAIN_OPTIONS,
  set: { type: "string", multiple: true },
  plan: { type: "string" },
  try: { type: "string" },
  answer: { type: "string", multiple: true },
  steps: { type: "string" },
  "work-back": { type: "string" },
  until: { type: "string" },
  "gives-out": { type: "boolean" },
  "next-money": { type: "string" },
  offer: { type: "string", multiple: true },
  "not-sure": { type: "boolean" },
  runs: { type: "string" },
  series: { type: "string" },
  today: { type: "string" },
  "from-today": { type: "boolean" },
  forecast: { type: "string" },
  json: { type: "boolean" },
  all: { type: "boolean" },
  help: { type: "boolean" },
} as const;

function parsed(words: readonly string[]) {
  try {
    return parseArgs({ args: [...words], options: OPTIONS, allowPositionals: true, strict: true });
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}

function setOf(text: string, option = "--set"): { readonly name: string; readonly value: string } {
  const at = text.indexOf("=");
  if (at < 1) throw new UsageError(`${option} wants NAME=VALUE, not "${text}".`);
  return { name: text.slice(0, at).trim(), value: text.slice(at + 1).trim() };
}

/** Of fewer runs no tenth can be told. */
const LEAST_RUNS = 16;
const USUAL_STEPS = 17;
const MOST_STEPS = 1000;

function triedOf(values: {
  readonly try?: string | undefined;
  readonly answer?: readonly string[] | undefined;
  readonly steps?: string | undefined;
  readonly "not-sure"?: boolean | undefined;
}): Tried | null {
  if (values.try === undefined) {
    if (values.steps || (values.answer && !values["not-sure"]))
      throw new UsageError("--answer and --steps go with --try; --answer with --not-sure too.");
    return null;
  }
  if (!values.answer) throw new UsageError("--try needs an --answer NAME to look at.");
  const steps = Number(values.steps ?? USUAL_STEPS);
  if (!Number.isInteger(steps) || steps < 2 || steps > MOST_STEPS)
    throw new UsageError(`--steps is a whole number from 2 to ${MOST_STEPS}, not "${values.steps}".`);
  const { name, value } = setOf(values.try, "--try");
  return { name, range: value, answers: values.answer, steps };
}

function doubtingOf(
  isAsked: boolean,
  answers: readonly string[] | undefined,
  runs: string | undefined,
): Doubting | null {
  if (!isAsked && runs !== undefined) throw new UsageError("--runs goes with --not-sure.");
  if (!isAsked) return null;
  const count = Number(runs ?? RUNS);
  if (!Number.isInteger(count) || count < LEAST_RUNS || count > MOST_RUNS)
    throw new UsageError(`--runs is a whole number from ${LEAST_RUNS} to ${MOST_RUNS}, not "${runs}".`);
  return { answers: answers ?? null, runs: count };
}

function workingBackOf(name: string | undefined, until: string | undefined): WorkingBack | null {
  if (name === undefined && until === undefined) return null;
  if (name === undefined || until === undefined)
    throw new UsageError("--work-back NAME and --until ANSWER<=VALUE go together.");
  return { name, until };
}

function todayOf(values: {
  readonly today?: string | undefined;
  readonly "from-today"?: boolean | undefined;
  readonly forecast?: string | undefined;
}): Pick<Wanted, "today" | "fromToday"> {
  const { today = null, forecast = null, "from-today": asked } = values;
  if (today !== null && parseIsoDate(today) === null)
    throw new UsageError(`--today wants a day as YYYY-MM-DD, not "${today}".`);
  if (asked && today === null) throw new UsageError("--from-today needs --today YYYY-MM-DD.");
  if (forecast !== null && !asked) throw new UsageError("--forecast goes with --from-today.");
  return { today, fromToday: asked ? { forecast } : null };
}

/** What is wanted; null when help is. */
export function readArguments(words: readonly string[]): Wanted | null {
  const { values, positionals } = parsed(words);
  if (values.help) return null;
  const [worksheet, ...more] = positionals;
  if (worksheet === undefined) throw new UsageError("Name a worksheet file.");
  if (more.length > 0) throw new UsageError(`One worksheet at a time; what is "${more[0]}"?`);
  return {
    worksheet,
    rain: rainOf(values),
    sets: (values.set ?? []).map((text) => setOf(text)),
    plan: values.plan ?? null,
    tried: triedOf(values),
    workingBack: workingBackOf(values["work-back"], values.until),
    series: values.series ?? null,
    ...todayOf(values),
    givesOut: values["gives-out"] ?? false,
    nextMoney: values["next-money"] ?? null,
    offers: (values.offer ?? []).map((text) => setOf(text, "--offer")),
    notSure: doubtingOf(values["not-sure"] ?? false, values.answer, values.runs),
    json: values.json ?? false,
    all: values.all ?? false,
  };
}
