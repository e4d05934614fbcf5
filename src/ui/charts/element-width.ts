// The width of an element on the page, as a signal.

import { type Accessor, createMemo } from "solid-js";
import { createElementSize } from "./element-size.ts";

/**
 * @param first width until it is measured, and on paper [px]
 * @returns the width [px], and what to hand the element to
 */
export function createElementWidth(first: number): {
  readonly width: Accessor<number>;
  readonly watch: (element: HTMLElement) => void;
} {
  const { size, watch } = createElementSize({ width: first, height: 0 });
  return { width: createMemo(() => size().width), watch };
}
