// What a tank works out from its shape, its outlet and what draws from it.

import { outcomes } from "../../graph/outcomes.ts";
import { numberOf, numberOrNull, wordOf } from "../../graph/readers.ts";
import type { Model, ModelInput, Outputs } from "../../graph/types.ts";
import { surfaceAt, type Vessel, volumeAt } from "../../physics/vessel.ts";
import { toSi } from "../../units/unit.ts";
import { LISTED } from "./usual-tanks.ts";

export const SHAPES = {
  upright_cylinder: "round, standing",
  lying_cylinder: "round, lying",
  box: "box",
  other: "other: give what it holds",
};

/** Plan area of one vessel and its volume from the dimensions; null where the shape's dimensions are not all there. */
function fromDimensions(input: ModelInput): { readonly volume: number | null; readonly base: number | null } {
  const [height, diameter, length, width] = ["water_height", "diameter", "length", "width"].map((name) =>
    numberOrNull(input, name),
  );
  const listed = LISTED.get(wordOf(input, "start_from"));
  const shape = listed?.shape ?? wordOf(input, "shape");
  if (shape === "box" && length && width && height)
    return { volume: length * width * height, base: length * width };
  if (shape === "upright_cylinder" && diameter && height) {
    const base = (Math.PI * diameter ** 2) / 4;
    return { volume: base * height, base };
  }
  if (shape === "lying_cylinder" && length && height)
    return { volume: ((Math.PI * height ** 2) / 4) * length, base: length * height };
  return { volume: null, base: null };
}

export const dimensions: Model = {
  name: "dimensions",
  takes: ["start_from", "shape", "water_height", "diameter", "length", "width"],
  optional: ["diameter", "length", "width"],
  outputs: ["dimension_volume", "plan_area_from_shape"],
  run: (input) => {
    const { volume, base } = fromDimensions(input);
    const listed = LISTED.get(wordOf(input, "start_from"));
    // A tote is no plain box: its corners are round and its top is not filled, so that what it is sold as stands.
    const sold = listed ? toSi(listed.capacity.value, listed.capacity.unit) : volume;
    return outcomes(
      { dimension_volume: sold, plan_area_from_shape: base },
      "give what it holds, or all its dimensions",
    );
  },
};

/** What it starts from decides its shape; lying is for a tank of one's own figures. */
function isLying(input: ModelInput): boolean {
  const shape = LISTED.get(wordOf(input, "start_from"))?.shape ?? wordOf(input, "shape");
  return shape === "lying_cylinder";
}

function vesselOf(input: ModelInput): Vessel {
  return {
    form: isLying(input) ? "lying" : "upright",
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
  takes: ["vessel", "level_today"],
  outputs: ["water_today"],
  run: (input) => {
    const vessel = input.values["vessel"] as Vessel;
    return outcomes({
      water_today: volumeAt(vessel, Math.min(numberOf(input, "level_today"), vessel.height)),
    });
  },
};
