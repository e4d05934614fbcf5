// Between which of the tried values enough begins or ends, what is wished there, and the round value nearest to it; fetched
// once a curve stands.

import type { QuantityId } from "../graph/types.ts";
import { roundStep, type Scale } from "../units/scale.ts";
import { DUST, enoughOf, type Tried, WHEN_ENOUGH } from "./enough.ts";
import type { AnswerAt, Wish } from "./work-back.ts";

function wishOf(answer: QuantityId): Wish | null {
  const goal = WHEN_ENOUGH.get(answer);
  if (goal === undefined) return null;
  return goal === 0 ? { sense: "at most", target: DUST } : { sense: "at least", target: goal - DUST };
}

/** The tried places of which one meets the wish and its neighbor does not; null where enough neither begins nor ends. */
export function edgeOf(
  answer: QuantityId,
  tried: readonly Tried[],
): { readonly met: number; readonly unmet: number; readonly wish: Wish } | null {
  const enough = enoughOf(answer, tried);
  const wish = wishOf(answer);
  if (!enough || !wish || enough.how === "little more") return null;
  const places = tried.map(({ place }) => place).sort((a, b) => a - b);
  const at = places.indexOf(enough.place);
  const unmet = places[enough.how === "from" ? at - 1 : at + 1];
  return unmet === undefined ? null : { met: enough.place, unmet, wish };
}

/** More steps than this never lie between two tried values of a curve. */
const MOST_STEPS = 2000;

/** Round values of the hand from the first one past `unmet` to `met`, which is the last. */
function rungsTo(scale: Scale, unmet: number, met: number): readonly number[] {
  const by = met > unmet ? 1 : -1;
  const rungs: number[] = [];
  for (let at = unmet; rungs.length < MOST_STEPS; ) {
    const next = roundStep(scale, at, by);
    if (next === at || (by > 0 ? next >= met : next <= met)) break;
    rungs.push(next);
    at = next;
  }
  return [...rungs, met];
}

/**
 * The step of the hand next to the edge of enough that is still enough: it was evaluated, as was the one before it.
 *
 * @param edge a value that meets the wish and one that does not [unit of the scale]
 * @validity more than one edge between them is not seen
 */
export async function enoughRung(
  answerAt: AnswerAt,
  scale: Scale,
  wish: Wish,
  { met, unmet }: { readonly met: number; readonly unmet: number },
): Promise<number> {
  const rungs = rungsTo(scale, unmet, met);
  const isMet = async (value: number): Promise<boolean> => {
    const [answer] = await answerAt([value]);
    if (typeof answer !== "number" || Number.isNaN(answer)) return false;
    return wish.sense === "at most" ? answer <= wish.target : answer >= wish.target;
  };
  let [bad, good] = [-1, rungs.length - 1];
  while (good - bad > 1) {
    const middle = (good + bad) >> 1;
    if (await isMet(rungs[middle] ?? met)) good = middle;
    else bad = middle;
  }
  return rungs[good] ?? met;
}
