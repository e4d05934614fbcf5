// The cautions of the open worksheet: all of them, those beside one quantity, and the parts in trouble.

import { type Accessor, createMemo } from "solid-js";
import { cautionsOf, type ShownCaution } from "../graph/cautions.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import { troublesOf } from "../scene/trouble.ts";
import type { ShowOptions } from "../units/show.ts";
import type { Engine } from "./engine.ts";
import { createKeyed } from "./keyed.ts";
import type { PageShared } from "./page-shared.ts";

const NONE: readonly ShownCaution[] = [];

const saysTheSame = (before: readonly ShownCaution[], now: readonly ShownCaution[]): boolean =>
  before.length === now.length &&
  before.every(({ id, text }, at) => id === now[at]?.id && text === now[at]?.text);

export function createCautions(
  engine: Engine,
  showOptions: Accessor<ShowOptions>,
  { words, readOnce }: Pick<PageShared, "words" | "readOnce">,
) {
  const isWorded = createMemo(() => Object.keys(words()).length > 0);
  const cautions = createMemo(() => {
    const { graph, worksheet, results } = engine.view();
    return isWorded() ? cautionsOf(graph, worksheet, results, showOptions(), words()) : NONE;
  });
  // Whether every caution can be told is looked at when they are: the first answers need not wait for it.
  const problems = createMemo(() => {
    const { results } = engine.view();
    return isWorded() ? results.problems : results.causes;
  });
  const byPlace = createMemo(() => {
    const places = new Map<string, ShownCaution[]>();
    for (const caution of cautions()) {
      const place = `${caution.card}.${caution.beside}`;
      const there = places.get(place);
      if (there) there.push(caution);
      else places.set(place, [caution]);
    }
    return places;
  });
  const cautionsAt = createKeyed(
    byPlace,
    (place): readonly ShownCaution[] => byPlace().get(place) ?? NONE,
    saysTheSame,
  );
  /** What is wrong with a given, where that shows only in what is worked out from it. */
  const amissAt = createKeyed(
    () => isWorded() && problems(),
    (id): string | null => (isWorded() && problems().find(({ by }) => by === id)?.text) || null,
  );
  const troubles = createMemo(() => {
    const { cards } = engine.view().worksheet;
    return troublesOf({ kinds: CARD_KINDS, cards, cautions: cautions(), problems: problems() });
  });
  return { problems, cautions, cautionsAt, amissAt, troubles, readOnce };
}
