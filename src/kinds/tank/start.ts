// How tanks start: big ones by the roofs, small ones at the beds, asked for what they hold and how high they stand.

import { toSi } from "../../units/unit.ts";
import {
  type Ask,
  type AskedCard,
  type Known,
  type Picks,
  type Start,
  spelled,
  type Told,
} from "../asking.ts";
import { bigTanks, type LaidPart, type LaidUnits, numbered, times, type Wish, word } from "../lay-out.ts";
import { LISTED } from "./usual-tanks.ts";

/** How much higher than the small tanks the others stand until the user says: chest height, a usual slope. */
const STEP = {
  us: { value: 3, unit: "ft", from: "default" },
  metric: { value: 1, unit: "m", from: "default" },
} as const;

/** The small tanks stand on the ground that all heights are measured from. */
const ZERO = { us: { value: 0, unit: "ft" }, metric: { value: 0, unit: "m" } } as const;

/** A typed size is that of a listed tank where it is so near: tables and labels round. */
const NEAR = 0.02;

function laid(wish: Wish, system: LaidUnits): readonly LaidPart[] {
  const height = wish.hoses > 0 ? { ground_height: STEP[system] } : {};
  const isJoined = wish.joined && wish.tanks > 1;
  const as = isJoined ? { count: { value: wish.tanks, unit: "1" } } : {};
  const big = times(bigTanks(wish), (at) => ({
    key: `tank${at}`,
    title: isJoined ? "Tanks at the roof" : numbered("Tank at the roof", at),
    givens: { start_from: word("tote_275"), shape: word("box"), ...as, ...height },
    links: {},
  }));
  const small = times(wish.small, (at) => ({
    key: `small${at}`,
    title: numbered("Tank at the beds", at),
    givens: {
      start_from: word("drum_55"),
      ground_height: ZERO[system],
      outlet_height: { value: 0, unit: system === "us" ? "in" : "cm" },
    },
    links: {},
  }));
  return [...big, ...small];
}

const leads = (card: AskedCard, cards: readonly AskedCard[], by: "from" | "to"): boolean =>
  cards.some(({ givens }) => "to" in givens && givens[by]?.value === card.id);

const isFed = (card: AskedCard, cards: readonly AskedCard[]): boolean => leads(card, cards, "to");
const isOwn = ({ givens }: AskedCard): boolean =>
  givens["start_from"]?.value === "own" && givens["start_from"].from !== "default";
const isUnsaid = ({ givens }: AskedCard): boolean =>
  givens["start_from"] === undefined || givens["start_from"].from === "default";

/** A size typed: a listed tank of that size, or one of its own of which nothing but that is known. */
function ofSize(si: number): Told {
  const listed = [...LISTED].find(([, { capacity }]) => {
    const sold = toSi(capacity.value, capacity.unit);
    return Math.abs(si - sold) <= NEAR * sold;
  });
  return listed
    ? { start_from: { value: listed[0], unit: "" }, shape: null, water_height: null }
    : { start_from: { value: "own", unit: "" }, shape: { value: "other", unit: "" } };
}

/** The tables have US gallons as sold; in other units they are round. */
const sold = (show: Known["show"], si: number, units: Known["units"]): string =>
  units === "us" ? show(si, "volume", true) : show(si, "volume");

const LISTED_ONES: Picks = {
  label: "Or one that is sold",
  picks: ({ show, units }) =>
    [...LISTED].map(([value, { label, capacity }]) => ({
      label: `${sold(show, toSi(capacity.value, capacity.unit), units)} ${label.split(" ").at(-1)}`,
      told: { start_from: { value, unit: "" }, capacity: null, shape: null, water_height: null },
    })),
};

function holds({ number, show }: Known): string | null {
  const [each, count] = [number("capacity"), number("count") ?? 1];
  if (each === null) return null;
  return count > 1
    ? `Together the ${spelled(count)} hold {${show(each * count, "volume", true)}}.`
    : `It holds {${show(each, "volume", true)}}.`;
}

const CAPACITY = {
  rows: ["capacity", "start_from"],
  ask: "{title}: how much does one hold?",
  field: { row: "capacity", told: ofSize },
  picks: [LISTED_ONES],
  says: holds,
} as const satisfies Partial<Ask>;

const DEPTH = {
  rows: ["water_height"],
  ask: "{title}: how deep is the water when it is full?",
  alike: "{count} tanks alike: how deep is the water in each when it is full?",
  hint: "From the floor to where it runs over, or where the float shuts.",
  field: { row: "water_height" },
} as const satisfies Partial<Ask>;

function floor({ number, show }: Known): string | null {
  const height = number("floor_height");
  return height === null ? null : `Its floor then stands {${show(height, "height")}} above the beds.`;
}

export const start: Start = {
  counted: [
    { sort: "tanks", place: 2, label: "Tank at the roof", help: "one, or some joined", most: 6 },
    {
      sort: "small",
      place: 4,
      label: "Tank at the beds",
      help: "tub, barrel, trough",
      most: 6,
      icon: { ink: "M3 9v11h18V9", tone: "M3 13h18", color: "water" },
    },
  ],
  laid,
  asks: [
    {
      ...CAPACITY,
      place: 20,
      alike: "{count} tanks at the roof: how much does each hold?",
      hint: "It is printed on it, or on what it was sold as.",
      when: (card, cards) => !isFed(card, cards),
    },
    { ...DEPTH, place: 21, when: (card, cards) => !isFed(card, cards) && isOwn(card) },
    {
      place: 22,
      rows: ["stand_height"],
      ask: "{title}: how high is the stand?",
      hint: "From the ground up to the floor of the tank; 0 where there is none.",
      field: { row: "stand_height", unit: { us: "in", metric: "cm" } },
      when: (card, cards) => leads(card, cards, "from"),
    },
    {
      place: 24,
      rows: ["ground_height"],
      ask: "{title}: how much higher is the ground there than at the beds?",
      hint: "Sight along a level, or hold a hose full of water from one to the other.",
      field: { row: "ground_height" },
      when: (card, cards) => leads(card, cards, "from"),
      says: floor,
    },
    {
      ...CAPACITY,
      place: 40,
      alike: "{count} tanks at the beds: how much does each hold?",
      hint: "A stock tank, a barrel or a tub: it is printed on it, or on what it was sold as.",
      when: isFed,
    },
    { ...DEPTH, place: 42, when: (card, cards) => isFed(card, cards) && (isOwn(card) || isUnsaid(card)) },
  ],
};
