// What else takes water from a tank: animals, rinsing, trays.

import { COMMON_YEAR, DAY } from "../../units/constants.ts";
import type { Kind } from "../kind.ts";
import { given, link, output } from "../rows.ts";
import { drawSeason } from "./season.ts";
import { DRAW_SPANS } from "./spans.ts";

export const draw: Kind = {
  kind: "draw",
  label: "Other use",
  purpose: "Water taken for something that is no bed: animals, rinsing, trays of seedlings.",
  group: "Ways for the water",
  season: drawSeason,
  icon: { ink: "M4 9h7V6h5v3h1v4M4 9v3h9", tone: "M17 16v4", color: "water" },
  joins: { from: "newest" },
  drawn: {
    as: "draw",
    beside: [{ row: "volume", tint: "water", text: "{} every {every}" }],
    spoken: "{title} from {from|no tank}",
  },
  glance: ["share_met", "season_volume"],
  spans: DRAW_SPANS,
  rows: [
    link("from", "Taken from", "holds_water", "taken from no tank"),
    given("volume", "Each time", "volume", [5, "gal"]),
    given("every", "Every", "span", [1, "day"], { min: DAY, max: COMMON_YEAR * DAY }),
    output("season_volume", "In a season", "season.run", "volume"),
    output("share_met", "Share it got", "season.run", "share"),
    output("days_short", "Days short, a season", "season.run", "count"),
  ],
  models: [],
  cautions: [
    {
      id: "draw_drinking",
      beside: "volume",
      weight: "harm",
      kills: true,
    },
  ],
};
