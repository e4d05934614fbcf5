// Word between the tabs of one browser: what one has kept, the others that show the same worksheet go on from.

type Word = { readonly id: string; readonly revision: number };

function isWord(data: unknown): data is Word {
  if (typeof data !== "object" || data === null) return false;
  const { id, revision } = data as Partial<Word>;
  return typeof id === "string" && typeof revision === "number";
}

/** A browser that has no such word keeps the tabs apart; then the shelf makes a copy where two changed the same sheet. */
export function openOtherTabs() {
  const channel = typeof BroadcastChannel === "undefined" ? null : new BroadcastChannel("eavesdrip");
  return {
    tell: (word: Word): void => channel?.postMessage(word),
    /** @returns ends the listening */
    listen: (onKept: (word: Word) => void): (() => void) => {
      const hear = ({ data }: MessageEvent<unknown>): void => {
        if (isWord(data)) onKept(data);
      };
      channel?.addEventListener("message", hear);
      return () => channel?.removeEventListener("message", hear);
    },
  };
}

export type OtherTabs = ReturnType<typeof openOtherTabs>;
