// Parts of the page that come once the first answers have been painted by themselves.

import { type Component, lazy } from "solid-js";
import { firstPaint, wholeWorked } from "./after-paint.ts";

/** Each part of the page is drawn in a task of its own: together they would keep a touch waiting. */
const ownTask = (): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve);
  });

/**
 * A component that is fetched after the first answers' paint, while the rest of the worksheet is worked out; until both are
 * here nothing stands in its place.
 */
export const lazyAfterAnswers = <Props extends object>(fetch: () => Promise<Component<Props>>) =>
  lazy<Component<Props>>(async () => {
    await firstPaint;
    const fetched = await fetch();
    await wholeWorked;
    await ownTask();
    return { default: fetched };
  });
