// The answers at the top of the page, as sentences with the numbers in them, each leading to its card.

import { isReady } from "../graph/readers.ts";
import { tankOf } from "../network/beds.ts";
import { idsOf } from "../network/network.ts";
import { driverOf } from "../network/power.ts";
import { feedsTank } from "../network/water.ts";
import {
  type Asked,
  networkOfSheet,
  number,
  type Piece,
  reasonOf,
  type Sentence,
  value,
  withRow,
  word,
} from "./asked.ts";
import { inDriestYear, inOneYear } from "./few-years.ts";
import { isOneYear, lackedMostOften, leftOut, otherUses, powerUnknown, without } from "./lacking.ts";

function storage(asked: Asked): Sentence {
  const id = "season.days_of_autonomy";
  const why = reasonOf(asked.result(id));
  const pieces: Piece[] = why
    ? [`How long full tanks carry the beds cannot be said yet: ${why}.`]
    : [
        "Full tanks carry the beds for ",
        value(id, "water"),
        ` without rain, at the peak of the season${besides(asked)}.`,
      ];
  return { id: "storage", lead: true, pieces: [...pieces, ...driest(asked)], watch: id };
}

/** The days of autonomy are those of the beds alone. */
function besides(asked: Asked): string {
  const network = networkOfSheet(asked);
  const taking = new Set(idsOf(network, "draw").filter((id) => tankOf(network, id) !== null));
  const draws = asked.cards.filter(({ id }) => taking.has(id));
  if (draws.length === 0) return "";
  return draws.length === 1 ? `, not counting ${draws[0]?.title}` : ", not counting other draws";
}

/** What the driest year says of the beds, or the only one. */
function driest(asked: Asked): readonly Piece[] {
  const parts = leftOut(asked);
  const short = number(asked, "season.days_short");
  if (isOneYear(asked)) return inOneYear({ short, share: number(asked, "season.share_met"), leftOut: parts });
  if (reasonOf(asked.result("season.driest_year_days_short"))) return [];
  return inDriestYear({
    years: number(asked, "weather.whole_years"),
    short: number(asked, "season.driest_year_days_short"),
    share: number(asked, "season.driest_year_share_met"),
    usual: short ?? 0,
    leftOut: parts,
  });
}

function longest(asked: Asked, row: string): string | null {
  let best: { readonly id: string; readonly time: number } | null = null;
  for (const card of withRow(asked, row)) {
    const time = number(asked, `${card.id}.${row}`);
    if (time !== null && (!best || time > best.time)) best = { id: card.id, time };
  }
  return best?.id ?? null;
}

/** How far a charge of the battery behind this pump goes. */
function charge(asked: Asked, pump: string): readonly Piece[] {
  const id = `${driverOf(networkOfSheet(asked), pump)}.waterings_per_charge`;
  if (number(asked, id) === null) return ["."];
  return [", and a charge waters all beds on its battery ", value(id, "power"), " times."];
}

/** Said where one tankful is not enough: the pump's time alone would promise too much. */
function waiting(asked: Asked, pump: string): readonly Piece[] {
  const id = `${pump}.refill_wait`;
  if ((number(asked, id) ?? 0) <= 0) return [];
  return [", and waits ", value(id, "water"), " for its tank to fill again"];
}

function watering(asked: Asked): Sentence | null {
  const pump = longest(asked, "watering_time");
  if (pump) {
    const watch = `${pump}.watering_time`;
    return {
      id: "watering",
      lead: false,
      watch,
      pieces: [
        "The longest watering takes the pump ",
        value(watch, "power"),
        ...waiting(asked, pump),
        ...charge(asked, pump),
      ],
    };
  }
  const untimed = withRow(asked, "watering_time")[0];
  if (!untimed) return null;
  const why = reasonOf(asked.result(`${untimed.id}.watering_time`)) ?? "its flow is not known";
  return {
    id: "watering",
    lead: false,
    watch: `${untimed.id}.watering_time`,
    pieces: [`How long the pump takes cannot be said yet: ${why}.`],
  };
}

function byHand(asked: Asked): Sentence | null {
  const carry = longest(asked, "time_per_watering");
  if (!carry) return null;
  const watch = `${carry}.time_per_watering`;
  return {
    id: "by_hand",
    lead: false,
    watch,
    pieces: [
      "By can the largest watering is ",
      value(`${carry}.trips_per_watering`, "growth"),
      " trips of ",
      value(`${carry}.weight_per_trip`, "trouble"),
      ", ",
      value(watch, "growth"),
      " in all.",
    ],
  };
}

function keepingUp(asked: Asked): Sentence | null {
  const lines = withRow(asked, "refill_time");
  if (lines.length === 0) return null;
  const worst = word(asked, "season.tightest_line");
  if (!worst) {
    const first = lines[0];
    const why =
      reasonOf(asked.result(`${first?.id}.refill_time`)) ?? reasonOf(asked.result("season.tightest_refill"));
    return {
      id: "keeping_up",
      lead: false,
      watch: `${first?.id}.refill_time`,
      pieces: [`${first?.title}: ${why ?? "nothing waits for it"}.`],
    };
  }
  const lower = feedsTank(networkOfSheet(asked), worst);
  const title = asked.cards.find((card) => card.id === lower)?.title ?? "The lower tank";
  const share = number(asked, "season.tightest_share") ?? 0;
  const watch = `${worst}.refill_after_watering`;
  return {
    id: "keeping_up",
    lead: false,
    watch,
    pieces: [
      `${title} is full again `,
      value(watch, share > 1 ? "trouble" : "water"),
      share > 1
        ? " after its largest watering: too late, for its beds ask again after "
        : " after its largest watering; its beds ask again after ",
      value(`${lower}.shortest_interval`, "growth"),
      ".",
    ],
  };
}

/** Whether nothing stands on the sheet that catches, holds, moves or drinks water, or drives what does. */
const isEmpty = (asked: Asked): boolean =>
  isReady(asked.result("season.network")) &&
  networkOfSheet(asked).nodes.length === 0 &&
  withRow(asked, "refill_time").length === 0;

/** The sentences of a worksheet; the first leads. */
export function answers(asked: Asked): readonly Sentence[] {
  if (isEmpty(asked)) {
    const why = reasonOf(asked.result("weather.mean_yearly_rain"));
    if (why) {
      const pieces = [`What the sky brings cannot be said: ${why}.`];
      return [{ id: "empty", lead: true, watch: "weather.mean_yearly_rain", pieces }];
    }
    return [
      {
        id: "empty",
        lead: true,
        watch: "weather.mean_yearly_rain",
        pieces: [
          word(asked, "weather.record_kind").startsWith("made up")
            ? "Until you bring in your own rain, a usual year is taken to bring "
            : "A usual year brings ",
          value("weather.mean_yearly_rain", "water"),
          " of rain. Add a roof, a tank and a bed to see what it can carry.",
        ],
      },
    ];
  }
  const all = [
    storage(asked),
    without(asked),
    powerUnknown(asked),
    watering(asked),
    byHand(asked),
    keepingUp(asked),
    otherUses(asked),
    lackedMostOften(asked),
  ];
  return all.filter((sentence) => sentence !== null);
}
