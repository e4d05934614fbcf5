// A bucket timed at a hose, as the pump's card and this hose read it: what came, through what, and under which volts.

import { all, outcomes } from "../../graph/outcomes.ts";
import { numberOf, numberOrNull } from "../../graph/readers.ts";
import type { Model, ModelInput } from "../../graph/types.ts";
import type { GravityLine } from "../../physics/gravity-line.ts";
import { openingOf, SHARP_EDGE } from "../../physics/orifice.ts";
import { levelAt, type Vessel } from "../../physics/vessel.ts";
import type { BucketTest } from "../pump/lesson.ts";

/** What every hose is read by, its length and bore aside. */
export const LINE_TAKES = [
  "roughness",
  "fittings_k",
  "filters_k",
  "head_k",
  "rose_holes",
  "rose_hole",
  "site.water_viscosity",
  "site.water_density",
];

type Hose = { readonly length: number; readonly bore: number };

/** All holes of the rose together as one opening, or null where it has none [m2]. */
export function roseOf(input: ModelInput): number | null {
  const holes = numberOrNull(input, "rose_holes");
  return holes === null ? null : holes * openingOf(numberOf(input, "rose_hole"), SHARP_EDGE);
}

/** A hose with its fittings and filters, and a loss and an opening at its end. */
export function lineOf(input: ModelInput, hose: Hose, k: number, opening: number | null): GravityLine {
  return {
    ...hose,
    roughness: numberOf(input, "roughness"),
    fittingsK: numberOf(input, "fittings_k") + numberOf(input, "filters_k") + k,
    opening,
    viscosity: numberOf(input, "site.water_viscosity") / numberOf(input, "site.water_density"),
  };
}

/** Flow that a bucket showed, by the row that holds its time, or null [m3/s]. */
export function bucketFlow(input: ModelInput, time = "bucket_time"): number | null {
  const [volume, seconds] = [numberOrNull(input, "bucket_volume"), numberOrNull(input, time)];
  return volume === null || seconds === null ? null : volume / seconds;
}

/** From the water, with the tank filled to a share, up to the hose's end. */
export const standing: Model = {
  name: "standing",
  takes: ["from.vessel", "from.floor_height", "outlet_height", "tank_share"],
  outputs: ["lift"],
  run: (input) => {
    const vessel = input.values["from.vessel"] as Vessel;
    const level = levelAt(vessel, vessel.volume * numberOf(input, "tank_share"));
    return outcomes({
      lift: numberOf(input, "outlet_height") - numberOf(input, "from.floor_height") - level,
    });
  },
};

const CONDITIONS = ["tested_length", "tested_bore", "tested_lift", "tested_voltage", "tested_resistance"];
const SEEN = ["bucket_volume", "bucket_time", "open_time", "measured.flow"];

/** What was seen: as it is watered is through the wand where there is one, else already the open end. */
function seenOf(input: ModelInput): Pick<BucketTest, "open" | "wand"> {
  const plain = bucketFlow(input) ?? numberOrNull(input, "measured.flow");
  const open = bucketFlow(input, "open_time");
  if (open !== null) return { open, wand: plain };
  const hasWand = numberOf(input, "head_k") > 0 || numberOrNull(input, "rose_holes") !== null;
  return hasWand ? { open: null, wand: plain } : { open: plain, wand: null };
}

function testOf(input: ModelInput): BucketTest | null {
  const { open, wand } = seenOf(input);
  const voltage = numberOrNull(input, "tested_voltage");
  const lift = numberOrNull(input, "tested_lift");
  if ((open === null && wand === null) || voltage === null || lift === null) return null;
  const hose = { length: numberOf(input, "tested_length"), bore: numberOf(input, "tested_bore") };
  return {
    open,
    wand,
    whole: lineOf(input, hose, numberOf(input, "head_k"), roseOf(input)),
    bare: lineOf(input, hose, 0, null),
    lift,
    supply: { voltage, resistance: numberOrNull(input, "tested_resistance") ?? 0 },
  };
}

/** A bucket, or a flow measured otherwise, with the hose and the volts it was timed at. */
export const testing: Model = {
  name: "testing",
  takes: [...SEEN, ...CONDITIONS, ...LINE_TAKES],
  optional: [...SEEN, "tested_lift", "tested_voltage", "tested_resistance", "rose_holes"],
  outputs: ["bucket_test", "has_test"],
  run: (input) => {
    const test = testOf(input);
    if (test) return outcomes({ bucket_test: test, has_test: 1 });
    const seen = Object.values(seenOf(input)).some((flow) => flow !== null);
    const why = seen ? "the volts at its test are not known" : "no bucket timed yet";
    return { ...all(["bucket_test"], { none: why }), has_test: { value: seen ? 1 : 0 } };
  },
};
