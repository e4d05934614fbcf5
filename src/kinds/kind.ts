// What a card kind is: one constant says everything of it that anybody asks. Whoever needs a list of kinds asks this.

import type { CardKind, CardKinds, LinkGiven, NumberGiven, Row } from "../graph/types.ts";
import type { Bound } from "../network/bounds.ts";
import type { SeasonShare } from "./season-share.ts";

/** The parts of the page, in the order in which water and power flow; within one, kinds stand as they are registered. */
const GROUPS = [
  "Sky and place",
  "Roofs",
  "Tanks",
  "Ways for the water",
  "Power",
  "Beds",
  "The season and the money",
  "Lines of your own",
] as const;

/** What they are called where there is room for a word only. */
const SHORT: Readonly<Record<(typeof GROUPS)[number], string>> = {
  "Sky and place": "Sky",
  Roofs: "Roofs",
  Tanks: "Tanks",
  "Ways for the water": "Ways",
  Power: "Power",
  Beds: "Beds",
  "The season and the money": "Money",
  "Lines of your own": "Own",
};

/** What a card is good for to others: a link row wants one of these of the card at its end. */
export type Use =
  | "holds_water"
  | "ends_a_line"
  | "carries_dirt"
  | "waters_beds"
  | "lifts_water"
  | "stores_power"
  | "gives_power";

/** A link row that says what the card at its end must be good for; its `kinds` are filled in with those that are. */
export type WantingLink = LinkGiven & { readonly wants: Use };

/** What flows: the color that stands for it. */
export type Tint = "water" | "power" | "growth";

/** Paths in a square of 24. */
export type Icon = { readonly ink: string; readonly tone?: string; readonly color?: Tint };

/** How a fresh card is joined to those that stand already; no card twice on one card. */
export type Join = "newest" | "one_before";

/** A figure beside the drawing of a card: one quantity with its words, `{}` for the quantity, `{row}` for another row. */
export type Beside = {
  readonly row: string;
  readonly tint: Tint;
  readonly text: string;
  /** Only where this link leads somewhere; or only where it does not. */
  readonly ifLinked?: string;
  readonly unlessLinked?: string;
};

/** Shapes that the drawing knows; a `thing` is a small post in the yard, for whatever has no shape of its own. */
export type Shape =
  | "roof"
  | "tank"
  | "tee"
  | "line"
  | "delivery"
  | "draw"
  | "carry"
  | "battery"
  | "panel"
  | "bed"
  | "thing";

export type Drawn = {
  readonly as: Shape;
  readonly beside?: readonly Beside[];
  /**
   * The drawing in words: `{title}`, and `{link|words}` for the title of the card at the end of a link, with the words
   * where it leads nowhere. Left out: the title alone, or what its shape says of itself.
   */
  readonly spoken?: string;
  /** Heights that a drag changes: the first that is above zero, else the last. */
  readonly heights?: readonly string[];
};

/** Rows that say how much whoever is watered gets, what its grower gives at once, how often, by what, on which days of the coming week. */
export type Watered = {
  readonly volume: string;
  readonly usual: string;
  readonly every: string;
  readonly by: string;
  readonly days: string;
};

/** The spans over which numbers are turned and tried, by row: what the trade has. */
export type Spans = Readonly<Record<string, NonNullable<NumberGiven["usual"]>>>;

/**
 * Something that can be bought for a card. `says` has `{}` for the card's title.
 * One more of what a count row counts, up to `most`; the next larger of what the trade has; the next word of a choice; a word
 * of a choice instead of another; nought in place of what is there; or a link that leads nowhere yet.
 */
export type Offer = {
  readonly name: string;
  readonly says: string;
  readonly row: string;
  readonly buys:
    | { readonly more: "one"; readonly most?: number }
    | { readonly larger: readonly number[]; readonly unit: string }
    | { readonly word: string; readonly instead_of: string }
    | "next_word"
    | "nought"
    | "link";
  /** Rows whose given or measured values were of the old one. */
  readonly forgets?: readonly string[];
};

