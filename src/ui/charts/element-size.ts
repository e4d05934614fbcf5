// The size of an element on the page, as a signal; on paper another one.

import { type Accessor, createSignal, onCleanup } from "solid-js";

export type Size = {
  readonly width: number;
  readonly height: number;
  /** It is being printed. */
  readonly paper?: true;
};

/**
 * @param first size until it is measured [px]
 * @param paper size on paper, which is as wide whatever screen it is printed from [px]
 */
export function createElementSize(
  first: Size,
  paper: Size,
): {
  readonly size: Accessor<Size>;
  readonly watch: (element: HTMLElement) => void;
} {
  const [size, setSize] = createSignal<Size>(first, {
    equals: (a, b) => a.width === b.width && a.height === b.height && a.paper === b.paper,
  });
  let seen = first;
  const observer = new ResizeObserver(([entry]) => {
    const box = entry?.contentRect;
    // What is not shown has no size; it keeps the one that it had.
    if (!box || box.width === 0 || size().paper) return;
    seen = { width: Math.round(box.width), height: Math.round(box.height) };
    setSize(seen);
  });
  const onPaper = (): void => {
    setSize({ ...paper, paper: true });
  };
  const onScreen = (): void => {
    setSize(seen);
  };
  addEventListener("beforeprint", onPaper);
  addEventListener("afterprint", onScreen);
  onCleanup(() => {
    observer.disconnect();
    removeEventListener("beforeprint", onPaper);
    removeEventListener("afterprint", onScreen);
  });
  return { size, watch: (element) => observer.observe(element) };
}
