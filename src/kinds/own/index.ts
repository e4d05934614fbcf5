// A line of the user's own: a name, a formula over any card's quantities, and a note.

import type { Kind } from "../kind.ts";
import { text } from "../rows.ts";

export const own: Kind = {
  kind: "own",
  label: "A line of your own",
  purpose: "Anything you can work out from the other numbers.",
  group: "Lines of your own",
  icon: { ink: "M4 7h16M4 12h16M4 17h10" },
  glance: ["value"],
  rows: [
    text("name", "Called", "My line"),
    text("formula", "Worked out as", "site.minutes_per_day"),
    text("unit", "Shown in", ""),
    text("note", "Note", ""),
    {
      row: "user_formula",
      name: "value",
      label: "Comes to",
      formula: "formula",
      unit: "unit",
      called: "name",
    },
  ],
  models: [],
  cautions: [],
};
