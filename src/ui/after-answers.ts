// Parts of the page that come once the first answers have been painted by themselves.

import { type Component, lazy } from "solid-js";
import { firstPaint } from "./after-paint.ts";

/** A component that is fetched after the first answers' paint; until it is here nothing stands in its place. */
export const lazyAfterAnswers = <Props extends object>(fetch: () => Promise<Component<Props>>) =>
  lazy<Component<Props>>(async () => {
    await firstPaint;
    return { default: await fetch() };
  });
