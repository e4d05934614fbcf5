// A solar panel: its label and its stand, what it puts into a battery, and whether it drives a pump by itself.

import type { Row } from "../../graph/types.ts";
import type { Kind } from "../kind.ts";
import { COSTS, DEFINITION, formula, gather, output, PRACTICE } from "../rows.ts";
import { PANEL_CAUTIONS } from "./cautions.ts";
import { driving } from "./direct.ts";
import { GIVENS } from "./givens.ts";
import { chargingModel, facing, supplying, testingPanel, tracking } from "./models.ts";
import { PANEL_SPANS } from "./spans.ts";

const SKY =
  "Hargreaves or measured sunshine; Collares-Pereira and Rabl; Erbs; isotropic sky, as in Duffie and Beckman ch. 2";
const LOAD_LINE = "the pump's load line against the panel's curve through its label's points";

/** Only where a pump hangs on it alone. */
const ALONE = { when: { row: "drives", is: ["1"] } } as const;

const share = (name: string, label: string, words: string): Row =>
  output(name, label, "driving", "share", words, LOAD_LINE, ALONE);

const RESULTS: readonly Row[] = [
  output(
    "tested_health",
    "Health by that noon",
    "testing",
    "share",
    "Its shorted current over the label's in a clear noon's light.",
    "FAO-56 Eq. 37 for the clear sky; current in proportion to light",
    { minor: true },
  ),
  output("health_in_use", "Reckoned with", "testing", "share", "Tested, else as guessed.", DEFINITION, {
    hidden: true,
  }),
  formula(
    "rating_of_points",
    "Watts by its points",
    "power",
    "vmp * imp",
    "Best voltage times best current.",
    DEFINITION,
    {
      hidden: true,
    },
  ),
  formula(
    "charge_current",
    "Pushes into it at most",
    "current",
    "count * health_in_use * (isc + tracks * (rated_power / charges.charging_voltage - isc))",
    "In full sun: its shorted current by a plain controller; by a tracking one its watts over the battery's voltage while it charges.",
    DEFINITION,
    { minor: true, quiet: true },
  ),
  output("tracks", "Tracks", "tracking", "count", "1 for a tracking controller.", DEFINITION, {
    hidden: true,
  }),
  output("faces_away", "Turns its back", "facing", "count", "1 where it does.", DEFINITION, { hidden: true }),
  formula("whole_short", "All of it, shorted", "current", "isc * count", "In full sun.", DEFINITION, {
    hidden: true,
  }),
  gather(
    "wire_resistance",
    "Wire of its pump",
    "resistance",
    { kind: "pump", by: "powered_by", take: "wire_resistance", how: "sum" },
    "Both ways.",
    { hidden: true },
  ),
  gather(
    "pumps",
    "Pumps on it alone",
    "series",
    { kind: "pump", by: "powered_by", take: "liftings", how: "list" },
    "Each with its hoses.",
    { hidden: true },
  ),
  output("supply", "Its light by month", "supplying", "series", "At the hour of watering.", SKY, {
    hidden: true,
  }),
  output("charge_months", "Charge by month", "charging", "series", "On dry and wet days.", SKY, {
    hidden: true,
  }),
  output("monthly_energy", "Charge of a mean day, by month", "charging", "series", "January first.", SKY, {
    hidden: true,
  }),
  output("by_month", "Month by month", "charging", "series", "Dry, wet and mean days.", SKY, {
    hidden: true,
  }),
  output(
    "daily_energy",
    "Puts in on a mean day",
    "charging",
    "energy",
    "Of the season's worst month, into a battery of 12 V or the one that it charges, before that battery's own losses.",
    SKY,
  ),
  output("worst_month", "That month", "charging", "text", "The month of the season with the least.", SKY, {
    minor: true,
  }),
  formula(
    "recharge_time",
    "Fills the battery in",
    "span",
    "charges.usable_energy / (daily_energy * charges.round_trip_efficiency) * 1 day",
    "From its lowest, in that month: what may be used over a day's charge less the battery's losses.",
    DEFINITION,
    { none: [{ if: "daily_energy <= 0 Wh", reason: "no sun reaches it in that month" }] },
  ),
  output(
    "direct_hours",
    "Drives the pump, a clear day",
    "driving",
    "duration",
    "Any water at all, on a clear day in the middle of the season.",
    LOAD_LINE,
    ALONE,
  ),
  output(
    "direct_full_hours",
    "Of that, fully",
    "driving",
    "duration",
    "At least 95 % of the flow at the pump's stated voltage.",
    LOAD_LINE,
    { ...ALONE, minor: true },
  ),
  share(
    "direct_flow_share",
    "Share of full flow when you water",
    "On a dry day, at the hour of watering by the sun, in the month of the season with least light then.",
  ),
  share("share_early", "The same at nine, by the sun", "On a clear day in the middle of the season."),
  share("share_noon", "The same at noon", "On a clear day in the middle of the season."),
  share("share_late", "The same at three, by the sun", "On a clear day in the middle of the season."),
  share(
    "share_overcast",
    "The same at noon, under cloud",
    "With a fifth of the clear day's light, from memory.",
  ),
  output(
    "highest_voltage",
    "Highest voltage at the pump",
    "driving",
    "voltage",
    "On that clear day: the panel's voltage where it gives just what the pump draws, less the wire's.",
    LOAD_LINE,
    { ...ALONE, minor: true },
  ),
  output("drives", "Drives a pump alone", "driving", "count", "1 where it does.", DEFINITION, {
    hidden: true,
  }),
  output("overvoltage", "Over its stated one", "driving", "factor", "That over the stated one.", DEFINITION, {
    hidden: true,
  }),
  output("direct_day", "Through the day", "driving", "series", "Hour by hour.", LOAD_LINE, { hidden: true }),
  output(
    "watts_over_pump",
    "Its watts over the pump's",
    "driving",
    "factor",
    "Its best voltage times current, times its health and how many, over the pump's stated voltage times its current wide open.",
    DEFINITION,
    { ...ALONE, minor: true },
  ),
  output(
    "volts_over_pump",
    "Its volts over the most that suits",
    "driving",
    "factor",
    "Best voltage over 1.65 times the pump's stated one.",
    PRACTICE,
    { hidden: true },
  ),
  ...COSTS,
];

export const panel: Kind = {
  kind: "panel",
  label: "Solar panel",
  purpose: "Charges a battery, or drives a pump by itself while the sun is high.",
  group: "Power",
  icon: { ink: "M3 18 7 6h14l-4 12zM5 12h14M12 6 9 18", tone: "M17 2l1-1M21 3l-2 1", color: "power" },
  uses: ["gives_power"],
  joins: { charges: "newest" },
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
