// From the worksheet and its results to the place as it is drawn: heights, links, and the words beside each thing.

import type { Card } from "../document/worksheet.ts";
import { filledWith } from "../graph/fill.ts";
import { shownIn } from "../graph/readers.ts";
import type { Result, Value } from "../graph/types.ts";
import type { Beside, Kinds, Shape } from "../kinds/kind.ts";
import { bedsOf } from "../network/beds.ts";
import { linesInto } from "../network/feeds.ts";
import { type Network, networkHeld } from "../network/network.ts";
import { driverOf } from "../network/power.ts";
import type { Vessel } from "../physics/vessel.ts";
import type { ShowOptions } from "../units/show.ts";
import { waterWords } from "./day-water.ts";
import type { DrawnTank, Part, Place, Tone, Words } from "./place.ts";
import type { Trouble } from "./trouble.ts";

/** What the drawing asks of a worksheet. */
export type SceneInput = {
  readonly kinds: Kinds;
  readonly cards: readonly Card[];
  readonly result: (id: string) => Result | undefined;
  readonly shown: (id: string) => string;
  readonly troubles: readonly Trouble[];
  readonly options: ShowOptions;
};

const USUAL_HEIGHT = 0.8;

/** A value that is there, even an old one while a new one is worked out. */
function present(asked: SceneInput, id: string): Value {
  return shownIn(asked.result(id));
}

const number = (asked: SceneInput, id: string): number | null => {
  const value = present(asked, id);
  return typeof value === "number" ? value : null;
};

const word = (asked: SceneInput, id: string): string | null => {
  const value = present(asked, id);
  return typeof value === "string" && value !== "" ? value : null;
};

const list = (asked: SceneInput, id: string): readonly unknown[] => {
  const value = present(asked, id);
  return Array.isArray(value) ? value : [];
};

/** A line of words around one quantity; nothing while there is no such number. */
function told(asked: SceneInput, id: string, tone: Tone, say: (shown: string) => string): readonly Words[] {
  if (present(asked, id) === null) return [];
  return [{ text: say(asked.shown(id)), tone, most: 3 }];
}

const drawnAs = (asked: SceneInput, shape: Shape): readonly Card[] =>
  asked.cards.filter((card) => asked.kinds[card.kind]?.drawn?.as === shape);

function partOf(asked: SceneInput, card: Card, words: readonly Words[]): Part {
  const found = asked.troubles.find((one) => one.card === card.id);
  const trouble = found?.text ?? null;
  return {
    id: card.id,
    title: card.title,
    words: [
      { text: card.title, tone: "ink", bold: true },
      ...words,
      ...(trouble === null
        ? []
        : [{ text: trouble, tone: "trouble" as const, most: 3, whole: true as const }]),
    ],
    trouble,
    number: found?.number ?? null,
  };
}

/** "every 1 day" is every day. */
const many = (shown: string): string => shown.replace(/^1\s/, "");

/** The first figure beside a card that applies; nothing while there is no such number. */
function besideOf(asked: SceneInput, card: Card): readonly Words[] {
  const leads = (link: string): boolean => word(asked, `${card.id}.${link}`) !== null;
  const applies = ({ ifLinked, unlessLinked }: Beside): boolean =>
    (ifLinked === undefined || leads(ifLinked)) && (unlessLinked === undefined || !leads(unlessLinked));
  const beside = asked.kinds[card.kind]?.drawn?.beside?.find(applies);
  if (!beside) return [];
  return told(asked, `${card.id}.${beside.row}`, beside.tint, (shown) =>
    filledWith(beside.text, (name) => (name === "" ? shown : many(asked.shown(`${card.id}.${name}`)))),
  );
}

const networkOfSheet = (asked: SceneInput): Network => networkHeld(present(asked, "season.network"));

function vesselOf(asked: SceneInput, id: string): Vessel | null {
  const value = present(asked, id);
  return typeof value === "object" && value !== null && "form" in value ? (value as Vessel) : null;
}

function tankWords(asked: SceneInput, card: Card, vessel: Vessel | null): readonly Words[] {
  const { id } = card;
  const feeding = linesInto(networkOfSheet(asked), id)[0]?.by;
  const held = vessel && waterWords(vessel.volume, vessel.volume, asked.options);
  return [
    ...(held ? [{ text: held.long, live: held.short, tone: "water" as const }] : []),
    ...(feeding
      ? told(asked, `${feeding}.full_by`, "water", (time) => `full again by ${time.replace(" ", "\u00a0")}`)
      : told(asked, `${id}.days_of_autonomy`, "water", (days) => `from full ${days}`)),
  ];
}

