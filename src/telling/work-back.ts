// What is wished of an answer before its grower says it, and what working back from it comes to, in a sentence.

import type { Bound } from "../network/bounds.ts";
import { MEASURES, type Measure, type MeasureName } from "../units/measures.ts";
import { betterOf } from "./plans.ts";

type Form = Measure["form"];

/** Of rows of a part, whatever their measure: more of it is wished, or less. */
const WISHED: Readonly<Record<string, "less" | "more">> = {
  waterings_per_charge: "more",
  shortest_interval: "more",
  days_of_autonomy: "more",
  weight_per_trip: "less",
};
/** What stands in the way of a part's own answers; of the rest it is what gives out first. */
const BEHIND: Readonly<Record<string, readonly Bound[]>> = {
  refill_wait: ["refill"],
  refill_after_watering: ["refill"],
  watering_time: ["pump_time"],
  waterings_per_charge: ["energy"],
  trips_per_watering: ["hands"],
  time_per_watering: ["hands"],
};

/** What would have to be set free for a better answer; null where that is told by what gives out first. */
export const boundsBehind = (id: string): readonly Bound[] | null => BEHIND[id.split(".")[1] ?? ""] ?? null;

/** Forms of a measure of which less is wished mostly; of the rest more is. */
const LESS: ReadonlySet<Form> = new Set<Form>(["count", "money", "duration"]);
/** A day, a year or an hour is nothing of which there could be more. */
const WHEN: ReadonlySet<Form> = new Set<Form>(["year", "clock"]);
/** What one begins from: half as much, or half as much again. */
const HALF = 0.5;

/** What is likely wished of an answer [SI]: the half of what less is wished of, else half as much again. Null: nothing can be. */
export function likelyWish(
  id: string,
  measure: MeasureName,
  now: number,
): { readonly sense: "at most" | "at least"; readonly target: number } | null {
  const { form } = MEASURES[measure];
  if (WHEN.has(form)) return null;
  const better = betterOf(id) ?? WISHED[id.split(".")[1] ?? ""] ?? (LESS.has(form) ? "less" : "more");
  const whole = (target: number, round: (value: number) => number) =>
    form === "count" ? round(target) : target;
  if (better === "less") return { sense: "at most", target: whole(now * HALF, Math.floor) };
  const more = form === "share" ? now + (1 - now) * HALF : now * (1 + HALF);
  return { sense: "at least", target: whole(more, Math.ceil) };
}

/** A value and the answer there, as they are read. */
export type MetSaid = { readonly value: string; readonly answer: string };

/** "612 gal does it: Short days, worst season 5." */
export const foundSaid = ({ value, answer }: MetSaid): string => `${value} does it: ${answer}.`;

/** "So does 120 gal: 30 days." */
export const alsoSaid = ({ value, answer }: MetSaid): string => `So does ${value}: ${answer}.`;

export const alreadySaid = (answer: string): string => `It is so already: ${answer}.`;

/** "Never from 20 gal to 5,000 gal: nearest is 12, at 5,000 gal."; "It moves nothing here: 12 from 20 gal to 5,000 gal." */
export function neverSaid(
  [low, high]: readonly [string, string],
  best: MetSaid | null,
  still: boolean,
): string {
  if (still && best) return `It moves nothing here: ${best.answer} from ${low} to ${high}.`;
  const nearest = best ? `nearest is ${best.answer}, at ${best.value}` : "there is no answer anywhere";
  return `Never from ${low} to ${high}: ${nearest}.`;
}
