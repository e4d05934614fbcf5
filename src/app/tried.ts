// What was tried along the axis of the number in hand.

import type { Worksheet } from "../document/worksheet.ts";
import { ancestorsOf } from "../graph/ancestors.ts";
import type { Graph } from "../graph/nodes.ts";
import { numberIn, valueIn } from "../graph/readers.ts";
import type { QuantityId, Result } from "../graph/types.ts";
import type { Answers } from "../studies/ask.ts";
import type { Tried } from "../studies/enough.ts";
import type { Trial } from "../studies/try.ts";
import { withoutBehind } from "../telling/left-out.ts";

export type Raw = { readonly place: number; readonly value: number | string; readonly answers: Answers };

/** Asks for trials; ends when all are answered. */
export type AskFor = (
  trials: readonly (Trial & { readonly place: number })[],
  onRaw: (raw: Raw) => void,
) => Promise<void>;

/** Which parts the run of the season is without. */
const LEFT_OUT = "season.left_out_list";

function leftOutIn(answers: Answers): number {
  const list = valueIn(answers[LEFT_OUT]);
  return Array.isArray(list) ? list.length : 0;
}

/** Where a part has fallen out of the run that is in it elsewhere, there is no answer to compare with. */
export function triedOf(points: readonly Raw[], answer: string): readonly Tried[] {
  const least = Math.min(...points.map(({ answers }) => leftOutIn(answers)));
  return points.map(({ place, value, answers }) => ({
    place,
    size: typeof value === "number" ? value : 0,
    answer: leftOutIn(answers) > least ? null : numberIn(answers[answer]),
  }));
}

const readsRun = (graph: Graph, answer: QuantityId): boolean =>
  ancestorsOf(graph, [answer])[graph.index.get("season.run()") ?? -1] === 1;

/** What is asked for: the answers, and for those of the season which parts they are without. */
export const askedWith = (graph: Graph, answers: readonly QuantityId[]): readonly QuantityId[] =>
  answers.some((answer) => readsRun(graph, answer)) ? [...answers, LEFT_OUT] : answers;

type Sheet = {
  readonly graph: Graph;
  readonly worksheet: Worksheet;
  readonly results: { readonly get: (id: QuantityId) => Result | undefined };
};

/** "without Long bed", behind an answer of the season where a part has fallen out of its run; else "". */
export function withoutAt({ graph, worksheet, results }: Sheet, answer: QuantityId, tried: Answers): string {
  const list = valueIn(tried[LEFT_OUT] ?? results.get(LEFT_OUT));
  if (!Array.isArray(list) || list.length === 0 || !readsRun(graph, answer)) return "";
  const result = (id: QuantityId) => tried[id] ?? results.get(id);
  return withoutBehind({ result, cards: worksheet.cards });
}
