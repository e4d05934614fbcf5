// A solar panel: its label and its stand, what it puts into a battery, and whether it drives a pump by itself.

import type { Row } from "../../graph/types.ts";
import type { Kind } from "../kind.ts";
import { COSTS, formula, hidden, hiddenFrom, output } from "../rows.ts";
import { PANEL_CAUTIONS } from "./cautions.ts";
import { driving } from "./direct.ts";
import { GIVENS } from "./givens.ts";
import { chargingModel, facing, supplying, testingPanel, tracking } from "./models.ts";
import { panelSeason } from "./season.ts";
import { PANEL_SPANS } from "./spans.ts";

/** Only where a pump hangs on it alone. */
const ALONE = { when: { row: "drives", is: ["1"] } } as const;

const fromPumps = hiddenFrom("pump", "powered_by");

const share = (name: string, label: string): Row => output(name, label, "driving", "share", ALONE);

const RESULTS: readonly Row[] = [
  output("tested_health", "Health by that noon", "testing", "share", { minor: true }),
  hidden("health_in_use", "Reckoned with", "testing", "share"),
  formula("rating_of_points", "Watts by its points", "power", "vmp * imp", { hidden: true }),
  formula(
    "charge_current",
    "Pushes into it at most",
    "current",
    "count * health_in_use * (isc + tracks * (rated_power / charges.charging_voltage - isc))",
    { minor: true, quiet: true },
  ),
  hidden("tracks", "Tracks", "tracking", "count"),
  hidden("faces_away", "Turns its back", "facing", "count"),
  formula("whole_short", "All of it, shorted", "current", "isc * count", { hidden: true }),
  fromPumps("wire_resistance", "Wire of its pump", "resistance", "wire_resistance", "sum"),
  fromPumps("pumps", "Pumps on it alone", "series", "liftings", "list"),
  hidden("supply", "Its light by month", "supplying", "series"),
  hidden("charge_months", "Charge by month", "charging", "series"),
  hidden("monthly_energy", "Charge of a mean day, by month", "charging", "series"),
  hidden("by_month", "Month by month", "charging", "series"),
  output("daily_energy", "Puts in on a mean day", "charging", "energy"),
  output("worst_month", "Worst month", "charging", "text", { minor: true }),
  formula(
    "recharge_time",
    "Fills the battery in",
    "span",
    "charges.usable_energy / (daily_energy * charges.round_trip_efficiency) * 1 day",
    { none: [{ if: "daily_energy <= 0 Wh", reason: "no sun reaches it in that month" }] },
  ),
  output("direct_hours", "Drives the pump, a clear day", "driving", "duration", ALONE),
  output("direct_full_hours", "Drives it fully, a clear day", "driving", "duration", {
    ...ALONE,
    minor: true,
  }),
  share("direct_flow_share", "Share of full flow when you water"),
  share("share_early", "Share of full flow at nine"),
  share("share_noon", "Share of full flow at noon"),
  share("share_late", "Share of full flow at three"),
  share("share_overcast", "Share at noon, under cloud"),
  output("highest_voltage", "Highest voltage at the pump", "driving", "voltage", { ...ALONE, minor: true }),
  hidden("drives", "Drives a pump alone", "driving", "count"),
  hidden("overvoltage", "Over its stated one", "driving", "factor"),
  hidden("direct_day", "Through the day", "driving", "series"),
  output("watts_over_pump", "Its watts over the pump's", "driving", "factor", { ...ALONE, minor: true }),
  hidden("volts_over_pump", "Its volts over the most that suits", "driving", "factor"),
  ...COSTS,
];

export const panel: Kind = {
  kind: "panel",
  label: "Solar panel",
  purpose: "Charges a battery, or drives a pump by itself while the sun is high.",
  group: "Power",
  season: panelSeason,
  icon: { ink: "M3 18 7 6h14l-4 12zM5 12h14M12 6 9 18", tone: "M17 2l1-1M21 3l-2 1", color: "power" },
  noted: ["cleaned", "drained"],
  uses: ["gives_power"],
  joins: { charges: "newest" },
  handSettings: ["rated_power", "count", "tilt", "azimuth", "charges"],
  mends: ["energy", "daylight"],
  offers: [{ name: "one_more", says: "one more of {}", row: "count", buys: { more: "one" } }],
  drawn: {
    as: "panel",
    beside: [
      { row: "daily_energy", tint: "power", text: "{} a day", ifLinked: "charges" },
      { row: "direct_hours", tint: "power", text: "pumps {} a clear day", unlessLinked: "charges" },
    ],
    spoken: "{title} charges {charges|no battery}",
  },
  glance: ["share_noon", "daily_energy", "direct_hours", "recharge_time"],
  spans: PANEL_SPANS,
  rows: [...GIVENS, ...RESULTS],
  figures: [
    { row: "by_month", title: "What it puts in, month by month" },
    { row: "direct_day", title: "The panel alone, hour by hour" },
  ],
  models: [testingPanel, facing, tracking, supplying, chargingModel, driving],
  cautions: PANEL_CAUTIONS,
};
