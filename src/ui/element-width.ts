// The width of an element on the page, as a signal.

import { type Accessor, createSignal, onCleanup } from "solid-js";

/**
 * @param first width until it is measured [px]
 * @returns the width [px], and what to hand the element to
 */
export function createElementWidth(first: number): {
  readonly width: Accessor<number>;
  readonly watch: (element: HTMLElement) => void;
} {
  const [width, setWidth] = createSignal(first);
  const observer = new ResizeObserver(([entry]) => setWidth(Math.round(entry?.contentRect.width ?? first)));
  onCleanup(() => observer.disconnect());
  return { width, watch: (element) => observer.observe(element) };
}
