// Common drums and totes to start a tank from.

import tanks from "../../../shared/tanks.json";
import type { Typed } from "../../graph/types.ts";

type Size = { readonly value: number; readonly unit: string };

type Listed = {
  readonly label: string;
  readonly shape: string;
  readonly capacity: Size;
  readonly water_height: Size;
  readonly diameter?: Size;
  readonly length?: Size;
  readonly width?: Size;
};

const TANKS: Readonly<Record<string, Listed>> = tanks.tanks;

/** By word. A map, so that no inherited name is ever found. */
export const LISTED: ReadonlyMap<string, Listed> = new Map(Object.entries(TANKS));

/** What may be chosen: one's own figures first. */
export const STARTS: Readonly<Record<string, string>> = {
  own: "your own figures",
  ...Object.fromEntries([...LISTED].map(([word, { label }]) => [word, label])),
};

/** A dimension's usual value by what the tank starts from. */
export function byStart(name: "water_height" | "diameter" | "length" | "width", own: Typed | null) {
  const pick: Record<string, Typed> = own ? { own } : {};
  for (const [word, listed] of LISTED) {
    const size = listed[name];
    if (size) pick[word] = [size.value, size.unit];
  }
  return { by: "start_from", pick };
}
