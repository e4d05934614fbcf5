// The doubt of this morning: a dip is not read to the hair, and what nobody noted stood otherwise in every year. Each member of
// the odds starts from a morning of its own, spread evenly over what may be, without chance.

import { levelAt, volumeAt } from "../physics/vessel.ts";
import type { Moment } from "./moment.ts";
import type { Assumed } from "./moment-today.ts";
import { spreadOver } from "./spread-over.ts";
import type { SeasonState } from "./state.ts";
import type { UsualMorning } from "./usual-morning.ts";

/** Each tank's dips and the unnoted are spread in an order of their own; the first orders are those of a forecast's days. */
const UNNOTED = 7;
const DIPPED = 8;

/**
 * How many standard deviations off a share of normal errors stays under.
 *
 * @param share between 0 and 1, neither of them
 * @validity within 0.02 from 0.01 to 0.99
 * @source Tukey's lambda with 0.14, whose quantiles come near the normal's (Joiner and Rosenblatt 1971, from memory)
 */
export const normalScore = (share: number): number => 4.91 * (share ** 0.14 - (1 - share) ** 0.14);

export type Doubt = {
  readonly assumed: Assumed;
  /** By how much a dip is off, one standard deviation [m]. */
  readonly dip: number;
  /** The mornings of this date in the past years; asked only where something was not noted. */
  readonly past: () => readonly UsualMorning[];
};

/**
 * The mornings from which the members start.
 *
 * @param moment this morning as it was noted, the middle of the years where it was not
 * @returns by member: dips off by their spread, each tank by itself; what was not noted as it was in one of the years, together
 * @validity a dip that was carried on to today is as far off as if it had been read today: more than it is where tanks ran over
 */
export function doubtedMornings(
  whole: SeasonState,
  moment: Moment,
  { assumed, dip, past }: Doubt,
  members: number,
): (member: number) => Moment {
  const unnoted = new Set([...assumed.tanks, ...assumed.beds, ...assumed.batteries]);
  const mornings = unnoted.size > 0 ? past() : [];
  const dipped = whole.tanks.parts.filter(({ id }) => !unnoted.has(id));
  const ranks = dipped.map((_, place) => spreadOver(members, DIPPED + place));
  const years = spreadOver(members, UNNOTED);
  if (mornings.length === 0 && dip === 0) return () => moment;
  return (member) => {
    const year = mornings[Math.floor(((years[member] as number) * mornings.length) / members)];
    const tanks = { ...moment.tanks };
    dipped.forEach(({ id, vessel }, place) => {
      const share = ((ranks[place]?.[member] as number) + 0.5) / members;
      const level = levelAt(vessel, tanks[id] as number) + dip * normalScore(share);
      tanks[id] = volumeAt(vessel, Math.min(vessel.height, Math.max(0, level)));
    });
    return year ? withUnnoted({ ...moment, tanks }, assumed, year) : { ...moment, tanks };
  };
}

function withUnnoted(moment: Moment, assumed: Assumed, year: UsualMorning): Moment {
  const [tanks, batteries, beds] = [{ ...moment.tanks }, { ...moment.batteries }, { ...moment.beds }];
  for (const id of assumed.tanks) tanks[id] = year.tanks[id] ?? (tanks[id] as number);
  for (const id of assumed.batteries) {
    const [held, charge] = [batteries[id], year.batteries[id]];
    if (held && charge !== undefined)
      batteries[id] = { charge, spare: held.spare === held.charge ? charge : held.spare };
  }
  for (const id of assumed.beds) {
    const [bed, soil] = [beds[id], year.beds[id]];
    if (bed && soil) beds[id] = { ...bed, soil };
  }
  return { ...moment, tanks, batteries, beds };
}
