// The batteries after the day's watering: their lowest, then what the sun or the house puts back.

import type { Machine } from "./machine.ts";
import type { BatteryPart } from "./plan.ts";
import { count } from "./tally.ts";

/**
 * Charges every battery.
 *
 * @param machine the run [-]
 * @param day of the record [day]
 * @source conservation of energy: what goes in times the efficiency is stored
 */
export function chargeAll(machine: Machine, day: number): void {
  const { batteries, ledger } = machine;
  const { charge, usable, lowest } = batteries;
  const month = machine.months[day] as number;
  for (let i = 0; i < charge.length; i++) {
    const part = batteries.parts[i] as BatteryPart;
    const before = charge[i] as number;
    lowest[i] = Math.min(lowest[i] as number, before);
    if (batteries.short[i] === 1) {
      const tally = batteries.daysShort[i];
      if (tally) count(tally, machine.slots, 1);
    }
    const room = (usable[i] as number) - before;
    const stored = part.chargeByMonth
      ? Math.min(room, (part.chargeByMonth[month] ?? 0) * part.efficiency)
      : room;
    if (stored <= 0) continue;
    charge[i] = before + stored;
    const entered = stored / part.efficiency;
    ledger.energyIn += entered;
    ledger.energyOut += entered - stored;
  }
}
