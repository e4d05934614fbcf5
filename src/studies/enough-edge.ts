// Between which of the tried values enough begins or ends, and what is wished there; fetched once a curve stands.

import type { QuantityId } from "../graph/types.ts";
import { DUST, enoughOf, type Tried, WHEN_ENOUGH } from "./enough.ts";
import type { Wish } from "./work-back.ts";

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
