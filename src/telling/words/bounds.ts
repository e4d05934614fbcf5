// The one table of what a watering can lack, with its words wherever the page says it.

import { BOUNDS, type Bound, type Driver } from "../../network/bounds.ts";

type Words = {
  /** In a list, and as the word of a choice. */
  readonly name: string;
  /** As that which gives out. */
  readonly thing: string;
  /** As an answer, after "What is short most often is". */
  readonly answer: string;
  /** Why a bed does not get its water, in the coming week and on paper. */
  readonly reason: string;
  /** Why it did not, on a day that is past. */
  readonly day: string;
};

type Said = keyof Words;

const WORDS: Readonly<Record<Exclude<Bound, "energy">, Words>> = {
  storage: {
    name: "storage",
    thing: "storage",
    answer: "storage: water spilled in the year before that a bigger tank would have kept",
    reason: "the tanks run out; water spilled earlier that a bigger one would have kept",
    day: "the water had run out, having spilled earlier",
  },
  loss: {
    name: "what leaks and dries away",
    thing: "what leaks and dries away",
    answer: "the water that tanks lose: leaks and open water took it",
    reason: "the tanks run out; leaks and open water took what is missing",
    day: "the water had run out, by leaks and open water",
  },
  rain: {
    name: "rain",
    thing: "rain",
    answer: "rain: the roofs bring too little",
    // What spilled or leaked before today nobody knows: that it did not rain is not said of it.
    reason: "the tanks run out",
    day: "the water had run out, for want of rain",
  },
  unroofed: {
    name: "water in a tank that no roof fills",
    thing: "the tank that no roof fills",
    answer: "water in a tank that no roof fills",
    reason: "a tank runs out that no roof fills",
    day: "the water had run out in a tank that no roof fills",
  },
  tankful: {
    name: "a bigger small tank",
    thing: "the small tank's size",
    answer: "a bigger small tank: even full it holds less than a day's watering",
    reason: "the small tank holds less than a day's watering, even full",
    day: "the small tank held less than the day's watering, even full",
  },
  refill: {
    name: "a faster refill",
    thing: "the small tank's refill",
    answer: "a faster refill: the small tank is not full again while water waits above it",
    reason: "the small tank is not full again in time",
    day: "the small tank was not full again",
  },
  line: {
    name: "a line that runs",
    thing: "the line that cannot run",
    answer: "a line that runs: water waits above one that cannot",
    reason: "the line that should bring the water cannot run",
    day: "the line that should bring the water cannot run",
  },
  pump_time: {
    name: "the pump's time",
    thing: "the pump's time",
    answer: "pump time: it cannot give so much in a day",
    reason: "the pump cannot give so much in the time",
    day: "the pump's time ran out",
  },
  daylight: {
    name: "daylight after the hour of watering",
    thing: "daylight after the hour of watering",
    answer: "daylight: at the hour of watering too little of it is left for a pump on a panel alone",
    reason: "too little daylight is left at the hour of watering for the panel that drives the pump",
    day: "too little daylight was left for the panel that drives the pump",
  },
  hands: {
    name: "your time",
    thing: "your time",
    answer: "your time: watering takes more of it than you have a day",
    reason: "your time is used up",
    day: "your time ran out",
  },
  held_back: {
    name: "held back for other beds",
    thing: "holding back",
    answer: "water that is not held back: it is kept for beds that come first",
    reason: "the water is held back for other beds",
    day: "water was held back for other beds",
  },
  rule: {
    name: "the bed's own rule",
    thing: "the watering rule",
    answer: "the watering rule: its days or amounts do not suffice",
    reason: "its days or amounts do not suffice",
    day: "its days or amounts did not suffice",
  },
  given_up: {
    name: "beds given up in a dry spell",
    thing: "giving beds up in a dry spell",
    answer: "a rule that goes on watering: beds are given up in a dry spell, as you set it",
    reason: "it is given up in a dry spell, as you set it",
    day: "it was given up in a dry spell, as you set it",
  },
  unwatered: {
    name: "anything that waters it",
    thing: "what should water the beds",
    answer: "something to water with: nothing waters the beds that are short",
    reason: "there is nothing to water it with",
    day: "nothing watered it",
  },
};

/** Power is said by what drives the pump, so that no battery is blamed where there is none. */
const ENERGY: Readonly<Record<Driver, Words>> = {
  battery: {
    name: "charge in the battery",
    thing: "the battery's charge",
    answer: "charge: the battery is empty",
    reason: "the battery has too little charge",
    day: "the battery was drawn down",
  },
  sun: {
    name: "sun on the panel",
    thing: "the sun on the panel",
    answer: "sun on the panel: it is too weak to run the pump for so long",
    reason: "the sun is too weak on the panel that drives the pump",
    day: "the sun was too weak on the panel that drives the pump",
  },
  either: {
    name: "power: charge, or sun on a panel alone",
    thing: "power",
    answer: "power: a battery is empty, or the sun too weak on a panel alone",
    reason: "the battery has too little charge, or the sun is too weak on a panel alone",
    day: "the battery was drawn down, or the sun too weak on a panel alone",
  },
};

