// What the rows and cautions of this card mean and where they come from; loaded when somebody asks.

import type { KindWords } from "../../graph/words.ts";
import { COST_WORDS, DEFINITION, PRACTICE } from "../sources.ts";

const CFR_FUSE = "33 CFR 183.455 (boats), read in a copy; licensed practice decides";

const CFR_WIRE = "33 CFR 183.425 Table 5 (boats), read in a copy";

const BREAKING = "notes on fuse ratings, read second-hand; blade: from memory";

const RESISTANCE =
  "NEC chapter 9 table 8 for AWG, IEC 60228 for mm², both read in copies; copper 0.00393 a kelvin";

export const words: KindWords = {
  rows: {
    feeds: "The pump at its end.",
    gauge: "Printed on its sheath. A smaller AWG number is a thicker wire.",
    one_way_length: "From the battery to the pump; the way back is counted too.",
    wire_temperature: ["Warm copper resists more.", PRACTICE],
    insulation: "Printed on it, if at all.",
    fuse: "What is really in the holder; none where there is none.",
    fuse_kind: "A blade fuse is the flat plug-in one of a car.",
    fuse_from_battery: "Along the wire, from its post.",
    post_fuse: "One more, that breaks the battery's own short.",
    laid: "Lamp cord and cable are one sheath.",
    sheathed: "A second skin over the wire's own.",
    wanted_drop: ["Of the battery's voltage.", PRACTICE],
    listed_resistance: ["Twice the length times the table's figure for this size, stranded.", RESISTANCE],
    listed_at: ["75 °C for AWG, 20 °C for mm².", RESISTANCE],
    resistance: ["The table's figure for both ways, brought to the wire's own temperature.", RESISTANCE],
    drop: ["Its resistance times what the pump draws.", "Ohm's law"],
    drop_share: ["The lost voltage over the battery's.", DEFINITION],
    thinnest_gauge: ["The thinnest of the table that loses no more than you would bear.", RESISTANCE],
    ampacity: [
      "The table's figure for the largest gauge not thicker, and the least sheath where it is not known; under 50 V.",
      CFR_WIRE,
    ],
    fuse_size: [
      "The nearest size under the maker's figure, else the next from 1.25 times the most that it draws, by its label or here; never over what the wire may carry, nor one that a stuck pump would not blow.",
      `${CFR_FUSE}; NEC 210.20(A) for 1.25, read second-hand`,
    ],
    fuse_state: ["Held against the rules below.", CFR_FUSE],
    stalled_current: [
      "The battery's voltage over the stuck pump's resistance and the wire's.",
      "Ohm's law: a held rotor is a plain resistance",
    ],
    short_current: ["As the battery's card has it.", DEFINITION],
    breaks: ["Of its kind at 12 V, or of the one on the post.", BREAKING],
    fuse_reach: [
      "7 in, 18 cm, along the wire, or 40 in, 1 m, where the whole length up to it is sheathed.",
      CFR_FUSE,
    ],
    ...COST_WORDS,
  },
  cautions: {
    no_fuse: [
      "No fuse: a chafed wire on a battery glows and sets fire. Within a hand's width of the battery's post: {fuse_size}.",
      CFR_FUSE,
    ],
    panel_over_wire: [
      "Unsafe: in bright sun the panel can drive 1.56 times its shorted current, and this wire may carry only {ampacity}. No fuse here can blow by it: take a thicker wire.",
      "NEC 690.8(A)(B), read",
    ],
    over_carry: [
      "Unsafe: the pump draws more than this wire may carry, {ampacity}. It glows before any fuse that lets the pump run.",
      CFR_WIRE,
    ],
    too_thin_alone: [
      "Thinner than 16 AWG may run only together with others in one sheath: alone it breaks where it chafes. The rule is for boats.",
      "33 CFR 183.425(d)(e) (boats), read; ISO 10133 asks for 1 mm², read in an extract",
    ],
    over_maker: [
      "Unsafe: the fuse is more than the pump's maker allows. A stuck pump melts before it blows.",
      "ABYC E-11 for motors, read second-hand",
    ],
    over_ampacity: [
      "Unsafe: the fuse is more than this wire may carry, {ampacity}. The wire would burn before the fuse blows.",
      CFR_FUSE,
    ],
    over_regulation: [
      "The fuse is over one and a half times what the wire may carry: more than even the rule's allowance.",
      CFR_FUSE,
    ],
    stall_does_not_blow: [
      'Unsafe: with its rotor stuck the pump draws only {stalled_current} through this wire, under twice the fuse. The fuse stays whole while the pump cooks. What to fit, or to do first, stands at "Fuse to fit".',
      "ISO 8820-3 opening times, from memory: seconds need some twice the size",
    ],
    under_running_current: [
      "The fuse is no more than the {counted_current} that the pump draws, {counted_by}: it blows as soon as it runs.",
      DEFINITION,
    ],
    little_margin: [
      "The fuse is under 1.25 times the {counted_current} that the pump draws, {counted_by}: on a hot day it blows by itself.",
      "NEC 210.20(A), read second-hand",
    ],
    cannot_break: [
      "A short of this lithium battery is {short_current}; this kind of fuse breaks {breaks}, and may weld or burst instead. Fit an MRBF or class T fuse at the post, and the pump's own fuse behind it. The battery's own protection board does not count.",
      BREAKING,
    ],
    lead_too_strong: [
      "A dead short of this lead battery drives some {short_current}; this kind of fuse is made to break {breaks}. The sure way is an MRBF fuse on the post, with this one behind it.",
      BREAKING,
    ],
    fuse_too_far: [
      "The fuse sits {fuse_from_battery} from the battery; the rule for boats is {fuse_reach} at most. The wire before it has nothing to save it.",
      CFR_FUSE,
    ],
    drop_too_big: [
      "{drop_share} of the voltage is lost in the wire: the pump turns slower and lifts less. For {wanted_drop} it wants: {thinnest_gauge}.",
      "ABYC E-11: 3 % where it matters, 10 % at most; read in a quotation",
    ],
    drop_over_wanted: [
      "More is lost in the wire than the {wanted_drop} you would bear. For that it wants: {thinnest_gauge}.",
      "ABYC E-11: 3 % where it matters; read in a quotation",
    ],
    insulation_unknown: [
      "Nothing is known of its sheath, so the least that any sheath bears is taken. Read the print on it: 60, 75, 90 or 105 °C.",
      CFR_WIRE,
    ],
    fuse_at_battery: [
      "The fuse sits in the lead from plus, within {fuse_reach} of the battery's post. Where local rules ask for more, they decide; so does a licensed electrician.",
      CFR_FUSE,
    ],
  },
};
