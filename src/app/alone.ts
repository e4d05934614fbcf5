// What an answer becomes by the number in hand alone, where that is not sure: at both its ends, and at all that was tried
// between them.

import { createComputed, createMemo, createSignal, on, onCleanup, untrack } from "solid-js";
import { sameData } from "../document/same.ts";
import type { TriedPoint } from "../ui/hand/hand.ts";
import { spanWords } from "../units/span-words.ts";
import type { InHandInside } from "./in-hand.ts";

/** A thumb that is dragged goes on moving; the ends are asked once they rest [ms]. */
const REST = 400;

/** As it is read at the least and at the greatest of them; "" where some have no answer for the whole place. */
export function aloneSaid(between: readonly TriedPoint[], ends: readonly TriedPoint[]): string {
  const [low = 1, high = 0] = ends.map(({ place }) => place).sort((a, b) => a - b);
  const all = [...ends, ...between.filter(({ place }) => place >= low && place <= high)];
  if (ends.length < 2 || all.some(({ answer, without }) => answer === null || without)) return "";
  const rising = all.sort((a, b) => (a.answer ?? 0) - (b.answer ?? 0));
  return spanWords(rising[0]?.said ?? "", rising.at(-1)?.said ?? "");
}

type Ends = (answer: string) => readonly TriedPoint[];

/** Asked once the curve stands: its points are part of the answer. */
export function createAlone({ turned, curve, made }: InHandInside): (id: string) => string {
  const [known, setKnown] = createSignal<Ends | null>(null);
  const wish = createMemo<readonly number[]>(() => (curve().state === "ready" ? turned.ends() : []), [], {
    equals: sameData,
  });
  let timer: ReturnType<typeof setTimeout> | undefined;
  createComputed(
    on(wish, (ends) => {
      clearTimeout(timer);
      setKnown(null);
      if (ends.length < 2) return;
      timer = setTimeout(() => untrack(() => made()?.askAt(ends, (of) => setKnown(() => of))), REST);
    }),
  );
  onCleanup(() => clearTimeout(timer));
  return (id) => {
    const [ends, panel] = [known(), curve().panels.find(({ answer }) => answer === id)];
    return ends && panel ? aloneSaid(panel.points, ends(id)) : "";
  };
}
