// A pump's wire and fuse: resistance, what it may carry, the fuse to fit, and the rules that the fitted one breaks.

import ampacities from "../../../shared/ampacities.json";
import fuses from "../../../shared/fuses.json";
import gauges from "../../../shared/wire-gauges.json";
import { all, outcomes } from "../../graph/outcomes.ts";
import { numberOf, numberOrNull, wordOf, wordOrNull } from "../../graph/readers.ts";
import type { Model, ModelInput, Outputs } from "../../graph/types.ts";
import { type AmpacityRow, ampacity, circuitResistance, thinnestForDrop } from "../../physics/copper-wire.ts";
import { type FuseFault, fuseChoice, fuseDistanceLimit, fuseFaults } from "../../physics/fuse.ts";
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

/** What a wire may carry; one thinner than the table begins has no figure. */
function carries(word: string, insulation: string): number | null {
  const { area } = wireOf(word);
  if (!ROWS.some((row) => row.area <= area * (1 + 1e-9))) return null;
  return ampacity(ROWS, area, insulation === "unknown" ? null : toSi(Number(insulation), INSULATIONS.unit));
}

const copper: Model = {
  name: "copper",
  takes: ["gauge", "one_way_length", "insulation"],
  outputs: ["listed_resistance", "listed_at", "ampacity"],
  run: (input) => {
    const wire = wireOf(wordOf(input, "gauge"));
    return {
      ...outcomes({
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
};

function fuseOf(input: ModelInput): Outputs {
  const fuse = numberOrNull(input, "fuse");
  const makerFuse = numberOrNull(input, "feeds.maker_fuse");
  // Sized by the current wide open, which is the most that it draws while it turns.
  const duty = {
    runningCurrent: numberOf(input, "feeds.rated_current"),
    makerFuse,
    ampacity: numberOf(input, "ampacity"),
  };
  const choice = fuseChoice(duty, SIZES);
  const stall = numberOrNull(input, "stalled_current");
  const faults = fuseFaults({ ...duty, fuse, stalledCurrent: stall });
  const grave =
    numberOf(input, "cannot_break") > 0 ||
    faults.some((fault) => fault !== "little_margin" && fault !== "under_running_current");
  return {
    fuse_size: choice.state === "fits" ? { value: choice.size } : { none: CHOICES[choice.state] },
    fuse_state: { value: grave ? "unsafe" : faults.length > 0 ? "blows_early" : "right" },
    ...outcomes(Object.fromEntries(FAULTS.map((fault) => [fault, faults.includes(fault) ? 1 : 0]))),
  };
}

const fusing: Model = {
  name: "fusing",
  takes: ["fuse", "cannot_break", "ampacity", "stalled_current", "feeds.maker_fuse", "feeds.rated_current"],
  optional: ["fuse", "feeds.maker_fuse", "stalled_current"],
  outputs: ["fuse_size", "fuse_state", ...FAULTS],
  run: fuseOf,
};

const LITHIUM = "lifepo4";

/** What a dead short of the battery drives, and whether the fuse can break it; where the fuse may sit. */
const breaking: Model = {
  name: "breaking",
  takes: ["fuse", "fuse_kind", "sheathed", "feeds.source_kind"],
  optional: ["fuse", "feeds.source_kind"],
  outputs: ["breaks", "short_current", "cannot_break", "fuse_reach"],
  run: (input) => {
    const kind = fuses.kinds.find(({ word }) => word === wordOf(input, "fuse_kind"));
    if (!kind) throw new Error("There is no such fuse.");
    const breaks = si(kind.breaks);
    const short = wordOrNull(input, "feeds.source_kind") === LITHIUM ? si(fuses.lithium_short) : null;
    const fitted = numberOrNull(input, "fuse") !== null;
    return outcomes(
      {
        breaks,
        short_current: short,
        cannot_break: fitted && short !== null && short > breaks ? 1 : 0,
        fuse_reach: fuseDistanceLimit(wordOf(input, "sheathed") === "yes"),
      },
      "known for lithium cells only; a lead battery's is on its data sheet",
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
export const FAULT_ROWS = FAULTS;
export const WIRE_MODELS: readonly Model[] = [copper, fusing, breaking, thinnest];
