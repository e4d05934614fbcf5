// What is expected of the coming days at a place, kept on this device and never in the worksheet.

import { createSignal } from "solid-js";
import type { InstantStore } from "../storage/instant-store.ts";

/** @param sheet by what the open worksheet is kept; what the store refuses stands until the page goes */
export function createForecast(store: InstantStore, sheet: string) {
  const key = `eavesdrip-forecast ${sheet}`;
  const [text, setText] = createSignal(store.get(key) ?? "");
  return {
    text,
    /** As text of days, see season/forecast.ts; "" nothing is expected, and nothing kept. */
    set: (next: string): void => {
      setText(next);
      if (next === "") store.del(key);
      else store.set(key, next);
    },
  };
}
