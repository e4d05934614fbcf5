// What stands under the lead: of what applies, in a fixed order, the first three.

import { feedsTank, isFilled } from "../network/feeds.ts";
import { idsOf } from "../network/network.ts";
import { driverOf } from "../network/power.ts";
import {
  type Asked,
  counted,
  networkOfSheet,
  number,
  type Piece,
  type Sentence,
  titleOf,
  value,
  withRow,
  word,
} from "./asked.ts";
import { unroofedTank } from "./lacking.ts";
import { withoutParts } from "./left-out.ts";

const MOST = 3;

const sentence = (id: string, ...pieces: readonly Piece[]): Sentence => ({ id, lead: false, pieces });

/** The card whose row is longest. */
function longest(asked: Asked, row: string): string | null {
  let best: { readonly id: string; readonly time: number } | null = null;
  for (const card of withRow(asked, row)) {
    const time = number(asked, `${card.id}.${row}`);
    if (time !== null && (!best || time > best.time)) best = { id: card.id, time };
  }
  return best?.id ?? null;
}

/** Power that nobody knows must not look like power that never runs out. */
function unknownPower(asked: Asked): Sentence | null {
  const id = "season.unmetered";
  if ((number(asked, id) ?? 0) === 0) return null;
  return sentence(
    "power_unknown",
    "The power of ",
    counted(asked, id, "trouble", "pump", { was: null }),
    " is not known, so it never runs out here",
  );
}

/** Whatever is short of its water, rain would not help. */
function unfilled(asked: Asked): Sentence | null {
  const tank = unroofedTank(asked);
  if (tank === null) return null;
  const title = titleOf(asked, tank);
  return sentence(
    "unfilled",
    isFilled(networkOfSheet(asked), tank)
      ? `No rain comes to ${title}: no roof leads to it, nor to what fills it`
      : `Nothing fills ${title}: no roof, no line and no overflow leads to it`,
  );
}

/** Where beds lead the answers, the other use that goes short most often. */
function otherUses(asked: Asked): Sentence | null {
  const network = networkOfSheet(asked);
  if (idsOf(network, "bed").length === 0) return null;
  let worst: { readonly id: string; readonly days: number } | null = null;
  for (const draw of idsOf(network, "draw")) {
    const days = number(asked, `${draw}.days_short`) ?? 0;
    if (days > (worst?.days ?? 0)) worst = { id: `${draw}.days_short`, days };
  }
  if (!worst) return null;
  return sentence(
    "other_uses",
    "Other uses go short on ",
    counted(asked, worst.id, "trouble", "day"),
    " a season",
  );
}

/** A lower tank that is not full again in time. */
function tooLate(asked: Asked): Sentence | null {
  const line = word(asked, "season.tightest_line");
  if (line === "" || (number(asked, "season.tightest_share") ?? 0) <= 1) return null;
  return sentence(
    "keeping_up",
    "A refill takes ",
    value(`${line}.refill_after_watering`, "trouble"),
    ", and beds ask again after ",
    value(`${feedsTank(networkOfSheet(asked), line)}.shortest_interval`, "growth"),
  );
}

/** Said where one tankful is not enough: the pump's time alone would promise too much. */
function waits(asked: Asked, pump: string): readonly Piece[] {
  const id = `${pump}.refill_wait`;
  return (number(asked, id) ?? 0) > 0 ? [", then waits ", value(id, "water")] : [];
}

function pumping(asked: Asked): Sentence | null {
  const pump = longest(asked, "watering_time");
  if (!pump) return null;
  return sentence(
    "watering",
    "The pump runs ",
    value(`${pump}.watering_time`, "power"),
    ...waits(asked, pump),
  );
}

/** How far a charge goes of the battery behind the pump that runs longest. */
function charge(asked: Asked): Sentence | null {
  const pump = longest(asked, "watering_time");
  const id = pump ? `${driverOf(networkOfSheet(asked), pump)}.waterings_per_charge` : "";
  if (number(asked, id) === null) return null;
  return sentence("charge", "A charge waters all its beds ", counted(asked, id, "power", "time"));
}

function byCan(asked: Asked): Sentence | null {
  const carry = longest(asked, "time_per_watering");
  if (!carry) return null;
  const weight = `${carry}.weight_per_trip`;
  return sentence(
    "by_hand",
    "By can: ",
    counted(asked, `${carry}.trips_per_watering`, "growth", "trip"),
    ...(number(asked, weight) === null ? [] : [" of ", value(weight, "plain")]),
    ", ",
    value(`${carry}.time_per_watering`, "growth"),
  );
}

/** A lower tank that is full again in time. */
function refill(asked: Asked): Sentence | null {
  const line = word(asked, "season.tightest_line");
  if (line === "" || (number(asked, "season.tightest_share") ?? 2) > 1) return null;
  return sentence("keeping_up", "The refill takes ", value(`${line}.refill_after_watering`, "water"));
}

function spills(asked: Asked): Sentence | null {
  if ((number(asked, "season.spill") ?? 0) <= 0) return null;
  return sentence("spill", "In a usual season ", value("season.spill", "water"), " spills");
}

const IN_ORDER = [
  withoutParts,
  unfilled,
  unknownPower,
  otherUses,
  tooLate,
  pumping,
  charge,
  byCan,
  refill,
  spills,
];

/** At most three, each without its full stop. */
export function further(asked: Asked): readonly Sentence[] {
  const all = IN_ORDER.flatMap((say) => say(asked) ?? []);
  return all.slice(0, MOST);
}
