// What a good watering of each bed takes: trips, weight and minutes by hand, minutes by pump, beside each other.

import { numberIn, readyList } from "../../graph/readers.ts";
import type { CardView, ModelInput, Outcome, Outputs } from "../../graph/types.ts";
import { tripsFor } from "../../physics/carrying.ts";

/** Rows read of every card for this. */
export const HANDS_ROWS: Readonly<Record<string, readonly string[]>> = {
  bed: ["watered_by", "watering_volume"],
  carry: ["can_volume", "cans_at_once", "round_time", "weight_per_trip"],
  delivery: ["flow", "set_up"],
};

const BY_HAND = ["trips_per_watering", "weight_per_trip", "time_by_hand"];

function byHand(bed: CardView, carry: CardView | undefined): Outputs {
  const every = (outcome: Outcome): Outputs =>
    Object.fromEntries(BY_HAND.map((row) => [`${bed.id}.${row}`, outcome]));
  if (!carry) return every({ none: "not watered by cans" });
  const names = HANDS_ROWS["carry"] ?? [];
  const [can, cans, time, weight] = names.map((name) => numberIn(carry.results[name]));
  const volume = numberIn(bed.results["watering_volume"]);
  if (volume === null) return every({ none: "how much it takes is not known" });
  if (can == null || cans == null || time == null || weight == null)
    return every({ none: `${carry.title} lacks a number` });
  const trips = tripsFor(volume, can, cans);
  return {
    [`${bed.id}.trips_per_watering`]: { value: trips },
    [`${bed.id}.weight_per_trip`]: { value: weight },
    [`${bed.id}.time_by_hand`]: { value: trips * time },
  };
}

function byPump(bed: CardView, delivery: CardView | undefined): Outputs {
  const row = `${bed.id}.time_by_pump`;
  if (!delivery) return { [row]: { none: "not watered by a pump" } };
  const flow = numberIn(delivery.results["flow"]);
  const volume = numberIn(bed.results["watering_volume"]);
  if (volume === null) return { [row]: { none: "how much it takes is not known" } };
  if (flow === null || flow <= 0) return { [row]: { none: `the flow of ${delivery.title} is not known` } };
  return { [row]: { value: volume / flow + (numberIn(delivery.results["set_up"]) ?? 0) } };
}

/** A good watering by each bed's first can and first pump, by quantity id. */
export function hands(input: ModelInput): Outputs {
  const outputs: Record<string, Outcome> = {};
  for (const bed of input.cards["bed"] ?? []) {
    const ids = readyList(bed.results, "watered_by").map(String);
    const first = (kind: string) =>
      ids.flatMap((id) => input.cards[kind]?.filter((card) => card.id === id) ?? [])[0];
    Object.assign(outputs, byHand(bed, first("carry")), byPump(bed, first("delivery")));
  }
  return outputs;
}
