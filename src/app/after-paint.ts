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
import type { Sheet } from "../ui/sheet.ts";
import { createKeyed } from "./keyed.ts";

/** A page that nobody sees paints nothing: there it follows by the clock [ms]. */
const UNSEEN = 500;

/** Calls back in a task of its own after the next frame; returns what calls it off. */
function afterPaint(then: () => void): () => void {
  let timer = setTimeout(then, UNSEEN);
  const frame = requestAnimationFrame(() => {
    clearTimeout(timer);
    timer = setTimeout(then);
  });
  return () => {
    clearTimeout(timer);
    cancelAnimationFrame(frame);
  };
}

/** Counts up after the paint that follows a change of what is watched; changes that come together count once. */
function createFollowing(watch: Accessor<unknown>): Accessor<number> {
  const [count, setCount] = createSignal(0);
  let callOff: (() => void) | null = null;
  const follow = (): void => {
    callOff?.();
    callOff = null;
    setCount((before) => before + 1);
  };
  createComputed(
    on(
      watch,
      () => {
        callOff ??= afterPaint(follow);
      },
      { defer: true },
    ),
  );
  onCleanup(() => callOff?.());
  return count;
}

/** The sheet as drawings and charts read it: they wake after the paint of what woke them; who only asks is told what is so now. */
export function createLate(sheet: Sheet, watch: Accessor<unknown>): Sheet {
  const following = createFollowing(watch);
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
  };
}
