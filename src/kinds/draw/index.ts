// What else takes water from a tank: animals, rinsing, trays.

import type { Kind } from "../kind.ts";
import { given, link, output } from "../rows.ts";
import { DRAW_SPANS } from "./spans.ts";

export const draw: Kind = {
  kind: "draw",
  label: "Other use",
  purpose: "Water taken for something that is no bed: animals, rinsing, trays of seedlings.",
  group: "Ways for the water",
  icon: { ink: "M4 9h7V6h5v3h1v4M4 9v3h9", tone: "M17 16v4", color: "water" },
  joins: { from: "newest" },
  drawn: { as: "draw", spoken: "{title} from {from|no tank}" },
  glance: ["share_met", "season_volume"],
  spans: DRAW_SPANS,
  rows: [
    link("from", "Taken from", "holds_water", "taken from no tank", "The tank it is drawn from."),
    given(
      "volume",
      "Each time",
      "volume",
      [5, "gal"],
      "How much is taken each time. It comes before the beds.",
    ),
    given("every", "Every", "span", [1, "day"], "How often.", { min: 86_400, max: 31_536_000 }),
    output(
      "season_volume",
      "In a season",
      "season.run",
      "volume",
      "What it got in a usual season.",
      "your record, day by day",
    ),
    output(
      "share_met",
      "Share it got",
      "season.run",
      "share",
      "What it got over what it asked for, in the season.",
      "your record, day by day",
    ),
    output(
      "days_short",
      "Days short, a season",
      "season.run",
      "count",
      "Days on which it got less than it asked for.",
      "your record, day by day",
    ),
  ],
  models: [],
  cautions: [
    {
      id: "draw_drinking",
      text: "Untreated roof water is not for people to drink, and clean water for animals is a matter for your vet and local rules.",
      beside: "volume",
      source: "UConn Extension",
      weight: "harm",
    },
  ],
};
