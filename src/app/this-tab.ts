// What this tab is: a name of its own as a writer, a sign to the other tabs that it is still there, and what a reload finds.

import { instantStore } from "../storage/instant-store.ts";
import { chanceId } from "../storage/shelf.ts";

/** How long the end of another page is waited for before it counts as still being there [ms]. */
const PATIENCE = 1000;

/** Where the browser has no locks: a page that is there has kept its notes long before this age [ms]. */
const SURELY_KEPT = 5000;

const KEY = "eavesdrip:tab";

type Before = { readonly writer: string; readonly sheet: string };

const lockOf = (writer: string): string => `eavesdrip:writer:${writer}`;

function isBefore(data: unknown): data is Before {
  if (typeof data !== "object" || data === null) return false;
  const { writer, sheet } = data as Partial<Before>;
  return typeof writer === "string" && typeof sheet === "string";
}

function parsed(text: string | null): Before | null {
  try {
    const data: unknown = JSON.parse(text ?? "null");
    return isBefore(data) ? data : null;
  } catch {
    return null;
  }
}

/** @param waits whether the page may just be on its way out */
async function lockIsFree(writer: string, waits: boolean): Promise<boolean> {
  try {
    return await navigator.locks.request(
      lockOf(writer),
      waits ? { signal: AbortSignal.timeout(PATIENCE) } : { ifAvailable: true },
      (lock) => lock !== null,
    );
  } catch {
    return false;
  }
}

/** This tab, from now on; what the page before a reload left is read once, at the start. */
export function openTab() {
  const store = instantStore(() => sessionStorage);
  const before = parsed(store.get(KEY));
  const writer = chanceId();
  // Held for as long as the page lives, and let go by the browser itself however the page ends.
  void navigator.locks?.request(lockOf(writer), () => new Promise(() => undefined)).catch(() => undefined);
  return {
    writer,
    /** Sheet that was open in this tab before a reload, and who wrote there. */
    before,
    /** What a reload of this tab shall open. */
    shows: (sheet: string): void => {
      store.set(KEY, JSON.stringify({ writer, sheet } satisfies Before));
    },
    /** Whether a page that left a note is gone, so that its note is ours to take up. */
    isGone: async (left: { readonly writer: string; readonly at: number }): Promise<boolean> => {
      if (left.writer === writer) return false;
      const [isOwn, age] = [left.writer === before?.writer, Date.now() - left.at];
      if (typeof navigator.locks?.request === "function")
        return lockIsFree(left.writer, isOwn || age < SURELY_KEPT);
      return isOwn || age > SURELY_KEPT;
    },
  };
}

export type Tab = ReturnType<typeof openTab>;