function tankOf(asked: SceneInput, card: Card): DrawnTank {
  const { id } = card;
  const of = (name: string): number | null => number(asked, `${id}.${name}`);
  const vessel = vesselOf(asked, `${id}.vessel`);
  const height = vessel?.height ?? of("water_height") ?? USUAL_HEIGHT;
  const count = of("count") ?? 1;
  const across =
    of("diameter") ?? of("length") ?? (vessel ? Math.sqrt(vessel.volume / count / height) : height);
  const upright = word(asked, `${id}.shape`) === "upright_cylinder";
  return {
    ...partOf(asked, card, tankWords(asked, card, vessel)),
    ground: of("ground_height") ?? 0,
    stand: Math.max(0, of("stand_height") ?? 0),
    vessel,
    height,
    across: upright ? across : (of("length") ?? across),
    count,
    open: word(asked, `${id}.cover`) === "open",
    overflowsTo: word(asked, `${id}.overflows_to`),
    dipped: word(asked, `${id}.dip_counts`) === "asked" ? null : of("level_today"),
    startShare: of("start_share") ?? 0.5,
  };
}

function routeOf(asked: SceneInput, id: string): readonly (readonly [number, number])[] {
  return list(asked, id).flatMap((point) => {
    if (!Array.isArray(point)) return [];
    const [distance, height] = point as readonly unknown[];
    return typeof distance === "number" && typeof height === "number" ? [[distance, height] as const] : [];
  });
}

/** Of fewer days short a season a bed is hardly ever short: the drawing has no room for a part of a day. */
const LEAST_SAID = 0.5;

function bedWords(asked: SceneInput, id: string): readonly Words[] {
  const short = number(asked, `${id}.days_short`);
  if (short === null) return [];
  // Rounded where every place rounds it, and not once more: the part and the lists say the same number.
  const days = asked.shown(`${id}.days_short`);
  const unit = days === "1" ? "day" : "days";
  if (short >= LEAST_SAID)
    return [
      {
        text: `short ${days}\u00a0${unit} a season`,
        brief: `${days}\u00a0${unit}`,
        least: `${days}d`,
        tone: "trouble",
        wrong: short,
      },
    ];
  return [{ text: short > 0 ? "hardly ever short" : "never short", tone: "growth" }];
}

type Reader = {
  readonly asked: SceneInput;
  readonly of: (shape: Shape) => readonly Card[];
  readonly link: (card: Card, name: string) => string | null;
  readonly part: (card: Card) => Part;
};

function waterParts({
  asked,
  of,
  link,
  part,
}: Reader): Pick<Place, "roofs" | "tanks" | "tees" | "lines" | "draws"> {
  return {
    roofs: of("roof").map((card) => ({ ...part(card), drainsTo: link(card, "drains_to") })),
    tanks: of("tank").map((card) => tankOf(asked, card)),
    tees: of("tee").map((card) => ({ ...part(card), height: number(asked, `${card.id}.height`) ?? 0 })),
    lines: of("line").map((card) => ({
      ...part(card),
      from: link(card, "from"),
      to: link(card, "to"),
      startHeight: number(asked, `${card.id}.start_height`),
      endHeight: number(asked, `${card.id}.end_height`),
      length: number(asked, `${card.id}.length`),
      route: routeOf(asked, `${card.id}.route`),
    })),
    draws: of("draw").map((card) => ({ ...part(card), from: link(card, "from") })),
  };
}

/** Everything that can be drawn, in the order of the cards. */
export function readPlace(asked: SceneInput): Place {
  const reader: Reader = {
    asked,
    of: (shape) => drawnAs(asked, shape),
    link: (card, name) => word(asked, `${card.id}.${name}`),
    part: (card) => partOf(asked, card, besideOf(asked, card)),
  };
  const { of, link, part } = reader;
  const network = networkOfSheet(asked);
  return {
    ...waterParts(reader),
    deliveries: of("delivery").map((card) => ({
      ...part(card),
      from: link(card, "from"),
      poweredBy: driverOf(network, card.id),
      waters: of("bed").flatMap(({ id }) => (bedsOf(network, card.id).includes(id) ? [id] : [])),
    })),
    carries: of("carry").map((card) => ({ ...part(card), from: link(card, "from") })),
    batteries: of("battery").map(part),
    panels: of("panel").map((card) => ({ ...part(card), charges: link(card, "charges") })),
    beds: of("bed").map((card) => ({
      ...partOf(asked, card, bedWords(asked, card.id)),
      covered: word(asked, `${card.id}.cover`) === "covered",
    })),
    things: of("thing").map(part),
  };
}