/** What drives the pumps, by its word; "" and any other: not told apart. */
export const asDriver = (word: string): Driver => (word === "battery" || word === "sun" ? word : "either");

const isBound = (word: string): word is Bound => (BOUNDS as readonly string[]).includes(word);

function saidOf(bound: string, as: Said, driver: Driver): string {
  if (!isBound(bound)) return bound;
  return bound === "energy" ? ENERGY[driver][as] : WORDS[bound][as];
}

/**
 * "What is short most often is rain: the roofs bring too little."
 *
 * @param tank title of one that no roof fills, where one is; "": none is to be named
 */
export function lackedMost(bound: string, driver: Driver, tank = ""): string {
  const thing = bound === "unroofed" && tank !== "" ? `water in ${tank}, which no roof fills` : "";
  return `What is short most often is ${thing || saidOf(bound, "answer", driver)}.`;
}

/** What gives out, as the subject of a sentence. */
export const boundThing = (bound: string, driver: Driver): string => saidOf(bound, "thing", driver);

/** What it is called in a list. */
export const boundName = (bound: string, driver: Driver): string => saidOf(bound, "name", driver);

/** Titles of the tanks that are not enough, in a list: all in reach, and those that lines fill; "": none is to be named. */
export type NamedTanks = { readonly reach: string; readonly filled: string };

/** Reasons that name a tank. */
const NAMING: Partial<Record<Bound, (tanks: NamedTanks) => string>> = {
  storage: ({ reach }) =>
    reach && `too little water in ${reach}; some spilled earlier that a bigger one would have kept`,
  loss: ({ reach }) => reach && `too little water in ${reach}; leaks and open water took what is missing`,
  rain: ({ reach }) => reach && `too little water in ${reach}`,
  tankful: ({ filled }) => filled && `a watering takes more than fits in ${filled}`,
  refill: ({ filled }) => filled && `the refill of ${filled} comes too late`,
};

/** Why a bed does not get its water, its tanks named where that is known; null where nothing is known to stand in the way. */
export function whyShort(bound: string | null, driver: Driver, tanks?: NamedTanks): string {
  if (bound === null) return "there is too little";
  if (bound === "by_grower") return "you hold it back";
  if (bound === "others_first") return `others draw first on what ${tanks?.filled || "the small tank"} holds`;
  const named = tanks && isBound(bound) ? NAMING[bound]?.(tanks) : "";
  return named || saidOf(bound, "reason", driver);
}

/** The same of a day that is past. */
const NAMING_THEN: Partial<Record<Bound, (tanks: NamedTanks) => string>> = {
  storage: ({ reach }) => reach && `${reach} had run out, having spilled earlier`,
  loss: ({ reach }) => reach && `${reach} had run out, by leaks and open water`,
  rain: ({ reach }) => reach && `${reach} had run out, for want of rain`,
  unroofed: ({ reach }) => reach && `${reach} had run out, filled by no roof`,
  tankful: ({ filled }) => filled && `the watering was more than fits in ${filled}`,
  refill: ({ filled }) => filled && `the refill of ${filled} came too late`,
};

/** Why it did not get it on a day, its tanks named where that is known. */
export function whyShortThen(bound: string, driver: Driver, tanks?: NamedTanks): string {
  if (bound === "others_first") return "others drew first on what the small tank held";
  const named = tanks && isBound(bound) ? NAMING_THEN[bound]?.(tanks) : "";
  return named || saidOf(bound, "day", driver);
}

/** Of whole seasons it is known where the water went. */
const IN_SEASON: Partial<Record<Bound, string>> = {
  rain: "the tanks run out, for want of rain",
  energy: "the pump runs out of power",
};

/** Every bound as the reason why a bed goes short, where what drives its pump is told elsewhere. */
export const REASON_OPTIONS: readonly { readonly word: Bound; readonly label: string }[] = BOUNDS.map(
  (word) => ({ word, label: IN_SEASON[word] ?? saidOf(word, "reason", "either") }),
);

/** Every bound as the word of a choice, in order. */
export const BOUND_OPTIONS: readonly { readonly word: Bound; readonly label: string }[] = BOUNDS.map(
  (word) => ({ word, label: word === "energy" ? "power" : WORDS[word].name }),
);
