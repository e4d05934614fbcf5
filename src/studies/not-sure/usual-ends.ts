// Between which ends a number may lie of which nothing is known but that it is not sure: round values to either side.

import { fromSi, toSi } from "../../units/unit.ts";
import { type Axis, entryAtPlace, entryStepped, placeOnAxis } from "../turn.ts";

export type Ends = { readonly low: number; readonly high: number };

export type NumberAxis = Extract<Axis, { form: "number" }>;

/** It may be off by so much of itself to either side. */
const USUAL_DOUBT = 0.2;
/** Of a number that is nought, by so much of its axis. */
const AROUND_NOUGHT = 0.05;

/** The round value at a place, as a number of the axis's unit. */
export const numberAt = (axis: NumberAxis, place: number): number => Number(entryAtPlace(axis, place).value);

/** Where no two round values lie that near, one step up, or where there is none one down. */
function aStepApart(axis: NumberAxis, from: number): Ends {
  const si = toSi(from, axis.scale.unit);
  const up = entryStepped(axis, si, 1, false);
  if (up) return { low: from, high: Number(up.value) };
  return { low: Number(entryStepped(axis, si, -1, false)?.value ?? from), high: from };
}

/** Ends about a number [unit of the axis], never beyond the axis. */
export function usualEnds(axis: NumberAxis, si: number): Ends {
  const { unit } = axis.scale;
  const value = fromSi(si, unit);
  const reach = Math.abs(value) * USUAL_DOUBT;
  const now = placeOnAxis(axis, si) ?? 0;
  const end = (side: 1 | -1): number => {
    const there = placeOnAxis(axis, toSi(value + side * reach, unit)) ?? now;
    return numberAt(axis, reach === 0 ? now + side * AROUND_NOUGHT : there);
  };
  const [low, high] = [end(-1), end(1)];
  return low < high ? { low, high } : aStepApart(axis, low);
}
