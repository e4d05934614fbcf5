// How panels start: on the battery, or without one straight on the pump; asked for their watts.

import panels from "../../../shared/panels.json";
import type { Start } from "../asking.ts";
import type { LaidPart, Wish } from "../lay-out.ts";
import { nearest } from "../tabled.ts";

function laid(wish: Wish): readonly LaidPart[] {
  if (wish.panels === 0) return [];
  const givens = wish.panels > 1 ? { count: { value: wish.panels, unit: "1" } } : {};
  const links = wish.batteries > 0 ? { charges: "battery" } : {};
  return [{ key: "panel", title: wish.panels > 1 ? "Solar panels" : "Solar panel", givens, links }];
}

export const start: Start = {
  counted: [{ sort: "panels", place: 7, label: "Solar panel", help: "all of one kind", most: 6 }],
  laid,
  asks: [
    {
      place: 56,
      rows: ["rated_power"],
      ask: "{title}: how many watts does the label of one say?",
      hint: "Beside W or Wp on its back.",
      field: {
        row: "rated_power",
        told: (si) => ({
          cells: { value: nearest(panels.panels, ({ rated_power }) => rated_power, si), unit: "" },
        }),
      },
      says: ({ number, show }) => {
        const current = number("charge_current");
        return current === null ? null : `In full sun {${show(current, "current")}} go into the battery.`;
      },
    },
  ],
};
