// How pumps start: one that is carried about, by its label until a bucket is timed.

import pumps from "../../../shared/pumps.json";
import type { Start } from "../asking.ts";
import { type LaidPart, pumpedFrom, type Wish } from "../lay-out.ts";
import { nearest } from "../tabled.ts";

/** Its key; those of hoses are numbered. */
export const LAID_PUMP = "the_pump";

function laid(wish: Wish): readonly LaidPart[] {
  if (pumpedFrom(wish).length === 0) return [];
  const source = wish.batteries > 0 ? "battery" : wish.panels > 0 ? "panel" : null;
  return [
    { key: LAID_PUMP, title: "Pump", givens: {}, links: source === null ? {} : { powered_by: source } },
  ];
}

export const start: Start = {
  counted: [{ sort: "pumps", place: 5, label: "Pump", help: "12 volts", most: 1 }],
  laid,
  asks: [
    {
      place: 50,
      rows: ["open_flow"],
      ask: "{title}: how much does its label say it moves in an hour?",
      hint: "It is on the pump or its box, and often in its name.",
      field: {
        row: "open_flow",
        unit: { us: "gph", metric: "L/h" },
        told: (si) => ({
          size: { value: nearest(pumps.pumps, ({ open_flow }) => open_flow, si), unit: "" },
        }),
      },
      says: ({ number, show }) => {
        const flow = number("open_in_use");
        return flow === null
          ? null
          : `Labels promise too much: until you time a bucket, it counts as {${show(flow, "flow")}}.`;
      },
    },
  ],
};
