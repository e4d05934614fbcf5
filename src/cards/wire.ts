// The wire from a source to its pump, both ways, with the fuse that is fitted in it.

import gauges from "../../shared/wire-gauges.json";
import type { CardKind, Caution, Row } from "../graph/types.ts";
import { COSTS, choice, DEFINITION, formula, given, link, output, PRACTICE } from "./rows.ts";
import { typed } from "./tabled.ts";
import { FAULT_ROWS, GAUGE_OPTIONS, INSULATION_OPTIONS, WIRE_MODELS } from "./wire-models.ts";

const CFR_WIRE = "33 CFR 183.425 Table 5 (boats), read in a copy";
const CFR_FUSE = "33 CFR 183.455 (boats), read in a copy; licensed practice decides";
const RESISTANCE =
  "NEC chapter 9 table 8 for AWG, IEC 60228 for mm², both read in copies; copper 0.00393 a kelvin";

const flag = (name: string): Row =>
  output(name, name.replaceAll("_", " "), "fusing", "count", "1 where the rule is broken.", CFR_FUSE, {
    hidden: true,
  });

const ROWS: readonly Row[] = [
  link("feeds", "Feeds", ["pump"], "feeds no pump", "The pump at its end."),
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
  given(
    "wanted_drop",
    "Drop you would bear",
    "share",
    typed(gauges.drop_advised),
    "Of the battery's voltage.",
    { min: 0.001, max: 0.5, minor: true, source: PRACTICE },
  ),
  output(
    "resistance",
    "Resistance, both ways",
    "copper",
    "resistance",
    "Twice the length times the table's figure, at its temperature.",
    RESISTANCE,
  ),
  formula(
    "drop",
    "Voltage lost in it",
    "voltage",
    "resistance * feeds.running_current",
    "Its resistance times what the pump draws.",
    "Ohm's law",
  ),
  formula(
    "drop_share",
    "Of the battery's",
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
    "The maker's figure, else the next size from 1.25 times what it draws wide open; never over what the wire may carry.",
    `${CFR_FUSE}; NEC 210.20(A) for 1.25, read second-hand`,
  ),
  output("fuse_state", "Fuse as fitted", "fusing", "text", "Held against the rules below.", CFR_FUSE, {
    options: [
      { word: "right", label: "right" },
      { word: "blows_early", label: "safe, but blows too early" },
      { word: "unsafe", label: "UNSAFE" },
    ],
  }),
  output(
    "stalled_current",
    "Current, rotor stuck",
    "fusing",
    "current",
    "The battery's voltage over the stuck pump's resistance and the wire's.",
    "Ohm's law: a held rotor is a plain resistance",
    { minor: true },
  ),
  ...FAULT_ROWS.map(flag),
  ...COSTS,
];

const rule = (id: string, text: string, source: string, weight: Caution["weight"] = "harm"): Caution => ({
  id,
  if: `${id} > 0`,
  text,
  beside: "fuse",
  source,
  weight,
});

export const wire: CardKind = {
  kind: "wire",
  label: "Wire and fuse",
  purpose: "The pair of wires from a battery to a pump, and the fuse in them.",
  rows: ROWS,
  models: WIRE_MODELS,
  cautions: [
    rule(
      "no_fuse",
      "No fuse: a chafed wire on a battery glows and sets fire. Fit {fuse_size} within a hand's width of the battery's post.",
      CFR_FUSE,
    ),
    rule(
      "over_maker",
      "Unsafe: the fuse is more than the pump's maker allows. A stuck pump melts before it blows.",
      "ABYC E-11 for motors, read second-hand",
    ),
    rule(
      "over_ampacity",
      "Unsafe: the fuse is more than this wire may carry, {ampacity}. The wire would burn before the fuse blows.",
      CFR_FUSE,
    ),
    rule(
      "over_regulation",
      "The fuse is over one and a half times what the wire may carry: more than even the rule's allowance.",
      CFR_FUSE,
    ),
    rule(
      "stall_does_not_blow",
      "Unsafe: with its rotor stuck the pump draws only {stalled_current} through this wire, under twice the fuse. The fuse stays whole while the pump cooks. Fit {fuse_size}.",
      "ISO 8820-3 opening times, from memory: seconds need some twice the size",
    ),
    rule(
      "under_running_current",
      "The fuse is no more than what the pump draws: it blows as soon as it runs.",
      DEFINITION,
      "trouble",
    ),
    rule(
      "little_margin",
      "The fuse is under 1.25 times what the pump draws: on a hot day it blows by itself.",
      "NEC 210.20(A), read second-hand",
      "trouble",
    ),
    {
      id: "drop_too_big",
      if: "drop_share > 10 %",
      text: "{drop_share} of the voltage is lost in the wire: the pump turns slower and lifts less. Thicker or shorter wire.",
      beside: "drop_share",
      source: "ABYC E-11: 3 % where it matters, 10 % at most; read in a quotation",
      weight: "trouble",
    },
    {
      id: "fuse_at_battery",
      text: "The fuse sits within 7 in of the battery's post, in the lead from plus. A lithium battery's short is over a thousand amperes: it wants a fuse that can break it, such as MRBF or class T, not a plain blade.",
      beside: "fuse_size",
      source: `${CFR_FUSE}; a forum's measurement of four lithium cells, read second-hand`,
      weight: "harm",
    },
  ],
};
