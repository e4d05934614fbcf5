// Everything that is asked of the whole worksheet again and again while it stands open, each by an asker of its own.

import { type Accessor, createSignal } from "solid-js";
import type { DrierYears } from "../ui/dialogs/rain-import.ts";
import type { AskingPool } from "../worker/asking-pool.ts";
import type { GivingOut } from "./gives-out.ts";
import { createSince } from "./held.ts";
import { createInHand } from "./in-hand.ts";
import { later } from "./later.ts";
import type { InHandTools } from "./turned.ts";
import { createUnsure } from "./unsure.ts";
import { fetchAfterAnswers } from "./words.ts";

const NO_YEARS: DrierYears = [];

/** Drier versions of the record, fetched when the weather's card first asks for them. */
function createDrierLater(tools: InHandTools, pool: AskingPool): Accessor<DrierYears> {
  const [years, setYears] = createSignal<Accessor<DrierYears> | null>(null);
  const fetched = later(async () => {
    const { createDrier } = await import("./drier.ts");
    return () => createDrier(tools.session.engine, pool.asker(), tools.options);
  });
  return () => {
    const known = years();
    if (!known)
      fetched().then(
        (made) => setYears(() => made),
        () => undefined,
      );
    return known ? known() : NO_YEARS;
  };
}

/** What gives out first, fetched once the answers stand: nothing is asked of a season that is not in yet. */
function createGivesOutLater({ session: { engine, baseline } }: InHandTools, pool: AskingPool): GivingOut {
  const fetched = later(async () => {
    const { createGivesOut } = await import("./gives-out.ts");
    return () => createGivesOut(engine, pool.asker(), baseline);
  });
  const made = fetchAfterAnswers(null, fetched, () => undefined);
  return {
    givesOut: () => made()?.givesOut() ?? null,
    givesOutFirst: () => made()?.givesOutFirst() ?? null,
    bounds: () => made()?.bounds() ?? [],
  };
}

export function createQuestions(tools: InHandTools, pool: AskingPool) {
  const { hand, inside } = createInHand(tools, pool.asker());
  const { bounds, ...givesOut } = createGivesOutLater(tools, pool);
  return {
    drier: createDrierLater(tools, pool),
    ...givesOut,
    hand,
    doubting: createUnsure(tools, inside, pool.asker()),
    since: createSince(tools.session, tools.options),
    plans: later(async () => {
      const { createPlans } = await import("./plans.ts");
      return () => createPlans(tools, pool.asker());
    }),
    lasting: later(async () => {
      const { createLasting } = await import("./lasting.ts");
      return () => createLasting(tools.session, pool.asker());
    }),
    nextMoney: later(async () => {
      const { createNextMoney } = await import("./next-money.ts");
      return () => createNextMoney(tools, pool.asker());
    }),
    seasonAnswers: later(async () => {
      const { createSeasonAnswers } = await import("./season-answers.ts");
      return () => createSeasonAnswers(tools, () => pool.asker());
    }),
    workBack: later(async () => {
      const { createWorkBack } = await import("./work-back.ts");
      return () => createWorkBack(tools, [pool.asker(), pool.asker()], bounds);
    }),
  };
}
