// One given changed in a chain of 1,000 and in a fan-out of 10,000: bound formulas over a Float64Array, against the same
// relations compiled by mathjs over a Map, and against closures written by hand. All in topological order.

import { compile } from "mathjs";
import { bindFormula } from "../../src/formula/bind.ts";
import { readFormula } from "../../src/formula/read.ts";
import { mediansOf, type Ratio, shownTime } from "./measure.ts";

type Step = { readonly name: string; readonly text: string; readonly by: (values: Float64Array) => number };
type Case = {
  readonly name: string;
  readonly givens: Readonly<Record<string, number>>;
  readonly changed: string;
  readonly steps: readonly Step[];
};

function chain(length: number): Case {
  // Slots: share, gain, q0, then q1 and so on.
  const steps = Array.from({ length }, (_, index): Step => {
    const before = index + 2;
    return {
      name: `q${index + 1}`,
      text: `q${index} * share + gain`,
      by: (v) => (v[before] as number) * (v[0] as number) + (v[1] as number),
    };
  });
  return { name: `chain of ${length}`, givens: { share: 0.999, gain: 0.5, q0: 20 }, changed: "q0", steps };
}

function fanOut(width: number): Case {
  const steps = Array.from({ length: width }, (_, index): Step => {
    const own = 1 + (index % 7);
    return {
      name: `q${index + 1}`,
      text: `given * share + gain * ${own}`,
      by: (v) => (v[2] as number) * (v[0] as number) + (v[1] as number) * own,
    };
  });
  return {
    name: `fan-out of ${width}`,
    givens: { share: 0.999, gain: 0.5, given: 20 },
    changed: "given",
    steps,
  };
}

function pass(
  runs: readonly ((values: Float64Array) => number)[],
  values: Float64Array,
  first: number,
): void {
  for (let index = 0; index < runs.length; index++) {
    values[first + index] = (runs[index] as (values: Float64Array) => number)(values);
  }
}

function ratiosOf({ name, givens, changed, steps }: Case): Ratio[] {
  const names = [...Object.keys(givens), ...steps.map((step) => step.name)];
  const slots = new Map(names.map((each, index) => [each, index]));
  const first = Object.keys(givens).length;
  const start = Object.values(givens);
  const bound = steps.map(({ text }) => {
    const read = readFormula(text);
    if (!read.ok) throw new Error(read.problem.message);
    return bindFormula(read.formula, (each) => slots.get(each) ?? Number.NaN);
  });
  const byHand = steps.map(({ by }) => by);
  const compiled = steps.map((step) => ({ name: step.name, code: compile(step.text) }));
  const [ours, hand] = [new Float64Array(names.length), new Float64Array(names.length)];
  ours.set(start);
  hand.set(start);
  const scope = new Map<string, number>(Object.entries(givens));
  const slot = slots.get(changed) ?? Number.NaN;
  let turn = 20;
  const times = mediansOf({
    bound: () => {
      turn = turn === 20 ? 21 : 20;
      ours[slot] = turn;
      pass(bound, ours, first);
    },
    byHand: () => {
      turn = turn === 20 ? 21 : 20;
      hand[slot] = turn;
      pass(byHand, hand, first);
    },
    mathjs: () => {
      turn = turn === 20 ? 21 : 20;
      scope.set(changed, turn);
      for (const each of compiled) scope.set(each.name, each.code.evaluate(scope));
    },
  });
  for (const values of [ours, hand]) values[slot] = 20;
  scope.set(changed, 20);
  pass(bound, ours, first);
  pass(byHand, hand, first);
  for (const each of compiled) scope.set(each.name, each.code.evaluate(scope));
  const last = names.at(-1) ?? "";
  const answers = [ours.at(-1), hand.at(-1), scope.get(last)];
  if (answers.some((answer) => answer !== answers[0]))
    throw new Error(`${name}: answers differ: ${answers.join(", ")}`);
  return [
    {
      name: `${name}: mathjs compiled over bound formulas`,
      ratio: times.mathjs / times.bound,
      atLeast: 4,
      detail: `${shownTime(times.mathjs)} over ${shownTime(times.bound)}`,
    },
    {
      name: `${name}: bound formulas over closures by hand`,
      ratio: times.bound / times.byHand,
      atMost: 10,
      detail: `${shownTime(times.bound)} over ${shownTime(times.byHand)}`,
    },
  ];
}

/** The ratios this file promises. */
export function rows(): readonly Ratio[] {
  return [...ratiosOf(chain(1000)), ...ratiosOf(fanOut(10_000))];
}
