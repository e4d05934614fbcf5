// What came into a run and went out of it so far, and how far that is off what is in store.

export type Ledger = {
  /** Water [m3] and energy [J] so far. */
  waterIn: number;
  waterOut: number;
  energyIn: number;
  energyOut: number;
  /** In store before the first day. */
  waterAtStart: number;
  energyAtStart: number;
  /** Largest |in - out - change| of any evening. */
  waterError: number;
  energyError: number;
};

/** An empty account. */
export function newLedger(): Ledger {
  return {
    waterIn: 0,
    waterOut: 0,
    energyIn: 0,
    energyOut: 0,
    waterAtStart: 0,
    energyAtStart: 0,
    waterError: 0,
    energyError: 0,
  };
}
