// The rules that a wire and its fuse are held against, and what they cost when broken.

import type { Caution } from "../../graph/types.ts";
import { DEFINITION } from "../rows.ts";

export const CFR_WIRE = "33 CFR 183.425 Table 5 (boats), read in a copy";
export const CFR_FUSE = "33 CFR 183.455 (boats), read in a copy; licensed practice decides";
export const BREAKING = "notes on fuse ratings, read second-hand; blade: from memory";

const rule = (id: string, text: string, source: string, weight: Caution["weight"] = "harm"): Caution => ({
  id,
  if: `${id} > 0`,
  text,
  beside: "fuse",
  source,
  weight,
});

export const WIRE_CAUTIONS: readonly Caution[] = [
  {
    ...rule(
      "no_fuse",
      "No fuse: a chafed wire on a battery glows and sets fire. Within a hand's width of the battery's post: {fuse_size}.",
      CFR_FUSE,
    ),
    if: "no_fuse > 0 and on_battery > 0",
  },
  rule(
    "panel_over_wire",
    "Unsafe: in bright sun the panel can drive 1.56 times its shorted current, and this wire may carry only {ampacity}. No fuse here can blow by it: take a thicker wire.",
    "NEC 690.8(A)(B), read",
  ),
  rule(
    "over_carry",
    "Unsafe: the pump draws more than this wire may carry, {ampacity}. It glows before any fuse that lets the pump run.",
    CFR_WIRE,
  ),
  {
    id: "too_thin_alone",
    if: "too_thin_alone > 0",
    where: { row: "laid", word: "single" },
    text: "Thinner than 16 AWG may run only together with others in one sheath: alone it breaks where it chafes. The rule is for boats.",
    beside: "gauge",
    source: "33 CFR 183.425(d)(e) (boats), read; ISO 10133 asks for 1 mm², read in an extract",
    weight: "harm",
  },
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
    "Unsafe: with its rotor stuck the pump draws only {stalled_current} through this wire, under twice the fuse. The fuse stays whole while the pump cooks. Fuse to fit: {fuse_size}.",
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
  rule(
    "lead_too_strong",
    "A dead short of this lead battery drives some {short_current}; this kind of fuse is made to break {breaks}. The sure way is an MRBF fuse on the post, with this one behind it.",
    BREAKING,
    "trouble",
  ),
  {
    id: "fuse_too_far",
    if: "fuse_from_battery > fuse_reach and on_battery > 0",
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
    if: "on_battery > 0",
    text: "The fuse sits in the lead from plus, within {fuse_reach} of the battery's post. Where local rules ask for more, they decide; so does a licensed electrician.",
    beside: "fuse_size",
    source: CFR_FUSE,
    weight: "harm",
  },
];
