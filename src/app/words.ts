// What is fetched as soon as the answers have been painted: words of the cards, and what their workings say.

import { type Accessor, createSignal } from "solid-js";
import type { Words } from "../graph/words.ts";
import { firstPaint, wholeWorked } from "../ui/after-paint.ts";

const AGAIN_AFTER = 5000;

/** What is fetched, until it is here what stands in its place; fetched again as long as it takes. */
export function fetchAfterAnswers<Fetched, Until>(
  until: Until,
  load: () => Promise<Fetched>,
  onFailure: () => void,
): Accessor<Fetched | Until> {
  const [fetched, setFetched] = createSignal<Fetched | Until>(until);
  const fetch = (): void => {
    Promise.all([load(), wholeWorked]).then(
      ([here]) => setFetched(() => here),
      () => {
        onFailure();
        setTimeout(fetch, AGAIN_AFTER);
      },
    );
  };
  void firstPaint.then(fetch);
  return fetched;
}

/** The words, empty until they are here: numbers need not wait for them, but cautions are among them. */
export const fetchWords = (onFailure: () => void): Accessor<Words> =>
  fetchAfterAnswers({}, async () => (await import("../kinds/words.ts")).KIND_WORDS, onFailure);

export type Workings = typeof import("./workings.ts");

/** What tells a working: nobody can unfold one before the answers stand. */
export const fetchWorkings = (): Accessor<Workings | null> =>
  fetchAfterAnswers(
    null,
    () => import("./workings.ts"),
    () => undefined,
  );
