// Until when the water that was last dipped lasts without rain: a tank's own, and before that what waits in the tanks above that fill it.

import { numberIn, valueIn, wordIn, wordOrNull } from "../../graph/readers.ts";
import type { CardView, ModelInput, Outcome } from "../../graph/types.ts";
import { feedersOf, linesOutOf } from "../../network/feeds.ts";
import { type Vessel, volumeAt } from "../../physics/vessel.ts";
import type { TankAutonomy } from "../../season/autonomy.ts";
import { isoDate, parseIsoDate } from "../../units/calendar.ts";
import { networkIn } from "../network-in.ts";

const cardOf = (input: ModelInput, kind: string, id: string): CardView | undefined =>
  (input.cards[kind] ?? []).find((card) => card.id === id);

/** Of the water dipped what can be taken from the tank itself [m3]; null where nobody dipped it. */
function ownWater(tank: CardView): number | null {
  const water = numberIn(tank.results["water_today"]);
  const vessel = valueIn(tank.results["vessel"]) as Vessel | null;
  const reachable = numberIn(tank.results["reachable"]);
  if (water === null || vessel === null || reachable === null) return null;
  return Math.max(0, water - (vessel.volume - reachable));
}

/** Of the water dipped what still runs down out of a tank [m3]; null where nobody dipped it. */
function waterAbove(input: ModelInput, tank: CardView): number | null {
  const water = numberIn(tank.results["water_today"]);
  const vessel = valueIn(tank.results["vessel"]) as Vessel | null;
  const floor = numberIn(tank.results["floor_height"]);
  if (water === null || vessel === null || floor === null) return null;
  const stops = linesOutOf(networkIn(input), tank.id).flatMap(
    ({ by }) => numberIn(cardOf(input, "line", by ?? "")?.results["last_flow_height"]) ?? [],
  );
  const lowest = Math.min(Math.max(0, Math.min(...stops) - floor), vessel.height);
  return Math.max(0, water - volumeAt(vessel, lowest));
}

/** What the beds of some tanks need on a peak day, each once, with those tanks' own losses [m3]. */
function drawOf(input: ModelInput, stores: readonly TankAutonomy[]): number {
  const needOf = (ids: readonly string[]): number =>
    ids.reduce((sum, id) => sum + (numberIn(cardOf(input, "bed", id)?.results["peak_day_need"]) ?? 0), 0);
  const losses = stores.reduce((sum, { draw, beds }) => sum + (draw ?? 0) - needOf(beds), 0);
  return needOf([...new Set(stores.flatMap(({ beds }) => beds))]) + losses;
}

/** The day of a tank's last dip [days since 1970-01-01]. */
const dippedOn = (tank: CardView, today: number): number =>
  Math.min(today, parseIsoDate(wordIn(tank.results["dipped_on"])) ?? today);

/** Days for which what waits above serves all that hangs on it; or the first tank there that nobody dipped. */
function daysAbove(
  input: ModelInput,
  tank: CardView,
  stores: readonly TankAutonomy[],
): { readonly days: number; readonly dipped: readonly CardView[] } | { readonly unknown: CardView } {
  const ids = feedersOf(networkIn(input), tank.id).slice(1);
  const dipped: CardView[] = [];
  let water = 0;
  for (const id of ids) {
    const card = cardOf(input, "tank", id);
    const left = card ? waterAbove(input, card) : 0;
    if (card && left === null) return { unknown: card };
    if (card) dipped.push(card);
    water += left ?? 0;
  }
  if (water === 0) return { days: 0, dipped };
  return {
    dipped,
    days:
      water /
      drawOf(
        input,
        stores.filter(({ id }) => ids.includes(id)),
      ),
  };
}

/**
 * The day on which a tank's water, as it was last dipped, is used up without rain.
 *
 * @param draw what is taken of it on a peak day, over 0 [m3]
 * @param stores what all tanks serve
 */
export function lastsUntil(
  input: ModelInput,
  tank: CardView,
  draw: number,
  stores: readonly TankAutonomy[],
): Outcome {
  const today = parseIsoDate(wordOrNull(input, "site.today") ?? "");
  if (today === null) return { none: "no day given for today" };
  const own = ownWater(tank);
  if (own === null) return { none: "not dipped" };
  const above = daysAbove(input, tank, stores);
  if ("unknown" in above) return { none: `${above.unknown.title}, which fills it, is not dipped` };
  const from = Math.min(...[tank, ...above.dipped].map((one) => dippedOn(one, today)));
  const until = from + Math.floor(own / draw + above.days);
  return until < today
    ? { none: `what was dipped on ${isoDate(from)} would be used up by now: dip it again` }
    : { value: isoDate(until) };
}
