// What is said of a plan beside the sheet.

import type { Differing } from "../graph/differing.ts";
import { capital } from "./words/lists.ts";

const WHY = {
  gone: "gone from the sheet, its changes left out",
  another_kind: "left out, the sheet has another kind of part under its name",
  no_room: "left out, the sheet is full",
} as const;

/** What of a plan does not count, and why. */
export const leftOutSaid = ({
  title,
  why,
}: {
  readonly title: string;
  readonly why: keyof typeof WHY;
}): string => `${title}: ${WHY[why]}`;

/** Differences named one by one; the others are counted. */
const NAMED = 3;
/** Differences in a name. */
const IN_NAME = 2;

const lower = (label: string): string => label.charAt(0).toLowerCase() + label.slice(1);

/** "with Porch roof", "Two totes: each holds 500 gal"; the part is not named where the plan's name does. */
function differingSaid(one: Differing, named = ""): string {
  switch (one.what) {
    case "added":
      return `with ${one.title}`;
    case "removed":
      return `without ${one.title}`;
    case "title":
      return `${one.title} called ${one.text}`;
    default: {
      const text = one.text === "" ? (one.what === "measured" ? "not measured" : "as usual") : one.text;
      const said = `${lower(one.label)} ${one.what === "measured" ? "measured " : ""}${text}`;
      return named.includes(one.title) ? said : `${one.title}: ${said}`;
    }
  }
}

/** A part that is added brings its links with it: they are no news beside it. */
function news(all: readonly Differing[]): readonly Differing[] {
  const added = new Set(all.flatMap((one) => (one.what === "added" ? [one.title] : [])));
  const told = all.filter(({ text }) => !added.has(text));
  return told.length > 0 ? told : all;
}

/** In a name a number stands without its label: "Two totes 500 gal". */
function shortly(one: Differing): string {
  if (one.what === "added" || one.what === "removed" || one.what === "title") return differingSaid(one);
  return one.text === "" ? `${one.title} as usual` : `${one.title} ${one.text}`;
}

/** Whether the name says it all already; a bare number in it does not say of what it is. */
const isInName = (one: Differing, name: string): boolean =>
  /\p{L}/u.test(one.text) && name.toLowerCase().includes(shortly(one).toLowerCase());

/** What differs, a line each; where there are many, the rest counted. */
export function differencesSaid(all: readonly Differing[], name: string): readonly string[] {
  const told = news(all);
  // A name that speaks of one part alone need not be followed by it again.
  const named = new Set(told.map(({ title }) => title)).size === 1 ? name : "";
  const said = told
    .filter((one) => !isInName(one, name))
    .map((one) => differingSaid(one, named))
    .filter((line) => line.toLowerCase() !== name.toLowerCase());
  if (said.length <= NAMED) return said;
  return [...said.slice(0, NAMED - 1), `and ${said.length - NAMED + 1} more`];
}

/** What a plan is called before its grower calls it otherwise. */
export function planNameSaid(all: readonly Differing[]): string {
  const told = news(all);
  const name = told.slice(0, IN_NAME).map(shortly).join(", ");
  const more = told.length - IN_NAME;
  return `${capital(name)}${more > 0 ? ` and ${more} more` : ""}`;
}

/** What all parts of the sheet cost; "" where no price is known. */
export const priceSaid = (total: string | null): string => (total === null ? "" : `${total} in all`);

/**
 * What a plan costs, how much more or less than the sheet, and how much of what it adds has no price; "" where nothing is known.
 * @param total of all its parts, as shown; null where no price is known
 */
export function dearerSaid(by: number, shown: string, unpriced: number, total: string | null): string {
  const against = by === 0 ? "the same" : `${shown} ${by > 0 ? "more" : "less"}`;
  const costs = total === null ? [] : [priceSaid(total), against];
  const open = unpriced === 0 ? [] : [`${unpriced === 1 ? "one part" : `${unpriced} parts`} not priced`];
  return [...costs, ...open].join(", ");
}

/** An answer that plans are compared by, and which of two is better. */
export type Compared = {
  readonly id: string;
  readonly better: "less" | "more";
  /** What a bare count counts; or all of which it is a part. */
  readonly counts?: "day";
  readonly of?: string;
};

/** Most telling first; the first five that a place has are shown. */
const COMPARED: readonly Compared[] = [
  { id: "season.worst_season_days_short", better: "less", counts: "day" },
  { id: "season.seasons_short", better: "less", of: "season.seasons" },
  { id: "season.days_of_autonomy", better: "more" },
  { id: "season.worst_season_share_met", better: "more" },
  { id: "season.days_short", better: "less", counts: "day" },
  { id: "season.longest_short_run", better: "less", counts: "day" },
  { id: "season.got", better: "more" },
  { id: "season.spill", better: "less" },
];
const ANSWERS = 5;

/** Every quantity that may be compared, to ask for. */
export const COMPARED_IDS: readonly string[] = COMPARED.flatMap(({ id, of }) => (of ? [id, of] : [id]));

/** An answer as it is compared, with what it counts: "43 days", "13 of 20". */
export function comparedSaid({ counts }: Compared, shown: string, all: number | null): string {
  if (counts) return `${shown}\u00a0${counts}${shown === "1" ? "" : "s"}`;
  return all === null ? shown : `${shown} of ${all}`;
}

/** Which of two of an answer is better; null where neither is. */
export const betterOf = (id: string): Compared["better"] | null =>
  COMPARED.find((one) => one.id === id)?.better ?? null;

/** The five answers of a place, out of those that it has. */
export const comparedIn = (has: (id: string) => boolean): readonly Compared[] =>
  COMPARED.filter(({ id }) => has(id)).slice(0, ANSWERS);

const FEW = 1e-9;

/** The places of the best of some numbers; none where all are as good. */
export function bestOf(
  values: readonly (number | null)[],
  shown: readonly string[],
  better: Compared["better"],
): ReadonlySet<number> {
  const known = values.flatMap((value) => (value === null ? [] : [value]));
  const best = better === "less" ? Math.min(...known) : Math.max(...known);
  const at = values.flatMap((value, place) =>
    value !== null && Math.abs(value - best) <= FEW * Math.abs(best) ? [place] : [],
  );
  // What reads the same is as good.
  const text = new Set(at.map((place) => shown[place]));
  const equal = values.flatMap((value, place) => (value !== null && text.has(shown[place]) ? [place] : []));
  return equal.length === known.length ? new Set() : new Set(equal);
}
