// Moments taken in the page itself: when something was painted, and how long the worker was at work.

import type { Page } from "playwright-core";

/** What the page says aloud once its first answers were painted. */
const SAID = "The first answers were painted.";

export type Moments = {
  /** When the first answers were painted, from the start of the visit [ms]. */
  first: number | null;
  /** When the first numbers were painted that are worked out without a season: those of the open part [ms]. */
  numbers: number | null;
  /** When an edit's newest number was painted, from its key [ms]. */
  edited: number[];
  /** When what the season makes of the edit was painted, from its key [ms]. */
  answered: number[];
  /** How long the worker was at each run [ms]. */
  worked: number[];
};

declare global {
  interface Window {
    moments: Moments;
  }
}

/** Runs in the page before anything else does. */
function watch(said: string): void {
  const moments: Moments = { first: null, numbers: null, edited: [], answered: [], worked: [] };
  window.moments = moments;
  /** After the next frame: what stands in the document by then has been painted. */
  const painted = (then: (at: number) => void): void => {
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => then(performance.now());
      port2.postMessage(null);
    });
  };
  let waits = false;
  let waitsForNumbers = false;
  let key: number | null = null;
  const look = (): void => {
    if (!waits && document.querySelector("h1.lead")?.textContent) {
      waits = true;
      painted((at) => {
        moments.first = at;
        console.debug(said);
      });
    }
    if (!waitsForNumbers && document.querySelector("article.card .row")) {
      waitsForNumbers = true;
      painted((at) => {
        moments.numbers = at;
      });
    }
    if (key === null || document.querySelector('.answers[aria-busy="true"]')) return;
    const from = key;
    key = null;
    painted((at) => moments.answered.push(at - from));
  };
  new MutationObserver(look).observe(document, {
    subtree: true,
    childList: true,
    attributeFilter: ["aria-busy"],
  });
  addEventListener(
    "keydown",
    ({ timeStamp }) => {
      painted((at) => moments.edited.push(at - timeStamp));
      // The answers count as worked out once they were not.
      key = null;
      queueMicrotask(() => {
        key = timeStamp;
      });
    },
    { capture: true },
  );
  const Usual = Worker;
  window.Worker = class extends Usual {
    constructor(...given: ConstructorParameters<typeof Usual>) {
      super(...given);
      const began = new Map<number, number>();
      const post = this.postMessage.bind(this);
      this.postMessage = (message: { say?: string; id?: number }) => {
        if (message.say === "run") began.set(message.id ?? 0, performance.now());
        post(message);
      };
      this.addEventListener("message", ({ data }) => {
        const from = data.say === "ran" ? began.get(data.id) : undefined;
        if (from !== undefined) moments.worked.push(performance.now() - from);
      });
    }
  };
}

export const watchMoments = (page: Page): Promise<void> =>
  page.addInitScript(watch, SAID).then(() => undefined);

/**
 * Resolves once the first answers were painted. The page says so by itself: asking it means reading a program of the asker's
 * in it, which a small page does after its paint and a larger one before.
 */
export const firstPainted = async (page: Page): Promise<void> => {
  await page.waitForEvent("console", (message) => message.text() === SAID);
};

export const momentsOf = (page: Page): Promise<Moments> => page.evaluate(() => window.moments);
