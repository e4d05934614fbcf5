// What a tank works out from its shape, its outlet and what draws from it.

import { outcomes } from "../../graph/outcomes.ts";
import { numberOf, numberOrNull, wordOf, wordOrNull } from "../../graph/readers.ts";
import type { Model, ModelInput, Outputs } from "../../graph/types.ts";
import { AS_READ, isOver, saysSo } from "../../happened/dip.ts";
import { surfaceAt, type Vessel, volumeAt } from "../../physics/vessel.ts";
import { toSi } from "../../units/unit.ts";
import { LISTED } from "./usual-tanks.ts";

export const SHAPES = {
  upright_cylinder: "round, standing",
  lying_cylinder: "round, lying",
  box: "box",
  other: "other: give what it holds",
};

const DIMENSIONS = ["water_height", "diameter", "length", "width"];

/** What it starts from decides its shape. */
const shapeOf = (input: ModelInput): string =>
  LISTED.get(wordOf(input, "start_from"))?.shape ?? wordOf(input, "shape");

/** Volume of one vessel from its dimensions [m3]; null where the shape's dimensions are not all there. */
function fromDimensions(input: ModelInput): number | null {
  const [height, diameter, length, width] = DIMENSIONS.map((name) => numberOrNull(input, name));
  const shape = shapeOf(input);
  if (shape === "box" && length && width && height) return length * width * height;
  if (shape === "upright_cylinder" && diameter && height) return ((Math.PI * diameter ** 2) / 4) * height;
  if (shape === "lying_cylinder" && length && height) return ((Math.PI * height ** 2) / 4) * length;
  return null;
}

/** The sides on which it stands that its dimensions tell, by shape [m]. */
function sidesOf(input: ModelInput): readonly (number | null)[] {
  const [height, diameter, length, width] = DIMENSIONS.map((name) => numberOrNull(input, name) || null);
  const shape = shapeOf(input);
  if (shape === "upright_cylinder") return [diameter ?? null];
  if (shape === "lying_cylinder") return [height ?? null, length ?? null];
  return shape === "box" ? [length ?? null, width ?? null] : [];
}

/** Across the ground that it covers: a circle for a round tank that stands, else a square [m]. */
function acrossOf(input: ModelInput): number | null {
  const area = numberOrNull(input, "plan_area");
  if (area === null || area <= 0) return null;
  return shapeOf(input) === "upright_cylinder" ? Math.sqrt((4 * area) / Math.PI) : Math.sqrt(area);
}

/** How wide it stands where it is narrowest: that way it topples. */
export const standing: Model = {
  name: "standing",
  takes: ["start_from", "shape", ...DIMENSIONS, "plan_area"],
  optional: ["diameter", "length", "width", "plan_area"],
  outputs: ["narrowest"],
  run: (input) => {
    const known = [...sidesOf(input), acrossOf(input)].filter((side) => side !== null);
    return outcomes({ narrowest: known.length > 0 ? Math.min(...known) : null }, "give a dimension of it");
  },
};

export const dimensions: Model = {
  name: "dimensions",
  takes: ["start_from", "shape", ...DIMENSIONS],
  optional: ["diameter", "length", "width"],
  outputs: ["dimension_volume", "shape_volume"],
  run: (input) => {
    const volume = fromDimensions(input);
    const listed = LISTED.get(wordOf(input, "start_from"));
    // A tote is no plain box: its corners are round and its top is not filled, so that what it is sold as stands.
    const sold = listed ? toSi(listed.capacity.value, listed.capacity.unit) : volume;
    return outcomes(
      { dimension_volume: sold, shape_volume: listed ? null : volume },
      "give what it holds, or all its dimensions",
    );
  },
};

function vesselOf(input: ModelInput): Vessel {
  return {
    form: shapeOf(input) === "lying_cylinder" ? "lying" : "upright",
    height: numberOf(input, "water_height"),
    volume: numberOf(input, "capacity") * numberOf(input, "count"),
  };
}

export const contents: Model = {
  name: "contents",
  takes: ["start_from", "shape", "water_height", "capacity", "count", "outlet_height", "cover"],
  outputs: ["vessel", "usable", "open_surface", "dead_water"],
  run: (input): Outputs => {
    const vessel = vesselOf(input);
    const outlet = numberOf(input, "outlet_height");
    if (outlet > vessel.height) {
      const problem = { failed: "The outlet stands higher than the water can." };
      return { vessel: problem, usable: problem, open_surface: problem, dead_water: problem };
    }
    const dead = volumeAt(vessel, outlet);
    const surface =
      vessel.form === "upright" ? surfaceAt(vessel, vessel.height) : surfaceAt(vessel, vessel.height / 2);
    return outcomes({
      vessel,
      usable: vessel.volume - dead,
      dead_water: dead,
      open_surface: wordOf(input, "cover") === "open" ? surface : 0,
    });
  },
};

export const dip: Model = {
  name: "dip",
  takes: ["vessel", "level_today", "dipped_on", "dip_said", "site.today"],
  optional: ["dipped_on", "dip_said", "site.today"],
  outputs: ["water_today", "dip_day", "dip_counts"],
  run: (input) => {
    const vessel = input.values["vessel"] as Vessel;
    const level = numberOf(input, "level_today");
    const counts = !isOver(level, vessel.height)
      ? "counted"
      : saysSo(wordOrNull(input, "dip_said") ?? "", AS_READ)
        ? "as_read"
        : "asked";
    const day = wordOrNull(input, "dipped_on") ?? wordOrNull(input, "site.today");
    const uncounted = {
      none: "what was dipped is more than it holds, and is not counted until it is set right",
    };
    return {
      dip_counts: { value: counts },
      water_today:
        counts === "asked" ? uncounted : { value: volumeAt(vessel, Math.min(level, vessel.height)) },
      dip_day:
        counts === "asked" ? uncounted : day === null ? { none: "no day given for today" } : { value: day },
    };
  },
};
