// The row of the number in hand comes into view, for whatever kind of row it is.

import { createEffect } from "solid-js";
import type { Sheet } from "../sheet.ts";

const ofPart = (line: HTMLElement | undefined, name: string): HTMLElement | null =>
  line?.closest(".card")?.querySelector<HTMLElement>(`:scope > ${name}`) ?? null;

/** What is in hand elsewhere than on a phone, at the head of the part. */
const handOver = (line: HTMLElement | undefined) => ofPart(line, ".zone-hand");

const isSticky = (element: HTMLElement): boolean => getComputedStyle(element).position === "sticky";

type InView = {
  readonly id: () => string;
  readonly line: () => HTMLElement | undefined;
  readonly held: () => boolean;
};

/**
 * On a phone the dock leaves room for a few rows: the one in hand is the first of them, also where what stands over it
 * becomes shorter or longer by what it is turned to. Elsewhere it comes out from under the hand, which stays at the head of
 * the part, and from over the line of cautions, which stays at its foot; in a window too low for both, the hand comes into view.
 */
export function keepInView(sheet: Sheet, { id, line, held }: InView): void {
  const isPhone = () => sheet.looking.width() === "phone";
  createEffect(() => {
    const hand = held() && !isPhone() ? handOver(line()) : null;
    if (hand && !isSticky(hand)) hand.scrollIntoView({ block: "start" });
  });
  createEffect(() => {
    if (!held()) return;
    // What stands over it changes its height with these.
    void [sheet.hand.curve().state, isPhone() && [sheet.failure(id()), sheet.working()]];
    const row = line();
    if (isPhone()) return row?.scrollIntoView({ block: "start" });
    const hand = handOver(row);
    if (!row || !hand || !isSticky(hand)) return;
    row.style.scrollMarginTop = `${hand.offsetHeight}px`;
    const foot = ofPart(row, ".cautions");
    row.style.scrollMarginBottom = `${foot && isSticky(foot) ? foot.offsetHeight : 0}px`;
    row.scrollIntoView({ block: "nearest" });
  });
}
