// A pump's wire and fuse: resistance, what it may carry, the fuse to fit, and the rules that the fitted one breaks.

import ampacities from "../../../shared/ampacities.json";
import fuses from "../../../shared/fuses.json";
import gauges from "../../../shared/wire-gauges.json";
import { all, outcomes } from "../../graph/outcomes.ts";
import { numberOf, numberOrNull, wordOf, wordOrNull } from "../../graph/readers.ts";
import type { Model, ModelInput, Outcome, Outputs } from "../../graph/types.ts";
import { type AmpacityRow, ampacity, circuitResistance, thinnestForDrop } from "../../physics/copper-wire.ts";
import {
  type FuseDuty,
  type FuseFault,
  fuseChoice,
  fuseDistanceLimit,
  fuseFaults,
  PANEL_WIRE_MARGIN,
} from "../../physics/fuse.ts";
import { toSi } from "../../units/unit.ts";
import { si } from "../tabled.ts";

/** Every wire of the table, in SI. */
const WIRES = gauges.wires.map((wire) => ({
  word: wire.word,
  label: wire.label,
  area: si(wire.area),
  resistance: si(wire.resistance),
  at: si(wire.resistance_at),
}));

const INSULATIONS = ampacities.insulations;

const ROWS: readonly AmpacityRow[] = ampacities.currents.map(({ word, values, unit }) => ({
  area: wireOf(word).area,
  currents: values.map((current, index) => ({
    insulation: toSi(INSULATIONS.values[index] ?? 0, INSULATIONS.unit),
    current: toSi(current, unit),
  })),
}));

const SIZES = fuses.blade_sizes.values.map((size) => toSi(size, fuses.blade_sizes.unit));

function wireOf(word: string) {
  const wire = WIRES.find((one) => one.word === word);
  if (!wire) throw new Error(`There is no wire ${word}.`);
  return wire;
}

/** Thinnest wire that may run singly, 16 AWG: 33 CFR 183.425(d)(e) (read) [m2]. */
const THINNEST_ALONE = wireOf("16 AWG").area;

/** What a wire may carry; one thinner than the table begins has no figure. */
function carries(word: string, insulation: string): number | null {
  const { area } = wireOf(word);
  if (!ROWS.some((row) => row.area <= area * (1 + 1e-9))) return null;
  return ampacity(ROWS, area, insulation === "unknown" ? null : toSi(Number(insulation), INSULATIONS.unit));
}

const copper: Model = {
  name: "copper",
  takes: ["gauge", "one_way_length", "insulation"],
  outputs: ["listed_resistance", "listed_at", "ampacity", "too_thin_alone"],
  run: (input) => {
    const wire = wireOf(wordOf(input, "gauge"));
    return {
      ...outcomes({
        too_thin_alone: wire.area < THINNEST_ALONE * (1 - 1e-9) ? 1 : 0,
        listed_resistance: circuitResistance(wire, numberOf(input, "one_way_length"), wire.at),
        listed_at: wire.at,
      }),
      ...outcomes(
        { ampacity: carries(wire.word, wordOf(input, "insulation")) },
        "the table begins with thicker wire: too thin to fuse",
      ),
    };
  },
};

const FAULTS: readonly FuseFault[] = [
  "no_fuse",
  "under_running_current",
  "little_margin",
  "over_maker",
  "over_ampacity",
  "over_regulation",
  "stall_does_not_blow",
];

const CHOICES = {
  wire_too_thin: "every fuse that would run it is more than this wire may carry: a thicker wire first",
  maker_below_running: "its maker's fuse is under what it draws: check both figures",
  no_such_size: "no blade fuse is big enough",
  stall_too_small:
    "none protects: a stuck pump draws too little through this wire to blow any fuse that lets it run. A thicker or shorter wire, a fuller battery, or a pump that cuts itself out when hot",
  cannot_break:
    "none of this kind protects: it cannot break a short of this lithium battery. First an MRBF or class T fuse on the post, then a blade behind it",
  panel:
    "a panel alone gives no more shorted than in full sun: no fuse in its lead can blow. The wire must bear it",
};

const FAULT_NAMES = [...FAULTS, "panel_over_wire", "over_carry"] as const;

const flags = (broken: readonly string[]): Outputs =>
  outcomes(Object.fromEntries(FAULT_NAMES.map((fault) => [fault, broken.includes(fault) ? 1 : 0])));

/** In the lead of a panel alone only the wire can be wrong. */
function behindPanel(short: number, carries: number): Outputs {
  const isOver = PANEL_WIRE_MARGIN * short > carries;
  return {
    fuse_size: { none: CHOICES.panel },
    fuse_state: { value: isOver ? "unsafe" : "idle" },
    on_battery: { value: 0 },
    ...all(["counted_current", "counted_by"], { none: CHOICES.panel }),
    ...flags(isOver ? ["panel_over_wire"] : []),
  };
}

function sizeFor(duty: FuseDuty, breaks: boolean): Outcome {
  if (!breaks) return { none: CHOICES.cannot_break };
  const choice = fuseChoice(duty, SIZES);
  return choice.state === "fits" ? { value: choice.size } : { none: CHOICES[choice.state] };
}

