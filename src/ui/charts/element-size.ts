// The size of an element on the page, as a signal.

import { type Accessor, createSignal, onCleanup } from "solid-js";
import { afterPaint } from "../after-paint.ts";

export type Size = { readonly width: number; readonly height: number };

/**
 * @param first size until it is measured [px]
 * @param pause how long after its paint a change is told [ms], where much hangs on it; null: in the frame itself
 */
export function createElementSize(
  first: Size,
  pause: number | null = null,
): {
  readonly size: Accessor<Size>;
  readonly watch: (element: HTMLElement) => void;
} {
  const [size, setSize] = createSignal<Size>(first, {
    equals: (a, b) => a.width === b.width && a.height === b.height,
  });
  let newest: Size | null = null;
  let callOff: (() => void) | null = null;
  const tell = (): void => {
    callOff = null;
    setSize(newest ?? first);
  };
  const observer = new ResizeObserver(([entry]) => {
    const box = entry?.contentRect;
    // What is not shown has no size; it keeps the one that it had.
    if (!box || box.width === 0) return;
    const isFirst = newest === null;
    newest = { width: Math.round(box.width), height: Math.round(box.height) };
    if (pause === null || isFirst) tell();
    else callOff ??= afterPaint(tell, pause);
  });
  onCleanup(() => {
    callOff?.();
    observer.disconnect();
  });
  return { size, watch: (element) => observer.observe(element) };
}
