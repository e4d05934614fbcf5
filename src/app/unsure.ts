// Fetches what is to do with numbers that are not sure as soon as one is in hand or one was said not to be sure.

import { type Accessor, createEffect, createSignal } from "solid-js";
import { isUnsure } from "../document/unsure.ts";
import type { Doubting } from "../ui/hand/doubting.ts";
import type { Asker } from "../worker/asking-pool.ts";
import type { InHandInside } from "./in-hand.ts";
import { later } from "./later.ts";
import type { InHandTools } from "./turned.ts";

export function createUnsure(
  tools: InHandTools,
  inside: InHandInside,
  asker: Asker,
): Accessor<Doubting | null> {
  const [doubting, setDoubting] = createSignal<Doubting | null>(null);
  const fetched = later(async () => {
    const { createDoubting } = await import("./doubting.ts");
    return () => createDoubting(tools, inside, asker);
  });
  createEffect(() => {
    if (tools.looking.inHand() === null && !isUnsure(tools.session.worksheet())) return;
    void fetched().then(setDoubting, () => undefined);
  });
  return doubting;
}