function fuseOf(input: ModelInput): Outputs {
  const carries = numberOf(input, "ampacity");
  const short = numberOrNull(input, "feeds.panel_short");
  if (short !== null) return behindPanel(short, carries);
  const running = numberOrNull(input, "feeds.running_current") ?? 0;
  const label = numberOf(input, "feeds.rated_current");
  const duty = {
    // The larger of what its label says wide open and what is solved or read: more volts than stated draw more.
    runningCurrent: Math.max(label, running),
    makerFuse: numberOrNull(input, "feeds.maker_fuse"),
    ampacity: carries,
    stalledCurrent: numberOrNull(input, "stalled_current"),
  };
  const faults = fuseFaults({ ...duty, fuse: numberOrNull(input, "fuse") });
  const breaks = numberOf(input, "too_strong") === 0;
  const grave =
    (!breaks && !faults.includes("no_fuse")) ||
    faults.some((fault) => fault !== "little_margin" && fault !== "under_running_current");
  return {
    fuse_size: sizeFor(duty, breaks),
    counted_current: { value: duty.runningCurrent },
    counted_by: { value: running > label ? "here" : "label" },
    fuse_state: { value: grave ? "unsafe" : faults.length > 0 ? "blows_early" : "right" },
    on_battery: { value: numberOrNull(input, "feeds.supply_voltage") === null ? 0 : 1 },
    ...flags([...faults, ...(running > carries ? ["over_carry"] : [])]),
  };
}

const DUTY = [
  "fuse",
  "stalled_current",
  "feeds.maker_fuse",
  "feeds.running_current",
  "feeds.panel_short",
  "feeds.supply_voltage",
];

const fusing: Model = {
  name: "fusing",
  takes: ["ampacity", "too_strong", "feeds.rated_current", ...DUTY],
  optional: DUTY,
  outputs: ["fuse_size", "fuse_state", "on_battery", "counted_current", "counted_by", ...FAULT_NAMES],
  run: fuseOf,
};

const LITHIUM = "lifepo4";

function breaksOf(word: string): number {
  const kind = fuses.kinds.find((one) => one.word === word);
  return kind ? si(kind.breaks) : 0;
}

/** What a dead short of the battery drives, and whether its fuses can break it; where the fuse may sit. */
const breaking: Model = {
  name: "breaking",
  takes: ["fuse", "fuse_kind", "post_fuse", "sheathed", "feeds.source_kind", "feeds.source_short"],
  optional: ["fuse", "feeds.source_kind", "feeds.source_short"],
  outputs: ["breaks", "short_current", "too_strong", "cannot_break", "lead_too_strong", "fuse_reach"],
  run: (input) => {
    const breaks = Math.max(breaksOf(wordOf(input, "fuse_kind")), breaksOf(wordOf(input, "post_fuse")));
    const short = numberOrNull(input, "feeds.source_short");
    const isOver = short !== null && short > breaks;
    const lithium = wordOrNull(input, "feeds.source_kind") === LITHIUM;
    const fitted = numberOrNull(input, "fuse") !== null;
    return outcomes(
      {
        breaks,
        short_current: short,
        too_strong: isOver && lithium ? 1 : 0,
        cannot_break: fitted && isOver && lithium ? 1 : 0,
        lead_too_strong: fitted && isOver && !lithium ? 1 : 0,
        fuse_reach: fuseDistanceLimit(wordOf(input, "sheathed") === "yes"),
      },
      "its pump runs on no battery",
    );
  },
};

/** Thinnest wire of the same naming that loses no more than is wanted. */
const thinnest: Model = {
  name: "thinnest",
  takes: [
    "gauge",
    "one_way_length",
    "wire_temperature",
    "wanted_drop",
    "feeds.running_current",
    "feeds.supply_voltage",
  ],
  outputs: ["thinnest_gauge"],
  run: (input) => {
    const current = numberOf(input, "feeds.running_current");
    const drop = numberOf(input, "wanted_drop") * numberOf(input, "feeds.supply_voltage");
    if (!(current > 0 && drop > 0)) return all(["thinnest_gauge"], { none: "nothing flows in it" });
    const american = wordOf(input, "gauge").endsWith("AWG");
    const listed = WIRES.filter(({ word }) => word.endsWith("AWG") === american);
    const wire = thinnestForDrop(listed, {
      current,
      drop,
      oneWayLength: numberOf(input, "one_way_length"),
      temperature: numberOf(input, "wire_temperature"),
    });
    return outcomes({ thinnest_gauge: wire?.label ?? null }, "even the thickest in the table loses more");
  },
};

/** What may be chosen. */
export const GAUGE_OPTIONS: Readonly<Record<string, string>> = Object.fromEntries(
  WIRES.map(({ word, label }) => [word, label]),
);
export const INSULATION_OPTIONS: Readonly<Record<string, string>> = {
  unknown: "not known: the least is taken",
  ...Object.fromEntries(INSULATIONS.values.map((heat) => [String(heat), `stands ${heat} °C`])),
};
export const FUSE_OPTIONS: Readonly<Record<string, string>> = Object.fromEntries(
  fuses.kinds.map(({ word, label }) => [word, label]),
);
export const POST_OPTIONS: Readonly<Record<string, string>> = {
  none: "no fuse of its own there",
  mrbf: FUSE_OPTIONS["mrbf"] ?? "",
  class_t: FUSE_OPTIONS["class_t"] ?? "",
};
export const FAULT_ROWS = FAULT_NAMES;
export const WIRE_MODELS: readonly Model[] = [copper, fusing, breaking, thinnest];
