// The words of the cards, fetched as soon as the answers have been painted: numbers need not wait for them.

import { createSignal } from "solid-js";
import type { Words } from "../graph/words.ts";
import { firstPaint } from "../ui/after-paint.ts";

const AGAIN_AFTER = 5000;

/** The words, empty until they are here; fetched again as long as it takes, since cautions are among them. */
export function fetchWords(onFailure: () => void) {
  const [words, setWords] = createSignal<Words>({});
  const fetch = (): void => {
    import("../kinds/words.ts").then(
      ({ KIND_WORDS }) => setWords(KIND_WORDS),
      () => {
        onFailure();
        setTimeout(fetch, AGAIN_AFTER);
      },
    );
  };
  void firstPaint.then(fetch);
  return words;
}
