// Morning: what each bed asks for and what is due, on last evening's soil unless the bed decides on this morning's.

import { DAY } from "../units/constants.ts";
import type { Bed } from "./beds.ts";
import { HELD_BACK } from "./bounds.ts";
import { dueOn } from "./draws.ts";
import type { Machine } from "./machine.ts";
import { mayAsk } from "./schedule.ts";
import type { Source } from "./sources.ts";

/**
 * Opens a day: budgets are whole again, and every bed says what it asks for.
 *
 * @param machine the run [-]
 * @param day of the record [day]
 * @source definition; readily available water, FAO-56 Eq. 83
 */
export function decide(machine: Machine, day: number): void {
  machine.slots.season = machine.seasonSlots[day] as number;
  machine.slots.year = machine.yearSlots[day] as number;
  machine.hands.left = machine.plan.minutesPerDay ?? Infinity;
  machine.pumpLeft.fill(DAY);
  machine.batteries.short.fill(0);
  machine.batteries.drawn.fill(0);
  machine.tanks.drawn.fill(0);
  const dayInSeason = machine.dayInSeason[day] as number;
  if (dayInSeason === 1) machine.spilledSince.fill(0);
  for (let i = 0; i < machine.beds.length; i++) {
    const bed = machine.beds[i] as Bed;
    shedHarvest(machine, bed, day);
    bed.asked = dayInSeason > 0 ? askOf(bed, day, dayInSeason, machine.record.firstDay + day) : 0;
  }
}

/** Root zones that are gone take their want of water with them. */
function shedHarvest(machine: Machine, bed: Bed, day: number): void {
  const total = bed.days.total[day] as number;
  if (bed.depletion <= total) return;
  machine.ledger.waterIn += (bed.depletion - total) * bed.ground;
  bed.depletion = total;
}

/**
 * What a bed asks for, by its soil as it is now.
 *
 * @param bed the bed [-]
 * @param day of the record [day]
 * @param dayInSeason counted from 1 [day]
 * @param date the day [days since 1970-01-01]
 * @returns volume, 0 where it asks for nothing [m3]
 * @source definition; readily available water, FAO-56 Eq. 83
 */
export function askOf(bed: Bed, day: number, dayInSeason: number, date: number): number {
  if (bed.days.total[day] === 0) return 0;
  if (bed.letGo?.[day] === 1) {
    bed.bound = HELD_BACK;
    return 0;
  }
  const { rule } = bed.part;
  if (!mayAsk(rule, date, dayInSeason)) return 0;
  if (rule.kind === "fixed") return rule.volume;
  if (rule.kind === "weekdays") return rule.volume ?? lackOf(bed, day) * bed.perDepth;
  const lack = lackOf(bed, day);
  return lack >= (bed.days.trigger[day] as number) ? lack * bed.perDepth : 0;
}

/** Water short when the watering is decided [m]: by last evening's soil, or with what fell by this morning in it. */
function lackOf(bed: Bed, day: number): number {
  if (bed.part.decidesOn === "evening") return bed.depletion;
  return Math.max(0, bed.depletion - (bed.days.rain[day] as number));
}

/**
 * The most that can be drawn straight from each tank today, with its sign turned: room beyond the brim under `use_first`.
 *
 * @param machine the run, its beds having asked [-]
 * @param day of the record [day]
 * @source definition
 */
export function readLeeway(machine: Machine, day: number): void {
  const { leeway } = machine;
  leeway.fill(0);
  for (const draw of machine.draws) leeway[draw.tank] = (leeway[draw.tank] as number) - dueOn(draw, day);
  for (const bed of machine.beds) {
    if (bed.asked === 0) continue;
    for (const { tank } of bed.sources as readonly Source[])
      leeway[tank] = (leeway[tank] as number) - bed.asked;
  }
}
