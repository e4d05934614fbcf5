// The answers at the top of the page, as sentences with the numbers in them, each leading to its card.

import { numberIn, shownIn, wordIn } from "../graph/readers.ts";
import type { Result } from "../graph/types.ts";
import { tankOf } from "../network/beds.ts";
import { idsOf, type Network, networkHeld } from "../network/network.ts";
import { driverOf } from "../network/power.ts";
import { feedsTank } from "../network/water.ts";

export type Tone = "water" | "power" | "growth" | "trouble";

export type Piece = string | { readonly quantity: string; readonly tone: Tone };

export type Sentence = {
  readonly id: string;
  readonly lead: boolean;
  readonly pieces: readonly Piece[];
  /** Quantity whose movement is shown beside the sentence. */
  readonly watch: string;
};

/** What a sentence may ask of the worksheet. */
export type Asked = {
  readonly result: (id: string) => Result | undefined;
  readonly cards: readonly { readonly id: string; readonly kind: string; readonly title: string }[];
};

const number = (asked: Asked, id: string): number | null => numberIn(asked.result(id));

const networkOfSheet = (asked: Asked): Network => networkHeld(shownIn(asked.result("season.network")));

const word = (asked: Asked, id: string): string => wordIn(asked.result(id));

/** A number in a sentence; where there is none, the sentence gives the reason instead. */
function value(quantity: string, tone: Tone): Piece {
  return { quantity, tone };
}

function reasonOf(result: Result | undefined): string | null {
  if (!result) return "one of the worksheet's four fixed cards is missing";
  if (result.state === "none") return result.reason;
  if (result.state === "failed") return "a number it needs is wrong, as said below";
  return null;
}

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

const leftOut = (asked: Asked): number => number(asked, "season.left_out") ?? 0;

/** Said of all the answers together, since none of them knows of what is left out. */
function without(asked: Asked): Sentence | null {
  const parts = leftOut(asked);
  if (parts === 0) return null;
  const pieces: Piece[] = [
    value("season.left_out", "trouble"),
    parts === 1
      ? " part is left out, because a number of it is missing or wrong: these answers are without it."
      : " parts are left out, because a number of theirs is missing or wrong: these answers are without them.",
  ];
  return { id: "without", lead: false, watch: "season.left_out", pieces };
}

/** Power that nobody knows must not look like power that never runs out. */
function powerUnknown(asked: Asked): Sentence | null {
  const pumps = number(asked, "season.unmetered") ?? 0;
  if (pumps === 0) return null;
  const pieces: Piece[] = [
    value("season.unmetered", "trouble"),
    pumps === 1
      ? " pump's power is not known: these answers take it as never running out."
      : " pumps' power is not known: these answers take it as never running out.",
  ];
  return { id: "power_unknown", lead: false, watch: "season.unmetered", pieces };
}

function driest(asked: Asked): readonly Piece[] {
  const short = number(asked, "season.driest_year_days_short");
  const why = reasonOf(asked.result("season.driest_year_days_short"));
  if (why) return [];
  const year: Piece = value("weather.driest_year", "water");
  const usual = number(asked, "season.days_short") ?? 0;
  if (short === 0 && usual > 0) {
    return [" In the driest year on record, ", year, ", no bed went short, but in others some did."];
  }
  const which = leftOut(asked) > 0 ? "none of the beds that could be worked out" : "no bed";
  if (short === 0) return [" In the driest year on record, ", year, `, ${which} went short.`];
  return [
    " In the driest year on record, ",
    year,
    ", beds went short on ",
    value("season.driest_year_days_short", "trouble"),
    " days and got ",
    value("season.driest_year_share_met", "trouble"),
    " of what they would have used.",
  ];
}

/** Which bed runs out first in the driest year, where one does. */
function shortFirst(asked: Asked): readonly Piece[] {
  if (word(asked, "season.short_first") === "") return [];
  return [
    " In the driest year ",
    value("season.short_first", "growth"),
    " was short first, from ",
    value("season.short_first_day", "trouble"),
    ".",
  ];
}

function longest(asked: Asked, kind: string, row: string): string | null {
  let best: { readonly id: string; readonly time: number } | null = null;
  for (const card of asked.cards) {
    if (card.kind !== kind) continue;
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
  const pump = longest(asked, "delivery", "watering_time");
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
  const untimed = asked.cards.find((card) => card.kind === "delivery");
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
  const carry = longest(asked, "carry", "time_per_watering");
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
  const lines = asked.cards.filter((card) => card.kind === "line");
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

const BINDING: Readonly<Record<string, string>> = {
  rain: "Rain gives out first: the roofs bring too little.",
  storage: "Storage gives out first: water spilled earlier that a bigger tank would have kept.",
  transfer:
    "The small tank gives out first: it ran dry while the one above it still had water. A bigger small tank, or a faster line, helps.",
  pump_time: "The pump gives out first: it cannot give so much in the time.",
  energy: "Power gives out first: the battery is flat, or the sun too weak on a panel alone.",
  hands: "Your time gives out first.",
  held_back: "What some beds lack is held back for the beds that come before them.",
};

function givesOut(asked: Asked): Sentence | null {
  const id = "season.binding";
  const why = reasonOf(asked.result(id));
  if (why) return { id: "binding", lead: false, watch: id, pieces: [`What gives out first: ${why}.`] };
  const bound = word(asked, id);
  if (!bound) return null;
  return {
    id: "binding",
    lead: false,
    watch: "season.days_short",
    pieces: [
      `${BINDING[bound] ?? bound} Beds are short on `,
      value("season.days_short", "trouble"),
      " days of a usual season.",
      ...shortFirst(asked),
    ],
  };
}

/** The sentences of a worksheet; the first leads. */
export function answers(asked: Asked): readonly Sentence[] {
  if (asked.cards.every((card) => ["site", "weather", "season", "cost", "own"].includes(card.kind))) {
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
    givesOut(asked),
  ];
  return all.filter((sentence) => sentence !== null);
}
