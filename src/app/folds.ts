// Which cards stand open. On a narrow screen they begin folded to their one or two answers: a phone shows the whole place
// in a few thumbs' lengths, and the card that somebody asks for opens.

import { createSignal } from "solid-js";

/** Narrower than this, cards begin folded; the page has one column there. */
const ONE_COLUMN = "(max-width: 45.99rem)";

export type Folds = {
  readonly isOpen: (card: string) => boolean;
  readonly set: (card: string, open: boolean) => void;
};

/** Cards are folded or open as the screen's width says, until the reader says otherwise. */
export function createFolds(): Folds {
  const atFirst = !matchMedia(ONE_COLUMN).matches;
  const [chosen, setChosen] = createSignal<ReadonlyMap<string, boolean>>(new Map());
  return {
    isOpen: (card) => chosen().get(card) ?? atFirst,
    set: (card, open) => {
      if ((chosen().get(card) ?? atFirst) !== open) setChosen(new Map(chosen()).set(card, open));
    },
  };
}
