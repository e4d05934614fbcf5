// `--not-sure`: between which ends the answers lie, which doubt that comes from most, and what measuring it would leave.

import type { Worksheet } from "../document/worksheet.ts";
import { numberIn } from "../graph/readers.ts";
import { labelOf } from "../graph/shown.ts";
import type { CardKinds, QuantityId } from "../graph/types.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { ask, baseOf, rebased } from "../studies/ask.ts";
import type { Doubt } from "../studies/not-sure/doubts.ts";
import { nameOfDoubt, type SpanSaid, spanSaid } from "../studies/not-sure/named.ts";
import { notSure, type Spanned, spansOf } from "../studies/not-sure/not-sure.ts";
import { answerName, OF_THE_PLACE } from "../telling/answer-names.ts";
import { askedSaid } from "../telling/not-sure.ts";
import { toSi } from "../units/unit.ts";
import { findRow } from "./set-value.ts";

/** `--not-sure`, with `--answer` and `--runs`; null: the answers of the place. */
export type Doubting = { readonly answers: readonly string[] | null; readonly runs: number };

type ToldDoubt = {
  /** A quantity that it is of; `with` are those that are wrong by the same. */
  readonly name: QuantityId;
  readonly with: readonly QuantityId[];
  readonly said: string;
  /** [SI] */
  readonly low: number;
  readonly high: number;
  /** Said as a span, or the spread of a table's default. */
  readonly from: Doubt["from"];
};

type ToldSpan = Pick<Spanned, "low" | "high" | "runs"> & {
  readonly shown: string;
  /** `leaves`: how far apart the ends would be, that doubt measured to a tenth of its span [SI]. */
  readonly most_from: readonly {
    readonly name: QuantityId;
    readonly share: number;
    readonly leaves: number;
  }[];
  readonly said: string;
};

export type NotSureReport = {
  readonly spans: Readonly<Record<QuantityId, ToldSpan>>;
  readonly doubts: readonly ToldDoubt[];
  /** Not asked: more at once would need more runs. */
  readonly doubts_held: readonly ToldDoubt[];
  readonly not_sure_said: string;
};

const joined = ({ beyond, most, measuring }: SpanSaid): string =>
  [beyond, most, measuring].filter(Boolean).join(" ");

/** Works the worksheet out again and again. */
export function notSureReport(
  worksheet: Worksheet,
  kinds: CardKinds,
  records: readonly DailyRecord[],
  { answers, runs }: Doubting,
): NotSureReport {
  for (const id of answers ?? []) findRow(worksheet, kinds, id);
  const wanted = answers ?? OF_THE_PLACE;
  const own = baseOf(worksheet, kinds, records);
  const question = notSure(own, wanted, runs);
  const base = rebased(own, question.sheet);
  const answered = question.runs.map((changes) => ask(base, changes, wanted));
  const { whole } = own;
  const options = { units: worksheet.units, locale: "en-US", currency: worksheet.currency };
  const told = (doubt: Doubt): ToldDoubt => {
    const [{ id, scale }, ...others] = doubt.numbers;
    const [low, high] = [scale.low, scale.high].map((end) => toSi(end, scale.unit)) as [number, number];
    const rest = others.map((other) => other.id);
    return { name: id, with: rest, said: nameOfDoubt(whole, doubt), low, high, from: doubt.from };
  };
  const { taken, held } = question.doubts;
  const spans = [...spansOf(question, answered)].map(([id, spanned]): [QuantityId, ToldSpan] => {
    const said = spanSaid(whole, question, id, spanned, options);
    const mostFrom = spanned.mostFrom.map(({ doubt, ...of }) => ({
      name: taken[doubt]?.numbers[0].id ?? "",
      ...of,
    }));
    const { low, high, runs: counted } = spanned;
    const shown = said?.shown ?? "";
    return [id, { low, high, runs: counted, shown, most_from: mostFrom, said: said ? joined(said) : "" }];
  });
  const seasons = answered[0] ? numberIn(ask(base, [], ["season.seasons"])["season.seasons"]) : null;
  return {
    spans: Object.fromEntries(spans),
    doubts: taken.map(told),
    doubts_held: held.map(told),
    not_sure_said:
      taken.length === 0
        ? "Nothing here is said not to be sure."
        : askedSaid(taken.length, held.length, runs, seasons),
  };
}

/** The same for reading. */
export function notSureText(worksheet: Worksheet, kinds: CardKinds, report: NotSureReport): string {
  const { graph } = baseOf(worksheet, kinds).whole;
  const lines = Object.entries(report.spans).flatMap(([id, { shown, said }]) => {
    const name = answerName(id) ?? labelOf(graph, worksheet, id);
    return [`${name}: ${shown}`, ...(said === "" ? [] : [`  ${said}`])];
  });
  const held = report.doubts_held.map(({ said }) => `  held: ${said}`);
  return `${[report.not_sure_said, ...held, ...lines].join("\n")}\n`;
}
