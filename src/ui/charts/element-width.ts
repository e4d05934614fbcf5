// The width of an element on the page, as a signal.

import { type Accessor, createSignal, onCleanup } from "solid-js";

/**
 * @param first width until it is measured, and on paper [px]
 * @returns the width [px], and what to hand the element to
 */
export function createElementWidth(first: number): {
  readonly width: Accessor<number>;
  readonly watch: (element: HTMLElement) => void;
} {
  const [width, setWidth] = createSignal(first);
  const observer = new ResizeObserver(([entry]) => setWidth(Math.round(entry?.contentRect.width ?? first)));
  // Paper is as wide whatever screen it is printed from, and nothing observes it in time.
  let seen = first;
  const onPaper = (): void => {
    seen = width();
    setWidth(first);
  };
  const onScreen = (): void => {
    setWidth(seen);
  };
  addEventListener("beforeprint", onPaper);
  addEventListener("afterprint", onScreen);
  onCleanup(() => {
    observer.disconnect();
    removeEventListener("beforeprint", onPaper);
    removeEventListener("afterprint", onScreen);
  });
  return { width, watch: (element) => observer.observe(element) };
}
