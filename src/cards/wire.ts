// The wire from a source to its pump, both ways, with the fuse that is fitted in it.

import gauges from "../../shared/wire-gauges.json";
import type { CardKind, Caution, Row } from "../graph/types.ts";
import { COSTS, choice, DEFINITION, formula, given, link, output, PRACTICE } from "./rows.ts";
import { typed } from "./tabled.ts";
import { FAULT_ROWS, FUSE_OPTIONS, GAUGE_OPTIONS, INSULATION_OPTIONS, WIRE_MODELS } from "./wire-models.ts";

const CFR_WIRE = "33 CFR 183.425 Table 5 (boats), read in a copy";
const CFR_FUSE = "33 CFR 183.455 (boats), read in a copy; licensed practice decides";
const RESISTANCE =
  "NEC chapter 9 table 8 for AWG, IEC 60228 for mm², both read in copies; copper 0.00393 a kelvin";

const BREAKING = "notes on fuse ratings, read second-hand; blade: from memory";

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
  output(
    "short_current",
    "A dead short of its battery",
    "breaking",
    "current",
    "14 V over 3.75 mΩ: four lithium cells with their links.",
    "F = V / R; resistances of one such battery measured on a forum, read",
    { minor: true },
  ),
  output("breaks", "The fuse can break", "breaking", "current", "Of its kind, at 12 V.", BREAKING, {
    minor: true,
  }),
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
    rule(
      "cannot_break",
      "A short of this lithium battery is {short_current}; this kind of fuse breaks {breaks}, and may weld or burst instead. Fit an MRBF or class T fuse at the post, and the pump's own fuse behind it. The battery's own protection board does not count.",
      BREAKING,
    ),
    {
      id: "fuse_too_far",
      if: "fuse_from_battery > fuse_reach",
      text: "The fuse sits {fuse_from_battery} from the battery; the rule for boats is {fuse_reach} at most. The wire before it has nothing to save it.",
      beside: "fuse",
      source: CFR_FUSE,
      weight: "harm",
    },
    {
      id: "drop_too_big",
      if: "drop_share > 10 %",
      text: "{drop_share} of the voltage is lost in the wire: the pump turns slower and lifts less. For {wanted_drop} it wants: {thinnest_gauge}.",
      beside: "drop_share",
      source: "ABYC E-11: 3 % where it matters, 10 % at most; read in a quotation",
      weight: "trouble",
    },
    {
      id: "drop_over_wanted",
      if: "drop_share > wanted_drop and drop_share <= 10 %",
      text: "More is lost in the wire than the {wanted_drop} you would bear. For that it wants: {thinnest_gauge}.",
      beside: "drop_share",
      source: "ABYC E-11: 3 % where it matters; read in a quotation",
      weight: "note",
    },
    {
      id: "insulation_unknown",
      where: { row: "insulation", word: "unknown" },
      text: "Nothing is known of its sheath, so the least that any sheath bears is taken. Read the print on it: 60, 75, 90 or 105 °C.",
      beside: "ampacity",
      source: CFR_WIRE,
      weight: "note",
    },
    {
      id: "fuse_at_battery",
      text: "The fuse sits in the lead from plus, within {fuse_reach} of the battery's post. Where local rules ask for more, they decide; so does a licensed electrician.",
      beside: "fuse_size",
      source: CFR_FUSE,
      weight: "harm",
    },
  ],
};
