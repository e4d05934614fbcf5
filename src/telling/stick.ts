// The marks of a dip stick in words: what to do above and below, how they were found, how each past year would have gone.

import { SHORT_MONTHS } from "../units/calendar-names.ts";
import { listed } from "./words/lists.ts";

type Stick = {
  readonly madeUp: boolean;
  readonly marks: readonly {
    readonly month: number;
    readonly depths: Readonly<Record<string, number | null>>;
  }[];
  readonly kept: readonly string[];
  readonly held: readonly string[];
  readonly on: number;
  readonly years: readonly { readonly year: number; readonly loss: number; readonly plain: number }[];
};

export type ToldStick = {
  /** Depth over the tank's floor [m] and the months whose mark is there, from the lowest up. */
  readonly marks: readonly { readonly depth: number; readonly label: string }[];
  /** What a mark means. */
  readonly rule: string;
  /** Months in which the tank is too small for its mark, or has none; "" where there is none. */
  readonly over: string;
  readonly tuned: string;
  readonly years: readonly { readonly year: string; readonly loss: string; readonly plain: string }[];
};

/** Marks closer than this are one [m]. */
const CLOSE = 0.003;

const monthsSaid = (months: readonly number[]): string =>
  months.map((month) => SHORT_MONTHS[month - 1]).join(" ");

const percent = (share: number): string => `${Math.round(share * 100)} %`;

function marksOf({ marks }: Stick, tank: string): ToldStick["marks"] {
  const at = marks
    .flatMap(({ month, depths }) => {
      const depth = depths[tank];
      return typeof depth === "number" ? [{ depth, month }] : [];
    })
    .sort((a, b) => a.depth - b.depth || a.month - b.month);
  const groups: { depth: number; months: number[] }[] = [];
  for (const { depth, month } of at) {
    const last = groups.at(-1);
    if (last && depth - last.depth < CLOSE) last.months.push(month);
    else groups.push({ depth, months: [month] });
  }
  return groups.map(({ depth, months }) => ({ depth, label: monthsSaid(months) }));
}

function tunedSaid({ years, madeUp, on }: Stick): string {
  const sum = (of: "loss" | "plain") =>
    years.reduce((all, year) => all + year[of], 0) / Math.max(1, years.length);
  const of = madeUp ? `${years.length} made-up seasons` : `the ${years.length} seasons on record`;
  const hardest = on === 1 ? "the hardest" : `the ${on} hardest`;
  return `Found by trying marks on ${hardest} of ${of}. Over all ${years.length} the beds would have lost ${percent(sum("loss"))} of what they are worth by these marks, ${percent(sum("plain"))} as the sheet waters. Expect somewhat worse of seasons that no mark was tried on.`;
}

/** Where there are several tanks a mark is at the same share of each. */
const alikeSaid = ({ marks }: Stick): string =>
  Object.keys(marks[0]?.depths ?? {}).length > 1
    ? " It holds while all tanks are about as full as each other."
    : "";

/** The stick of one tank; null where the tank has no part in it. */
export function stickTold(stick: Stick, tank: string, titleOf: (id: string) => string): ToldStick | null {
  if (!stick.marks.some(({ depths }) => tank in depths)) return null;
  const over = stick.marks.filter(({ depths }) => depths[tank] === null).map(({ month }) => month);
  const only = stick.kept.length > 0 ? `only ${listed(stick.kept.map(titleOf))}` : "nothing";
  return {
    marks: marksOf(stick, tank),
    rule: `Water above the month's mark: water all. Below it: ${only}.${alikeSaid(stick)}`,
    over:
      over.length === 0
        ? ""
        : `In ${listed(over.map((month) => SHORT_MONTHS[month - 1] ?? ""))} even full tanks are below the mark.`,
    tuned: tunedSaid(stick),
    years: stick.years.map(({ year, loss, plain }) => ({
      year: stick.madeUp ? `made up ${year}` : String(year),
      loss: percent(loss),
      plain: percent(plain),
    })),
  };
}