export type Kind = CardKind & {
  readonly group: (typeof GROUPS)[number];
  readonly icon: Icon;
  readonly spans?: Spans;
  readonly uses?: readonly Use[];
  /** What a fresh one is joined to, by link row. */
  readonly joins?: Readonly<Record<string, Join>>;
  /** Rows that belong to one place: what somebody else's worksheet cannot know of yours. */
  readonly local?: readonly string[];
  /** Its sizes, and rows set or done by hand in the garden, in the order to print them. */
  readonly handSettings?: readonly string[];
  /** Words of what is noted of its cards; a word that no kind has is noted of any part. */
  readonly noted?: readonly string[];
  /** Where a flow that was timed in season is written: a bucket and its time, or a flow that was measured. */
  readonly timed?: { readonly volume: string; readonly time: string } | { readonly flow: string };
  /** What can be bought for one that stands. */
  readonly offers?: readonly Offer[];
  /** What a watering lacks that more or less of its own numbers can give. */
  readonly mends?: readonly Bound[];
  readonly watered?: Watered;
  readonly drawn?: Drawn;
  /** How it hangs together with others, and what the season takes of it. */
  readonly season?: SeasonShare;
  /** What depends on which other kinds there are. */
  readonly among?: (others: readonly Kind[]) => Pick<CardKind, "models">;
};

export type Kinds = Readonly<Record<string, Kind>>;

/** Whether it may have a price: whether it has the row for one. */
export const isPriced = (kind: CardKind): boolean =>
  kind.rows.some((row) => row.row === "given" && row.stored === "card" && row.name === "price");

/** Whether nothing stands on the sheet yet but what every worksheet has. */
export const isBare = (kinds: CardKinds, cards: readonly { readonly kind: string }[]): boolean =>
  cards.every((card) => kinds[card.kind]?.single);

/** The kinds of whose cards such a word is noted; null: of any. */
export function notedOf(kinds: Kinds, what: string): readonly Kind[] | null {
  const those = Object.values(kinds).filter(({ noted }) => noted?.includes(what));
  return those.length > 0 ? those : null;
}

/** A part of the page: its kinds in order. */
export type Group = { readonly title: string; readonly short: string; readonly kinds: readonly Kind[] };

/** The page's parts, each with its kinds in order. */
export function groupsOf(kinds: Kinds): readonly Group[] {
  return GROUPS.map((title) => ({
    title,
    short: SHORT[title],
    kinds: Object.values(kinds).filter((kind) => kind.group === title),
  }));
}

/** The kinds of which a card may be added: one that exists once is offered only where it is missing. */
export const offered = (kinds: readonly Kind[], cards: readonly { readonly id: string }[]): readonly Kind[] =>
  kinds.filter(({ single, kind }) => !single || !cards.some(({ id }) => id === kind));

const isWanting = (row: Row): row is WantingLink => row.row === "link" && "wants" in row;

function withEnds(kind: Kind, all: readonly Kind[]): readonly Row[] {
  const good = (use: Use) => all.filter(({ uses }) => uses?.includes(use)).map((other) => other.kind);
  const filled = (row: Row): Row => {
    const usual = row.row === "given" ? kind.spans?.[row.name] : undefined;
    if (usual) return { ...row, usual } as Row;
    return isWanting(row) ? { ...row, kinds: good(row.wants) } : row;
  };
  return kind.rows.map(filled);
}

/** The kinds by name, each knowing the others: where its links may lead, and what it sums up. */
export function kindsFrom(all: readonly Kind[]): Kinds {
  const known = all.map((kind) => [kind.kind, { ...kind, rows: withEnds(kind, all), ...kind.among?.(all) }]);
  // Without what every object inherits, so that a card whose kind is called "constructor" is of no known kind.
  return Object.assign(Object.create(null), Object.fromEntries(known));
}
