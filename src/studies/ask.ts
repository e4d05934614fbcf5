// One way to ask the whole worksheet many times: each question is a list of changes, worked out from the base's results,
// with only those heavy models run that the wanted answers read.

import { type Change, withChanges } from "../document/changes.ts";
import { type Differences, effective } from "../document/effective.ts";
import type { Worksheet } from "../document/worksheet.ts";
import { ancestorsOf } from "../graph/ancestors.ts";
import { type Graph, graphFor } from "../graph/build.ts";
import { wordIn } from "../graph/readers.ts";
import { rolesOf } from "../graph/roles.ts";
import type { CardKinds, Outputs, QuantityId, Request, Result } from "../graph/types.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { forgetOldest, isMadeUpKey } from "./made-up-records.ts";
import { type Known, settleHeavy, type Whole, workOutLight } from "./work-out.ts";

/** Heavy answers and made-up records kept for the next question; the oldest go first. */
const KEPT_ANSWERS = 64;
const KEPT_MADE_UP = 8;

/** The worksheet that is asked, its light part worked out once. */
export type Base = { readonly worksheet: Worksheet; readonly whole: Whole; readonly known: Known };

export type Answers = Readonly<Record<QuantityId, Result>>;

/**
 * A worksheet ready to be asked.
 *
 * @param given rain records that it may name
 * @param answers heavy answers that are known already, by their keys
 */
export function baseOf(
  worksheet: Worksheet,
  kinds: CardKinds,
  given: readonly DailyRecord[] = [],
  answers: ReadonlyMap<string, Outputs> = new Map(),
): Base {
  const known = { answers: new Map(answers), records: new Map(given.map((record) => [record.key, record])) };
  const graph = graphFor(worksheet, kinds);
  const whole = { worksheet, graph, results: workOutLight(worksheet, graph, known) };
  return { worksheet, whole, known };
}

/** The base after an edit: what was known stays known under its full inputs. */
export function rebased({ whole, known }: Base, worksheet: Worksheet): Base {
  const graph = graphFor(worksheet, whole.graph.kinds, whole.graph);
  const results = workOutLight(worksheet, graph, known, whole.results);
  return { worksheet, whole: { worksheet, graph, results }, known };
}

/** Whether a heavy model stands behind a wanted answer. */
function wantedIn(graph: Graph, wanted: readonly QuantityId[]): (request: Request) => boolean {
  const marks = ancestorsOf(graph, wanted);
  return ({ model }) => marks[graph.index.get(`${model}()`) ?? -1] === 1;
}

/** The base's own record stays: its season is run on it with bounds set free. */
function forget({ known: { answers, records }, whole }: Base): void {
  const own = wordIn(whole.results.get("weather.record_in_use"));
  forgetOldest(answers, KEPT_ANSWERS, () => true);
  forgetOldest(records, KEPT_MADE_UP, (key) => key !== own && isMadeUpKey(key));
}

/** What is different: changes one after the other, or a whole plan with what it adds and does without. */
export type Otherwise = readonly Change[] | Differences;

function otherwise(base: Base, what: Otherwise): Worksheet {
  if (!("changes" in what)) return withChanges(base.worksheet, what);
  return effective(base.worksheet, what, rolesOf(base.whole.graph.kinds));
}

/** The whole worksheet with changes made, worked out as far as the wanted answers need it. */
export function wholeWith(base: Base, changes: Otherwise, wanted: readonly QuantityId[]): Whole {
  forget(base);
  const applied = otherwise(base, changes);
  const graph = graphFor(applied, base.whole.graph.kinds, base.whole.graph);
  const results = workOutLight(applied, graph, base.known, base.whole.results);
  const light = { worksheet: applied, graph, results };
  return { ...light, results: settleHeavy(light, base.known, wantedIn(graph, wanted)) };
}

/**
 * The wanted answers with changes made: what setting the same by hand gives, to the bit.
 *
 * @returns by name; a name that the changed worksheet does not have is left out
 */
export function ask(base: Base, changes: Otherwise, wanted: readonly QuantityId[]): Answers {
  const { results } = wholeWith(base, changes, wanted);
  return Object.fromEntries(
    wanted.flatMap((id) => {
      const result = results.get(id);
      return result ? [[id, result]] : [];
    }),
  );
}
