// Models: several answers from one run, here where they are light, and by request where they are heavy.

import type { DailyRecord } from "../rainfall/record.ts";
import type { GraphNode, ModelWork, Source } from "./nodes.ts";
import { blockedBy, type Pass, PENDING, pendingAt, READY, resultAt, upstreamAt } from "./pass.ts";
import { failed, none } from "./problems.ts";
import { NO_RECORD } from "./readers.ts";
import { requestFor } from "./requests.ts";
import { notFinite } from "./same.ts";
import type { CardView, ModelInput, Outcome, Outputs, Result, Value } from "./types.ts";

/** The result of a name as its reader sees it: that of the link where the link leads nowhere. */
function resultOf(pass: Pass, { link, node }: Source): Result {
  if (link && pass.states[link.position] !== READY) return resultAt(pass, link.position);
  return node ? resultAt(pass, node.position) : failed("missing", "", "There is no value.");
}

function needsOf(sources: readonly Source[]): Int32Array {
  const needs: number[] = [];
  for (const { link, node } of sources) {
    if (link) needs.push(link.position);
    if (node) needs.push(node.position);
  }
  return Int32Array.from(needs).sort();
}

type Waits = { readonly taken: Int32Array; readonly surveyed: Int32Array };

const WAITS = new WeakMap<ModelWork, Waits>();

/** What a model waits for, the same for as long as its graph stands. */
function waitsOf(work: ModelWork): Waits {
  const known = WAITS.get(work);
  if (known) return known;
  const waits = {
    taken: needsOf(work.record ? [...work.takes, work.record] : work.takes),
    surveyed: needsOf(work.surveyed.flatMap((card) => card.sources)),
  };
  WAITS.set(work, waits);
  return waits;
}

/** Whether a model may run without a value of a name: it said so, and there is none. */
function isOptional(pass: Pass, { model }: ModelWork, source: Source): boolean {
  return model.optional?.includes(source.name) === true && resultOf(pass, source).state === "none";
}

/** Why a model cannot run yet. A tolerant one only ever waits; surveyed cards never fail it. */
function blockedModel(pass: Pass, node: GraphNode, work: ModelWork): Result | null {
  const { taken, surveyed } = waitsOf(work);
  const blocked = work.model.tolerant ? null : blockedBy(pass, node, requiredOf(pass, work, taken));
  if (blocked) return blocked;
  const waits = (position: number): boolean => pass.states[position] === PENDING;
  return taken.some(waits) || surveyed.some(waits) ? pendingAt(pass, node) : null;
}

/** Of what a model takes, what it may not do without now. */
function requiredOf(pass: Pass, work: ModelWork, taken: Int32Array): Int32Array {
  if (!work.model.optional) return taken;
  const required = work.takes.filter((source) => !isOptional(pass, work, source));
  return needsOf(work.record ? [...required, work.record] : required);
}

function viewsOf(pass: Pass, work: ModelWork): Readonly<Record<string, readonly CardView[]>> {
  const views: Record<string, CardView[]> = {};
  for (const kind of Object.keys(work.model.surveys ?? {})) views[kind] = [];
  for (const { id, kind, cardAt, sources } of work.surveyed) {
    const results = Object.fromEntries(sources.map((source) => [source.name, resultOf(pass, source)]));
    views[kind]?.push({ id, kind, title: pass.cards[cardAt]?.title ?? id, results });
  }
  return views;
}

function inputFor(pass: Pass, work: ModelWork, record: DailyRecord | null): ModelInput {
  const results: Record<string, Result> = {};
  const values: Record<string, Value> = {};
  for (const source of work.takes) {
    const result = resultOf(pass, source);
    results[source.name] = result;
    if (result.state === "ready") values[source.name] = result.value;
  }
  return { values, results, cards: viewsOf(pass, work), record };
}

function recordKeyOf(pass: Pass, work: ModelWork): string | null {
  const result = work.record ? resultOf(pass, work.record) : null;
  return result?.state === "ready" && typeof result.value === "string" ? result.value : null;
}

/** Whether a model sees nothing but values and the record, as one that runs elsewhere must. */
const isPlain = ({ model, surveyed }: ModelWork): boolean => !model.tolerant && surveyed.length === 0;

/** What a model answers; its answer is held as a value from output row to outcome. */
export function computeModel(pass: Pass, node: GraphNode, work: ModelWork): Result {
  pass.asked.delete(node.position);
  const blocked = blockedModel(pass, node, work);
  if (blocked) return blocked;
  const recordKey = recordKeyOf(pass, work);
  const record = recordKey === null ? null : (pass.settled.records.get(recordKey) ?? null);
  if (work.record) pass.asked.set(node.position, { request: null, answer: undefined, recordKey, record });
  const elsewhere = recordKey !== null && pass.settled.elsewhere?.(recordKey) === true;
  if (work.record && !record && !elsewhere && !work.model.tolerant)
    return failed("record", node.id, NO_RECORD);
  const input = inputFor(pass, work, record);
  const isAsked = work.model.heavy || (elsewhere && isPlain(work));
  if (!isAsked) return { state: "ready", value: work.model.run(input), origin: "computed" };
  const request = requestFor(work, input.values, recordKey);
  const answer = pass.settled.answers.get(request.key);
  pass.asked.set(node.position, { request, answer, recordKey, record });
  return answer ? { state: "ready", value: answer, origin: "computed" } : pendingAt(pass, node);
}

function resultOfOutcome(outcome: Outcome | undefined, id: string): Result {
  if (typeof outcome !== "object" || outcome === null)
    return failed("model", id, "Nothing was worked out for this.");
  if ("failed" in outcome) {
    const { cause, by } = outcome;
    if (cause) return failed("upstream", id, outcome.failed, { cause });
    return failed("model", id, outcome.failed, by ? { by: `${id.split(".")[0]}.${by}` } : {});
  }
  if ("none" in outcome) return none(outcome.none, id);
  if (outcome.value === null || outcome.value === undefined)
    return none("there is nothing to work it out from", id);
  if (notFinite(outcome.value)) return failed("not_finite", id, "This came to no finite number.");
  return { state: "ready", value: outcome.value, origin: "computed" };
}

/** The result of an output row: its share of the model's answer. */
export function computeOutput(pass: Pass, node: GraphNode, model: GraphNode, key: string): Result {
  const answered = resultAt(pass, model.position);
  if (answered.state === "pending") return pendingAt(pass, node);
  if (answered.state === "none") return answered;
  const id = node.id.replace("~computed", "");
  if (answered.state === "ready") {
    const outputs = answered.value as Outputs;
    return resultOfOutcome(Object.hasOwn(outputs, key) ? outputs[key] : undefined, id);
  }
  const { code, text, span } = answered.problem;
  if (code === "upstream" || code === "cycle") return upstreamAt(pass, node, [model.position]);
  return failed(code, id, text, span ? { span } : {});
}
