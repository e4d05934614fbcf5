// What may follow an edit by a moment: it wakes once the edit's own numbers have been painted, so that a key never waits
// for the drawing and the charts.

import {
  type Accessor,
  createComputed,
  createMemo,
  createSignal,
  getListener,
  on,
  onCleanup,
  untrack,
} from "solid-js";
import { afterPaint } from "../ui/after-paint.ts";
import type { Sheet } from "../ui/sheet.ts";
import { createKeyed } from "./keyed.ts";

/** However fast a number is turned, what follows it is never behind by more than twice this and a frame [ms]. */
const BEHIND = 400;

/**
 * Counts up after the paint that follows a change of what is watched. It waits for a pause as long as what followed took last,
 * so that on a slow device it does not stand in the way of the next key; when it may not wait any longer, it comes right after
 * the paint of that key, never before it.
 */
function createFollowing(watch: Accessor<unknown>): Accessor<number> {
  const [count, setCount] = createSignal(0);
  let callOff: (() => void) | null = null;
  let [since, took] = [0, 0];
  const follow = (): void => {
    callOff = null;
    const began = performance.now();
    setCount((before) => before + 1);
    took = performance.now() - began;
  };
  createComputed(
    on(
      watch,
      () => {
        const now = performance.now();
        if (!callOff) since = now;
        const behind = now - since;
        if (callOff && behind > 2 * BEHIND) return;
        callOff?.();
        callOff = afterPaint(follow, behind > BEHIND ? 0 : Math.min(took, BEHIND / 2));
      },
      { defer: true },
    ),
  );
  onCleanup(() => callOff?.());
  return count;
}

function lateBy(sheet: Sheet, following: Accessor<unknown>): Sheet {
  const late = <Value>(read: Accessor<Value>): Accessor<Value> => {
    const kept = createMemo(() => {
      following();
      return untrack(read);
    });
    return () => (getListener() ? kept() : read());
  };
  return {
    ...sheet,
    worksheet: late(sheet.worksheet),
    result: createKeyed(following, sheet.result),
    shown: createKeyed(following, sheet.shown),
    heldResult: createKeyed(following, sheet.heldResult),
    heldCards: late(sheet.heldCards),
    held: late(sheet.held),
    stored: late(sheet.stored),
    troubles: late(sheet.troubles),
    working: late(sheet.working),
    moving: late(sheet.moving),
  };
}

/**
 * The sheet as drawings read it: they wake after the paint of what woke them; who only asks is told what is so now. Late once
 * more, for what may come in yet another task.
 *
 * @param watch what wakes them
 */
export function createLate(sheet: Sheet, watch: Accessor<unknown>): Sheet {
  const following = createFollowing(watch);
  const last = lateBy(sheet, createFollowing(following));
  return { ...lateBy(sheet, following), late: () => last };
}
