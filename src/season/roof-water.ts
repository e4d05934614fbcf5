// What roofs bring to the tanks of a run on each of its days.

import { type Before, flushBefore } from "./before.ts";
import { byId } from "./by-id.ts";
import type { SeasonInput } from "./input.ts";
import { caughtUnder, dailyCatch } from "./roof-catch.ts";
import type { Sky } from "./sky.ts";

export type RoofWater = {
  /** Roof water to each tank on each day [m3]; null where no roof drains to it. */
  readonly roofWater: readonly (Float64Array | null)[];
  /** Caught by each roof on each day [m3], in the input's order. */
  readonly caught: readonly {
    readonly id: string;
    readonly volume: Float64Array;
    readonly stored: boolean;
  }[];
};

type PlaceOf = ReadonlyMap<string, number>;

/**
 * Roof water under a sky.
 *
 * @param placeOf place of each tank by its id
 * @param before where the run goes on from days that are over: its sky is of no use to another run, and nothing is kept of it
 * @throws DomainError for a negative loss or a coefficient outside 0..1
 */
export function roofsOf(
  input: SeasonInput,
  placeOf: PlaceOf,
  sky: Sky,
  before: Before | undefined,
): RoofWater {
  const caught = byId(input.roofs).map((roof) => ({
    id: roof.id,
    volume: before
      ? dailyCatch(roof, sky.arriving, sky.firstDay, flushBefore(before, roof.id))
      : caughtUnder(roof, sky),
    stored: placeOf.has(roof.drainsTo ?? ""),
  }));
  return { caught, roofWater: roofWaterOf(input, placeOf, caught, sky.eto.length) };
}

function roofWaterOf(
  input: SeasonInput,
  placeOf: PlaceOf,
  caught: RoofWater["caught"],
  length: number,
): readonly (Float64Array | null)[] {
  const water: (Float64Array | null)[] = Array.from({ length: placeOf.size }, () => null);
  byId(input.roofs).forEach((roof, index) => {
    const place = placeOf.get(roof.drainsTo ?? "");
    const volume = caught[index]?.volume;
    if (place === undefined || !volume) return;
    const sum = water[place] ?? new Float64Array(length);
    for (let day = 0; day < length; day++) sum[day] = (sum[day] as number) + (volume[day] as number);
    water[place] = sum;
  });
  return water;
}
