// A page that is kept open comes to a new day: it moves on by itself, at midnight and where it is shown again after a sleep.

import { MINUTE } from "../units/constants.ts";
import { today } from "./clock.ts";

/** A machine that slept wakes with its timers where they stood: so often it is looked, as long as somebody may see it [ms]. */
const OFTEN = MINUTE * 1000;

/** What is listened to of a page. */
export type PageShown = {
  readonly document: Pick<Document, "addEventListener" | "removeEventListener" | "visibilityState">;
  readonly window: Pick<Window, "addEventListener" | "removeEventListener">;
};

/** [ms] from a moment to the next midnight here. */
function toMidnight(now: number): number {
  const at = new Date(now);
  return new Date(at.getFullYear(), at.getMonth(), at.getDate() + 1).getTime() - now;
}

/**
 * Tells each new day as soon as the clock has one, and nothing else.
 *
 * @returns looks at the clock at once; and stops looking
 */
export function followDays(onDay: (day: string) => void, { document, window }: PageShown) {
  let known = today();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const look = (): void => {
    const day = today();
    if (day === known) return;
    known = day;
    onDay(day);
  };
  const wait = (): void => {
    clearTimeout(timer);
    // What nobody sees waits until it is shown.
    if (document.visibilityState === "visible")
      timer = setTimeout(turn, Math.min(OFTEN, toMidnight(Date.now())));
  };
  const turn = (): void => {
    look();
    wait();
  };
  document.addEventListener("visibilitychange", turn);
  for (const event of ["pageshow", "focus"]) window.addEventListener(event, turn);
  wait();
  const stop = (): void => {
    clearTimeout(timer);
    document.removeEventListener("visibilitychange", turn);
    for (const event of ["pageshow", "focus"]) window.removeEventListener(event, turn);
  };
  return { look, stop };
}
