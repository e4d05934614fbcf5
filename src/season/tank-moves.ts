// Tanks and batteries set to what was seen of them, and what was filled in or taken out.

import type { Happened } from "../happened/happened.ts";
import { volumeAt } from "../physics/vessel.ts";
import type { TankPart } from "./input.ts";
import type { SeasonState } from "./state.ts";

/** Water at a depth that was read [m3]; of one over the brim all that it holds. */
const volumeRead = ({ vessel }: TankPart, depth: number): number =>
  volumeAt(vessel, Math.min(vessel.height, Math.max(0, depth)));

/** Sets what a note tells of a tank or a battery; of anything else nothing. */
export function setLevel(state: SeasonState, { what, where, amount }: Happened): void {
  const { tanks, batteries } = state;
  if (what === "charged" || what === "swapped") {
    const at = batteries.parts.findIndex(({ id }) => id === where);
    if (at >= 0) setCharge(state, at, what, amount);
    return;
  }
  const place = tanks.placeOf.get(where);
  if (place === undefined || amount === null) return;
  const held = tanks.volume[place] as number;
  const capacity = tanks.capacity[place] as number;
  if (what === "dipped") tanks.volume[place] = volumeRead(tanks.parts[place] as TankPart, amount);
  else if (what === "filled") tanks.volume[place] = Math.max(held, Math.min(capacity, held + amount));
  else if (what === "took") tanks.volume[place] = Math.max(0, held - amount);
}

/** Charged to a share, all of it where none is said; swapped, what was at the pump goes to be charged where there are two. */
function setCharge(
  { batteries }: SeasonState,
  at: number,
  what: "charged" | "swapped",
  share: number | null,
): void {
  const { charge, spare, usable, parts } = batteries;
  const before = charge[at] as number;
  charge[at] = (usable[at] as number) * Math.min(1, share ?? 1);
  if (parts[at]?.charged !== "swapped") return;
  spare[at] = what === "swapped" ? before : (charge[at] as number);
}
