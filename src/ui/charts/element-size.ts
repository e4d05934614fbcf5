// The size of an element on the page, as a signal.

import { type Accessor, createSignal, onCleanup } from "solid-js";

export type Size = { readonly width: number; readonly height: number };

/**
 * @param first size until it is measured [px]
 */
export function createElementSize(first: Size): {
  readonly size: Accessor<Size>;
  readonly watch: (element: HTMLElement) => void;
} {
  const [size, setSize] = createSignal<Size>(first, {
    equals: (a, b) => a.width === b.width && a.height === b.height,
  });
  const observer = new ResizeObserver(([entry]) => {
    const box = entry?.contentRect;
    // What is not shown has no size; it keeps the one that it had.
    if (!box || box.width === 0) return;
    setSize({ width: Math.round(box.width), height: Math.round(box.height) });
  });
  onCleanup(() => observer.disconnect());
  return { size, watch: (element) => observer.observe(element) };
}
