// What giving each bed its water at once takes: trips, weight and minutes by hand, minutes by pump, beside each other.

import { numberIn } from "../../graph/readers.ts";
import type { CardView, Model, ModelInput, Outcome, Outputs } from "../../graph/types.ts";
import { waterersOf } from "../../network/beds.ts";
import { tripsFor } from "../../physics/carrying.ts";
import { networkIn } from "../network-in.ts";

const CARRY_ROWS = ["can_volume", "cans_at_once", "round_time", "weight_per_trip"];

const ROWS: Readonly<Record<string, readonly string[]>> = {
  bed: ["asked_volume", "can_volume"],
  carry: CARRY_ROWS,
  delivery: ["flow", "set_up"],
};

const BY_HAND = ["trips_per_watering", "weight_per_trip", "time_by_hand"];

function byHand(bed: CardView, carry: CardView | undefined): Outputs {
  const every = (outcome: Outcome): Outputs =>
    Object.fromEntries(BY_HAND.map((row) => [`${bed.id}.${row}`, outcome]));
  if (!carry) return every({ none: "not watered by cans" });
  const [can, cans, time, weight] = CARRY_ROWS.map((name) => numberIn(carry.results[name]));
  const volume = numberIn(bed.results["asked_volume"]);
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

/** The can that carries its water; the bed's own word only where no card has it. */
function canOf(bed: CardView, carry: CardView | undefined): Outputs {
  const size = numberIn(carry?.results["can_volume"]) ?? numberIn(bed.results["can_volume"]);
  return {
    [`${bed.id}.can_holds`]: size === null ? { none: "what a can holds is not known" } : { value: size },
    [`${bed.id}.asks_can`]: { value: carry ? 0 : 1 },
  };
}

function byPump(bed: CardView, delivery: CardView | undefined): Outputs {
  const row = `${bed.id}.time_by_pump`;
  if (!delivery) return { [row]: { none: "not watered by a pump" } };
  const flow = numberIn(delivery.results["flow"]);
  const volume = numberIn(bed.results["asked_volume"]);
  if (volume === null) return { [row]: { none: "how much it takes is not known" } };
  if (flow === null || flow <= 0) return { [row]: { none: `the flow of ${delivery.title} is not known` } };
  return { [row]: { value: volume / flow + (numberIn(delivery.results["set_up"]) ?? 0) } };
}

function byHandAndPump(input: ModelInput): Outputs {
  const network = networkIn(input);
  const outputs: Record<string, Outcome> = {};
  for (const bed of input.cards["bed"] ?? []) {
    const ids = waterersOf(network, bed.id);
    const first = (kind: string) =>
      ids.flatMap((id) => input.cards[kind]?.filter((card) => card.id === id) ?? [])[0];
    const carry = first("carry");
    Object.assign(outputs, canOf(bed, carry), byHand(bed, carry), byPump(bed, first("delivery")));
  }
  return outputs;
}

/** What is given at once by each bed's first can and first pump, by quantity id. */
export const hands: Model = {
  name: "hands",
  takes: ["network"],
  surveys: ROWS,
  tolerant: true,
  outputs: "by quantity id",
  run: byHandAndPump,
};
