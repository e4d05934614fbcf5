// The account of a run: all that came in and went out, held each evening against what is in store.

import type { SeasonState } from "./state.ts";

/** Water in tanks less what is short in the beds' ground now [m3]; by loops, as it is asked every evening. */
function waterStored(state: SeasonState): number {
  let sum = 0;
  const { volume } = state.tanks;
  for (let place = 0; place < volume.length; place++) sum += volume[place] as number;
  for (let i = 0; i < state.beds.length; i++) {
    const bed = state.beds[i] as SeasonState["beds"][number];
    sum -= (bed.soil.depletion + bed.soil.rest) * bed.ground;
  }
  return sum;
}

function energyStored(state: SeasonState): number {
  let sum = 0;
  for (const charge of state.batteries.charge) sum += charge;
  for (const charge of state.batteries.spare) sum += charge;
  return sum;
}

/**
 * Opens the account with what is in store.
 *
 * @param state the run before its first day
 */
export function openAccount(state: SeasonState): void {
  state.ledger.waterAtStart = waterStored(state);
  state.ledger.energyAtStart = energyStored(state);
}

/**
 * Holds in less out against the change in store, as the evening finds it.
 *
 * @param state the run in the evening
 * @source conservation of water and of energy
 */
export function closeDay(state: SeasonState): void {
  const { ledger } = state;
  const water = ledger.waterIn - ledger.waterOut - (waterStored(state) - ledger.waterAtStart);
  ledger.waterError = Math.max(ledger.waterError, Math.abs(water));
  if (state.batteries.parts.length === 0) return;
  const energy = ledger.energyIn - ledger.energyOut - (energyStored(state) - ledger.energyAtStart);
  ledger.energyError = Math.max(ledger.energyError, Math.abs(energy));
}

/**
 * Largest error of an account over all that went through.
 *
 * @param error largest of any evening [any]
 * @param through in and out [any]
 * @returns share; 0 where nothing went through and nothing is amiss [-]
 */
export function errorShare(error: number, through: number): number {
  if (error === 0) return 0;
  return through > 0 ? error / through : Infinity;
}
