// Whether the window is as a media query says, now and when it changes.

import { type Accessor, createSignal, onCleanup } from "solid-js";

export function createMatching(query: string): Accessor<boolean> {
  const list = matchMedia(query);
  const [matches, setMatches] = createSignal(list.matches);
  const look = (): void => {
    setMatches(list.matches);
  };
  list.addEventListener("change", look);
  onCleanup(() => list.removeEventListener("change", look));
  return matches;
}
