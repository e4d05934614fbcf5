// What this tab is: a name of its own as a writer, a sign to the other tabs that it is still there, and what a reload finds.

import { type InstantStore, instantStore } from "../storage/instant-store.ts";
import { chanceId } from "../storage/shelf.ts";

/** How long the end of a page is waited for before it counts as still being there [ms]: a busy machine takes seconds. */
const PATIENCE = { own: 8000, another: 5000 };

/** How often it is looked whether that page has kept its note itself meanwhile, or has said that it goes [ms]. */
const LOOK = 100;

/** Where the browser has no locks: a page that is there has kept its notes long before this age [ms]. */
const SURELY_KEPT = 5000;

const KEY = "eavesdrip:tab";

type Before = { readonly writer: string; readonly sheet: string };

/** Written by a page as it goes, so that nobody waits until the browser has taken it down: a busy machine takes seconds. */
const LEFT = "eavesdrip:left:";

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

/** Ends once nothing is waited for any more, or after our patience. */
function waitingWhile(isWaited: () => boolean, patience: number): AbortSignal {
  const ending = new AbortController();
  const until = Date.now() + patience;
  const look = setInterval(() => {
    if (isWaited() && Date.now() < until) return;
    clearInterval(look);
    ending.abort();
  }, LOOK);
  return ending.signal;
}

/** @param waiting null where no page can just be on its way out */
async function lockIsFree(writer: string, waiting: AbortSignal | null): Promise<boolean> {
  try {
    return await navigator.locks.request(
      lockOf(writer),
      waiting ? { signal: waiting } : { ifAvailable: true },
      (lock) => lock !== null,
    );
  } catch {
    return false;
  }
}

/** This tab, from now on; what the page before a reload left is read once, at the start. */
export function openTab(notes: InstantStore) {
  const store = instantStore(() => sessionStorage);
  const before = parsed(store.get(KEY));
  const writer = chanceId();
  // Held for as long as the page lives, and let go by the browser itself however the page ends.
  void navigator.locks?.request(lockOf(writer), () => new Promise(() => undefined)).catch(() => undefined);
  const hasSaid = (other: string): boolean => notes.get(LEFT + other) !== null;
  /** Its word may arrive after we have begun to wait for its lock. */
  const hasEnded = async (
    other: string,
    isLeft: () => boolean,
    patience: number | null,
  ): Promise<boolean> => {
    const isWaited = () => isLeft() && !hasSaid(other);
    const waiting = patience === null ? null : waitingWhile(isWaited, patience);
    return (await lockIsFree(other, waiting)) || (isLeft() && hasSaid(other));
  };
  return {
    writer,
    /** Sheet that was open in this tab before a reload, and who wrote there. */
    before,
    /** What a reload of this tab shall open. */
    shows: (sheet: string): void => {
      store.set(KEY, JSON.stringify({ writer, sheet } satisfies Before));
    },
    /** The page goes, and writes nothing any more. */
    leaves: (): void => {
      notes.set(LEFT + writer, "");
    },
    /** The page is there again, as by the back button. */
    returns: (): void => notes.del(LEFT + writer),
    /** What pages wrote as they went is of no use any more once their notes are taken up. */
    forgetLeft: (): void => {
      for (const key of notes.keys()) if (key.startsWith(LEFT) && key !== LEFT + writer) notes.del(key);
    },
    /**
     * Whether a page that left a note is gone, so that its note is ours to take up.
     *
     * @param isLeft whether the note still lies there: a page that lives takes it away itself
     */
    isGone: async (
      left: { readonly writer: string; readonly at: number },
      isLeft: () => boolean,
    ): Promise<boolean> => {
      if (left.writer === writer) return false;
      if (hasSaid(left.writer)) return true;
      const [isOwn, age] = [left.writer === before?.writer, Date.now() - left.at];
      if (typeof navigator.locks?.request === "function") {
        const patience = isOwn ? PATIENCE.own : PATIENCE.another;
        return hasEnded(left.writer, isLeft, isOwn || age < SURELY_KEPT ? patience : null);
      }
      return isOwn || age > SURELY_KEPT;
    },
  };
}

export type Tab = ReturnType<typeof openTab>;
