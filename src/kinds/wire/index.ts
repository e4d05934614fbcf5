// The wire from a source to its pump, both ways, with the fuse that is fitted in it.

import gauges from "../../../shared/wire-gauges.json";
import type { Row } from "../../graph/types.ts";
import type { Kind } from "../kind.ts";
import { COSTS, choice, DEFINITION, formula, given, link, output, PRACTICE } from "../rows.ts";
import { typed } from "../tabled.ts";
import { BREAKING, CFR_FUSE, CFR_WIRE, WIRE_CAUTIONS } from "./cautions.ts";
import {
  FAULT_ROWS,
  FUSE_OPTIONS,
  GAUGE_OPTIONS,
  INSULATION_OPTIONS,
  POST_OPTIONS,
  WIRE_MODELS,
} from "./models.ts";
import { WIRE_SPANS } from "./spans.ts";

const RESISTANCE =
  "NEC chapter 9 table 8 for AWG, IEC 60228 for mm², both read in copies; copper 0.00393 a kelvin";

const flag = (name: string): Row =>
  output(name, name.replaceAll("_", " "), "fusing", "count", "1 where the rule is broken.", CFR_FUSE, {
    hidden: true,
  });

const ROWS: readonly Row[] = [
  link("feeds", "Feeds", "lifts_water", "feeds no pump", "The pump at its end."),
  choice(
    "gauge",
    "Size",
    GAUGE_OPTIONS,
    "14 AWG",
    "Printed on its sheath. A smaller AWG number is a thicker wire.",
  ),
  given(
    "one_way_length",
    "Length, one way",
    "length",
    [10, "ft"],
    "From the battery to the pump; the way back is counted too.",
    { max: 1000 },
  ),
  given(
    "wire_temperature",
    "Gets as warm as",
    "temperature",
    typed(gauges.temperature),
    "Warm copper resists more.",
    { min: 223.15, max: 473.15, minor: true, source: PRACTICE },
  ),
  choice("insulation", "Its sheath", INSULATION_OPTIONS, "unknown", "Printed on it, if at all.", {
    minor: true,
  }),
  given("fuse", "Fuse fitted", "current", null, "What is really in the holder; none where there is none.", {
    absent: "no fuse fitted",
    min: 0.1,
  }),
  choice(
    "fuse_kind",
    "Kind of fuse",
    FUSE_OPTIONS,
    "blade",
    "A blade fuse is the flat plug-in one of a car.",
    {
      minor: true,
    },
  ),
  given("fuse_from_battery", "Fuse sits from the battery", "depth", null, "Along the wire, from its post.", {
    absent: "not measured",
    minor: true,
  }),
  choice(
    "post_fuse",
    "Fuse on the battery's post",
    POST_OPTIONS,
    "none",
    "One more, that breaks the battery's own short.",
    { minor: true },
  ),
  choice(
    "laid",
    "Both wires run",
    { pair: "together in one sheath", single: "each by itself" },
    "pair",
    "Lamp cord and cable are one sheath.",
    { minor: true },
  ),
  choice(
    "sheathed",
    "Wire up to the fuse",
    { no: "lies bare of any sleeve", yes: "in a sheath or conduit all the way" },
    "no",
    "A second skin over the wire's own.",
    { minor: true },
  ),
  given(
    "wanted_drop",
    "Drop you would bear",
    "share",
    typed(gauges.drop_advised),
    "Of the battery's voltage.",
    { min: 0.001, max: 0.5, minor: true, source: PRACTICE },
  ),
  output(
    "listed_resistance",
    "By the table, both ways",
    "copper",
    "resistance",
    "Twice the length times the table's figure for this size, stranded.",
    RESISTANCE,
    { minor: true },
  ),
  output(
    "listed_at",
    "The table's copper is at",
    "copper",
    "temperature",
    "75 °C for AWG, 20 °C for mm².",
    RESISTANCE,
    {
      minor: true,
    },
  ),
  formula(
    "resistance",
    "Resistance, both ways",
    "resistance",
    "listed_resistance * (1 + 0.00393 * (wire_temperature - 20 degC) / 1 delta K) / (1 + 0.00393 * (listed_at - 20 degC) / 1 delta K)",
    "The table's figure for both ways, brought to the wire's own temperature.",
    RESISTANCE,
    { minor: true },
  ),
  formula(
    "drop",
    "Voltage lost in it",
    "voltage",
    "resistance * feeds.running_current",
    "Its resistance times what the pump draws.",
    "Ohm's law",
    {
      none: [
        {
          if: "resistance * feeds.running_current > feeds.supply_voltage",
          reason: "more than the battery has: no such current can flow in this wire",
        },
      ],
    },
  ),
  formula(
    "drop_share",
    "Of the battery's voltage",
    "share",
    "drop / feeds.supply_voltage",
    "The lost voltage over the battery's.",
    DEFINITION,
  ),
  output(
    "thinnest_gauge",
    "Thinnest that would do",
    "thinnest",
    "text",
    "The thinnest of the table that loses no more than you would bear.",
    RESISTANCE,
    { minor: true },
  ),
  output(
    "ampacity",
    "May carry",
    "copper",
    "current",
    "The table's figure for the largest gauge not thicker, and the least sheath where it is not known; under 50 V.",
    CFR_WIRE,
  ),
  output(
    "fuse_size",
    "Fuse to fit",
    "fusing",
    "current",
    "The nearest size under the maker's figure, else the next from 1.25 times the most that it draws, by its label or here; never over what the wire may carry, nor one that a stuck pump would not blow.",
    `${CFR_FUSE}; NEC 210.20(A) for 1.25, read second-hand`,
  ),
  output("fuse_state", "Fuse as fitted", "fusing", "text", "Held against the rules below.", CFR_FUSE, {
    options: [
      { word: "right", label: "right" },
      { word: "blows_early", label: "safe, but blows too early" },
      { word: "unsafe", label: "UNSAFE" },
      { word: "idle", label: "cannot blow: a panel alone" },
    ],
  }),
  formula(
    "stalled_current",
    "Current, rotor stuck",
    "current",
    "feeds.supply_voltage / (feeds.rated_voltage / feeds.stall_current + feeds.wire_resistance)",
    "The battery's voltage over the stuck pump's resistance and the wire's.",
    "Ohm's law: a held rotor is a plain resistance",
    { minor: true },
  ),
  output(
    "short_current",
    "A dead short of its battery",
    "breaking",
    "current",
    "As the battery's card has it.",
    DEFINITION,
    { minor: true },
  ),
  output(
    "breaks",
    "The fuse can break",
    "breaking",
    "current",
    "Of its kind at 12 V, or of the one on the post.",
    BREAKING,
    {
      minor: true,
    },
  ),
  output(
    "fuse_reach",
    "It may sit from the post by",
    "breaking",
    "depth",
    "7 in along the wire, or 40 in where the whole length up to it is sheathed.",
    CFR_FUSE,
    { minor: true },
  ),
  output(
    "cannot_break",
    "Cannot break",
    "breaking",
    "count",
    "1 where a short is more than it can break.",
    BREAKING,
    {
      hidden: true,
    },
  ),
  output(
    "too_strong",
    "Too strong a short",
    "breaking",
    "count",
    "1 for lithium over what it breaks.",
    BREAKING,
    {
      hidden: true,
    },
  ),
  output(
    "lead_too_strong",
    "A lead short",
    "breaking",
    "count",
    "1 for lead over what it breaks.",
    BREAKING,
    {
      hidden: true,
    },
  ),
  output("too_thin_alone", "Too thin to run singly", "copper", "count", "1 under 16 AWG.", CFR_WIRE, {
    hidden: true,
  }),
  output("on_battery", "Its pump runs on a battery", "fusing", "count", "1 where it does.", DEFINITION, {
    hidden: true,
  }),
  ...FAULT_ROWS.map(flag),
  ...COSTS,
];

export const wire: Kind = {
  kind: "wire",
  label: "Wire and fuse",
  purpose: "The pair of wires from a battery to a pump, and the fuse in them.",
  group: "Power",
  icon: { ink: "M3 6h3c6 0 4 10 10 10h5M3 10c6 0 4 10 10 10h8", tone: "M14 4h6v4h-6z", color: "power" },
  joins: { feeds: "newest" },
  glance: ["drop_share", "fuse_state"],
  spans: WIRE_SPANS,
  rows: ROWS,
  models: WIRE_MODELS,
  cautions: WIRE_CAUTIONS,
};
