// Fetches what is to do with numbers that are not sure as soon as one is in hand or one was said not to be sure.

import { type Accessor, createEffect, createSignal, getOwner, runWithOwner } from "solid-js";
import { isUnsure } from "../document/unsure.ts";
import type { Doubting } from "../ui/hand/doubting.ts";
import type { Asker } from "../worker/asking-pool.ts";
import type { InHandInside } from "./in-hand.ts";
import type { InHandTools } from "./turned.ts";

export function createUnsure(
  tools: InHandTools,
  inside: InHandInside,
  asker: Asker,
): Accessor<Doubting | null> {
  const [doubting, setDoubting] = createSignal<Doubting | null>(null);
  const owner = getOwner();
  let isFetched = false;
  createEffect(() => {
    if (isFetched || (tools.looking.inHand() === null && !isUnsure(tools.session.worksheet()))) return;
    isFetched = true;
    void import("./doubting.ts").then(({ createDoubting }) =>
      runWithOwner(owner, () => setDoubting(createDoubting(tools, inside, asker))),
    );
  });
  return doubting;
}
