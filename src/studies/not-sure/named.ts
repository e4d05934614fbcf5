// What is not sure in a reader's words: the name of each doubt, the ends of each answer, and the sentences under them.

import { nodeOf } from "../../graph/nodes.ts";
import { numberIn } from "../../graph/readers.ts";
import { labelOf, titleOf } from "../../graph/shown.ts";
import type { QuantityId } from "../../graph/types.ts";
import { shownMeasure } from "../../graph/unit-of.ts";
import { measuringOf } from "../../kinds/measuring.ts";
import {
  beyondSaid,
  doubtName,
  LEAST,
  type Leaning,
  measuringSaid,
  mostFromSaid,
} from "../../telling/not-sure.ts";
import { placeOn } from "../../units/scale.ts";
import { type ShowOptions, showQuantity } from "../../units/show.ts";
import { showSpan, toldEnds } from "../../units/show-span.ts";
import { spanWords } from "../../units/span-words.ts";
import { toSi } from "../../units/unit.ts";
import type { Base } from "../ask.ts";
import type { Doubt, Doubts } from "./doubts.ts";
import type { From, NotSure, Spanned } from "./not-sure.ts";

type Whole = Base["whole"];

/** The label of its row, and the cards that share it. */
export function nameOfDoubt({ worksheet, graph }: Whole, { numbers }: Doubt): string {
  const titles = numbers.map(({ target }) => titleOf(worksheet, target.card));
  return doubtName({ label: labelOf(graph, worksheet, numbers[0].id), titles });
}

/** What is done to measure a doubt; null where nothing simple measures it. */
function howMeasured({ worksheet }: Whole, { numbers }: Doubt): string | null {
  const [{ target, row }] = numbers;
  const kind = worksheet.cards.find(({ id }) => id === target.card)?.kind ?? "";
  return measuringOf(kind, row)?.how ?? null;
}

type Told = {
  readonly name: string;
  readonly how: string | null;
  readonly share: number;
  readonly leaves: number;
};

function toldOf(whole: Whole, { taken }: Doubts, { doubt, share, leaves }: From, width: number): Told {
  const of = taken[doubt];
  if (!of) return { name: "", how: null, share: 0, leaves: 1 };
  const left = width === 0 ? 1 : leaves / width;
  return { name: nameOfDoubt(whole, of), how: howMeasured(whole, of), share, leaves: left };
}

/** How far what is taken of a doubt lies from the middle of its span, in spans. */
function offMiddle({ numbers: [{ scale, value }] }: Doubt): number {
  return Math.abs(placeOn(scale, value) - 0.5);
}

/** "43 goes by 0.02 in of First flush ...": where the answer as it stands lies beyond the ends that are told; else "". */
function beyond(
  whole: Whole,
  { taken }: Doubts,
  id: QuantityId,
  { low, high, mostFrom }: Spanned,
  options: ShowOptions,
): string {
  const node = nodeOf(whole.graph, id);
  const measure = node && shownMeasure(node);
  const own = numberIn(whole.results.get(id));
  if (!measure || own === null) return "";
  const [least, most] = toldEnds(low, high, measure, options);
  if (own >= least && own <= most) return "";
  const [first] = mostFrom
    .flatMap(({ doubt, share }) => {
      const of = taken[doubt];
      return of ? [{ of, leans: share * offMiddle(of) }] : [];
    })
    .sort((a, b) => b.leans - a.leans);
  return first && first.leans > 0
    ? beyondSaid(showQuantity(own, measure, options), leaningOn(whole, first.of, options))
    : "";
}

function leaningOn(whole: Whole, doubt: Doubt, options: ShowOptions): Leaning {
  const [{ id, scale, value }] = doubt.numbers;
  const node = nodeOf(whole.graph, id);
  const measure = node && shownMeasure(node);
  const said = (number: number): string =>
    measure ? showQuantity(toSi(number, scale.unit), measure, { ...options, rounded: true }) : String(number);
  return {
    name: nameOfDoubt(whole, doubt),
    taken: said(value),
    between: spanWords(said(scale.low), said(scale.high)),
  };
}

/** One answer in words. */
export type SpanSaid = {
  /** Both ends with their unit. */
  readonly shown: string;
  /** Which doubt matters most, and what measuring it would leave; "" where nothing moves it. */
  readonly most: string;
  readonly measuring: string;
  /** Why the answer as it stands is none of these; "" where it is one. */
  readonly beyond: string;
};

/** An answer that is not sure as a reader reads it; null where it is none that is a number with a measure. */
export function spanSaid(
  whole: Whole,
  { doubts }: NotSure,
  id: QuantityId,
  spanned: Spanned,
  options: ShowOptions,
): SpanSaid | null {
  const node = nodeOf(whole.graph, id);
  const measure = node && shownMeasure(node);
  if (!measure) return null;
  const { low, high, mostFrom } = spanned;
  const shown = showSpan(low, high, measure, options);
  const named = mostFrom.map((from) => toldOf(whole, doubts, from, high - low));
  const measurable = named.filter((one) => one.how !== null && one.share >= LEAST);
  if (low === high || named.length === 0) return { shown, most: "", measuring: "", beyond: "" };
  const best = measurable.reduce<Told | null>(
    (one, other) => (one && one.leaves <= other.leaves ? one : other),
    null,
  );
  const told = best?.how ? { name: best.name, how: best.how, leaves: best.leaves } : null;
  return {
    shown,
    most: mostFromSaid(named),
    measuring: measuringSaid(told, best === named[0]),
    beyond: beyond(whole, doubts, id, spanned, options),
  };
}
