// What a pass answers, by name, with what is asked for and what went wrong.

import type { Card, Worksheet } from "../document/worksheet.ts";
import type { Graph } from "./nodes.ts";
import { once } from "./once.ts";
import type { AskedAnswer } from "./pass.ts";
import { FAILED } from "./pass.ts";
import type { Problem, QuantityId, Request, Result } from "./types.ts";

/** What the next pass starts from; of no use to anyone else. */
export type Inside = {
  readonly graph: Graph;
  readonly worksheet: Worksheet;
  readonly cards: readonly Card[];
  readonly values: Float64Array;
  readonly states: Uint8Array;
  readonly results: readonly (Result | undefined)[];
  readonly asked: ReadonlyMap<number, AskedAnswer>;
  /** Positions computed in this pass. */
  readonly done: readonly number[];
  /** Where the graph is a part: the results of the whole, worked out when somebody first asks. */
  readonly whole: (() => Results) | null;
};

const STILL_TO_COME: Result = { state: "pending", last: null };

export class Results {
  readonly inside: Inside;
  readonly #problems = once(() => firstCauses(this.inside));

  constructor(inside: Inside) {
    this.inside = inside;
  }

  /**
   * The result of a quantity, or of a measured one's computed twin (see `twinId`); undefined where there is none, pending
   * where it is left for later.
   */
  get(id: QuantityId): Result | undefined {
    const { graph, results } = this.inside;
    const position = graph.index.get(id);
    if (position !== undefined) return results[position];
    if (!graph.whole?.mayHave(id)) return undefined;
    return graph.whole.waits ? STILL_TO_COME : this.all.get(id);
  }

  /** The results of the whole worksheet: these, or where they are of a part what they are a part of. */
  get all(): Results {
    return this.inside.whole?.() ?? this;
  }

  /** Every quantity, hidden ones too, each after what it reads. */
  get ids(): readonly QuantityId[] {
    return this.inside.graph.ids;
  }

  /** Heavy models whose answers are not there, in the order of the graph. */
  get requests(): readonly Request[] {
    const asked = [...this.inside.asked].sort(([a], [b]) => a - b);
    return asked.flatMap(([, { request, answer }]) => (request && !answer ? [request] : []));
  }

  /** Every heavy model that is asked for, answered or not: answers under other keys may be dropped. */
  get askedKeys(): readonly string[] {
    return [...this.inside.asked.values()].flatMap(({ request }) => (request ? [request.key] : []));
  }

  /** What this pass computed; the rest was taken over. */
  get recomputed(): readonly QuantityId[] {
    return this.inside.done.map((position) => this.inside.graph.nodes[position]?.id ?? "");
  }

  /** Problems of the cards, then those of quantities that are first causes, for whoever tells no cautions. */
  get causes(): readonly Problem[] {
    return this.#problems();
  }

  /** Problems of the worksheet, then those of quantities that are first causes. */
  get problems(): readonly Problem[] {
    const wrong = this.inside.graph.wrongCautions();
    return wrong.length === 0 ? this.causes : [...wrong, ...this.causes];
  }
}

/** Said once for the whole worksheet already. */
const SAID_ELSEWHERE = new Set(["upstream", "missing_card", "duplicate_id"]);

/** Outputs of one failed model say the same; it is listed once. */
function firstCauses({ graph, states, results }: Inside): readonly Problem[] {
  const problems = [...graph.problems];
  const said = new Set<string>();
  for (const { position, role, card } of graph.nodes) {
    if (states[position] !== FAILED || role === "model" || role === "twin") continue;
    const result = results[position];
    if (result?.state !== "failed" || SAID_ELSEWHERE.has(result.problem.code)) continue;
    const { code, text } = result.problem;
    const saying = `${card} ${code} ${text}`;
    if (said.has(saying)) continue;
    said.add(saying);
    problems.push(result.problem);
  }
  return problems;
}
