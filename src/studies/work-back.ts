// Work back: from an answer that is wished for to the values of one number that give it.

import { placeOn, roundStep, type Scale, valueAt, valuesOf } from "../units/scale.ts";

/** What is wished of an answer [SI]. */
export type Wish = { readonly sense: "at most" | "at least"; readonly target: number };

/** The answer at each value [in the scale's unit], null where there is none; values may be asked together. */
export type AnswerAt = (values: readonly number[]) => Promise<readonly (number | null)[]>;

export type WorkedBack =
  /** As it stands, the wish is met. */
  | { readonly state: "already"; readonly answer: number }
  /** No value of the scale meets it; `best` comes nearest, null where there is no answer at all. `still`: the number moves nothing. */
  | { readonly state: "never"; readonly best: Met | null; readonly still: boolean }
  /** Values from which on it is met, the nearest to the present one first. */
  | { readonly state: "found"; readonly nearest: Met; readonly others: readonly Met[] };

/** A value and the answer there. */
export type Met = { readonly value: number; readonly answer: number };

/** Values looked at before anything is said: at most so many, or each whole number if there are no more. */
const FIRST_LOOK = 33;
/** Values of the closer look that comes before "never". */
const CLOSE_LOOK = 129;
/** Whole numbers that are looked at one by one. */
const ONE_BY_ONE = 64;
/** An answer this near to its target, as a share of it, is at the edge; half of what a reader is promised. Our definition. */
const NEAR = 0.005;
/** Share of the scale under which two values are the same. */
const SAME_PLACE = 1e-6;
/** Figures of a value that is told. */
const FIGURES = 4;
/** Low points of the answer that are searched more closely before "never". */
const DIPS = 4;
const NARROWINGS = 24;
const COMBINGS = 2;

type Look = { readonly value: number; readonly answer: number | null };

/** How far past its target an answer is: nought or more where the wish is met, minus infinity without an answer. */
function slackOf({ sense, target }: Wish, answer: number | null): number {
  if (answer === null || Number.isNaN(answer)) return Number.NEGATIVE_INFINITY;
  return sense === "at most" ? target - answer : answer - target;
}

export const isMet = (wish: Wish, answer: number | null): boolean => slackOf(wish, answer) >= 0;

/** Asks each value once. */
function asking(answerAt: AnswerAt) {
  const known = new Map<number, number | null>();
  return async (values: readonly number[]): Promise<readonly Look[]> => {
    const open = [...new Set(values)].filter((value) => !known.has(value));
    const answers = open.length > 0 ? await answerAt(open) : [];
    open.forEach((value, at) => {
      known.set(value, answers[at] ?? null);
    });
    return values.map((value) => ({ value, answer: known.get(value) ?? null }));
  };
}

type Asking = ReturnType<typeof asking>;

function firstValues(scale: Scale, present: number): readonly number[] {
  const isFew = scale.whole && scale.high - scale.low < ONE_BY_ONE;
  // A scale in ratios would pass some of them over.
  const values = isFew
    ? valuesOf({ ...scale, ratio: false }, scale.high - scale.low + 1)
    : valuesOf(scale, FIRST_LOOK);
  return [...new Set([...values, present])].sort((a, b) => a - b);
}

/** The value half way between two on the scale; one of the two where there is none between. */
function between(scale: Scale, one: number, other: number): number {
  const middle = valueAt(scale, (placeOn(scale, one) + placeOn(scale, other)) / 2);
  if (!scale.whole) return middle;
  // On a scale of ratios the middle of two neighbors may round to a value outside of both.
  return Math.min(Math.max(middle, Math.min(one, other)), Math.max(one, other));
}

function areSame(scale: Scale, one: number, other: number): boolean {
  if (scale.whole) return Math.abs(one - other) <= 1;
  return Math.abs(placeOn(scale, one) - placeOn(scale, other)) <= SAME_PLACE;
}

/** One in the last figure of a value that is told. */
const lastFigure = (value: number): number => 10 ** (Math.floor(Math.log10(Math.abs(value))) - FIGURES + 1);

/** Rounded to the figures that are told, away from where the wish is not met. */
function rounded(met: number, unmet: number): number {
  if (met === 0) return 0;
  const step = lastFigure(met);
  const raw = (met > unmet ? Math.ceil(met / step) : Math.floor(met / step)) * step;
  return Number(raw.toPrecision(FIGURES + 2));
}

/**
 * Between a value that meets the wish and one that does not: the last that does, told in few figures where those hold.
 * To the end, however near the answer is already: a mean of days goes in steps, and the edge of the step is told.
 */
async function edgeOf(
  ask: Asking,
  scale: Scale,
  wish: Wish,
  { met, unmet }: { readonly met: Look; readonly unmet: Look },
): Promise<Met> {
  let [good, bad] = [met, unmet];
  while (!areSame(scale, good.value, bad.value)) {
    const middle = between(scale, good.value, bad.value);
    if (middle === good.value || middle === bad.value) break;
    const [look = bad] = await ask([middle]);
    if (isMet(wish, look.answer)) good = look;
    else bad = look;
  }
  const [told] = scale.whole ? [good] : await ask([rounded(good.value, bad.value)]);
  const edge = told && isOn(scale, told.value) && isAsNear(wish, told, good) ? told : good;
  return { value: edge.value, answer: edge.answer as number };
}

/** Whether a value in few figures meets the wish as nearly as the one found: a steep answer may move far by the rounding. */
function isAsNear(wish: Wish, told: Look, found: Look): boolean {
  const [slack, needed] = [slackOf(wish, told.answer), slackOf(wish, found.answer)];
  return slack >= 0 && (slack <= needed || slack <= 2 * Math.abs(wish.target) * NEAR);
}

const isOn = ({ low, high }: Scale, value: number): boolean => value >= low && value <= high;

/** All edges between neighbors of which one meets the wish and the other does not. */
async function edges(ask: Asking, scale: Scale, wish: Wish, looks: readonly Look[]): Promise<readonly Met[]> {
  const found: Met[] = [];
  for (let at = 1; at < looks.length; at++) {
    const [before, after] = [looks[at - 1] as Look, looks[at] as Look];
    const [was, is] = [isMet(wish, before.answer), isMet(wish, after.answer)];
    if (was === is) continue;
    found.push(
      await edgeOf(ask, scale, wish, is ? { met: after, unmet: before } : { met: before, unmet: after }),
    );
  }
  return found;
}

/** Narrows in on the best value between two neighbors of a good one, by the golden section. */
async function narrowed(ask: Asking, scale: Scale, wish: Wish, low: number, high: number): Promise<Look[]> {
  const GOLDEN = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [placeOn(scale, low), placeOn(scale, high)];
  const looks: Look[] = [];
  for (let step = 0; step < NARROWINGS && b - a > SAME_PLACE; step++) {
    const [c, d] = [b - GOLDEN * (b - a), a + GOLDEN * (b - a)];
    const pair = await ask([valueAt(scale, c), valueAt(scale, d)]);
    looks.push(...pair);
    const [left, right] = pair.map(({ answer }) => slackOf(wish, answer)) as [number, number];
    if (left >= 0 || right >= 0) return looks;
    if (left >= right) b = d;
    else a = c;
  }
  return looks;
}

/** Looks evenly between two values, then once more around the middle of the best: where an answer goes in steps, it may be better on a strip of them. */
async function combed(ask: Asking, scale: Scale, wish: Wish, low: number, high: number): Promise<Look[]> {
  let [a, b] = [placeOn(scale, low), placeOn(scale, high)];
  const looks: Look[] = [];
  for (let pass = 0; pass < COMBINGS && b > a; pass++) {
    const step = (b - a) / NARROWINGS;
    const places = Array.from({ length: NARROWINGS + 1 }, (_, at) => a + at * step);
    const found = await ask(places.map((place) => valueAt(scale, place)));
    looks.push(...found);
    const slacks = found.map(({ answer }) => slackOf(wish, answer));
    const most = Math.max(...slacks);
    if (most >= 0) break;
    const best = places.filter((_, at) => slacks[at] === most);
    const middle = ((best[0] ?? a) + (best.at(-1) ?? b)) / 2;
    [a, b] = [middle - step, middle + step];
  }
  return looks;
}

/** The values among sorted ones that come as near as their neighbors or nearer: stretches of equal ones, from the last below to the first above. */
function dipsOf(slacks: readonly number[]): readonly { readonly from: number; readonly to: number }[] {
  const dips: { readonly from: number; readonly to: number }[] = [];
  const slack = (at: number) => slacks[at] ?? Number.NEGATIVE_INFINITY;
  for (let from = 0; from < slacks.length; ) {
    let to = from;
    while (to + 1 < slacks.length && slack(to + 1) === slack(from)) to += 1;
    const isDip = slack(from) > slack(from - 1) || from === 0;
    if (isDip && slack(to) >= slack(to + 1) && slack(from) > Number.NEGATIVE_INFINITY)
      dips.push({ from, to });
    from = to + 1;
  }
  return [...dips].sort((one, other) => slack(other.from) - slack(one.from)).slice(0, DIPS);
}

/** A closer look over the whole scale, and closer still around the values that come nearest. */
async function closerLook(
  ask: Asking,
  scale: Scale,
  wish: Wish,
  looks: readonly Look[],
): Promise<readonly Look[]> {
  const all = unique(
    [...looks, ...(await ask(valuesOf(scale, CLOSE_LOOK)))].sort((a, b) => a.value - b.value),
  );
  const slacks = all.map(({ answer }) => slackOf(wish, answer));
  if (slacks.some((slack) => slack >= 0)) return all;
  const more: Look[] = [];
  for (const { from, to } of dipsOf(slacks)) {
    const [low, high] = [all[from - 1] ?? all[from], all[to + 1] ?? all[to]];
    const look = from === to && !scale.whole ? narrowed : combed;
    more.push(...(await look(ask, scale, wish, low?.value ?? scale.low, high?.value ?? scale.high)));
  }
  return unique([...all, ...more].sort((a, b) => a.value - b.value));
}

const unique = (looks: readonly Look[]): readonly Look[] =>
  looks.filter(({ value }, at) => at === 0 || value !== looks[at - 1]?.value);

function bestOf(wish: Wish, looks: readonly Look[]): Met | null {
  let best: Look | null = null;
  for (const look of looks) {
    if (look.answer !== null && (!best || slackOf(wish, look.answer) > slackOf(wish, best.answer)))
      best = look;
  }
  return best ? { value: best.value, answer: best.answer as number } : null;
}

/**
 * Values of a number at which an answer comes to meet a wish.
 *
 * Looks over the whole scale, then halves the way between neighbors of which one meets the wish and the other does not;
 * where none does, looks four times as closely, and around the best values by the golden section, or evenly where the
 * answer goes in steps. What is found was evaluated and meets the wish: a continuous answer within a percent of its
 * target; of whole numbers, the next one does not meet it.
 *
 * @param present value now, in the scale's unit
 * @validity an answer that meets the wish only between two of 129 values, without coming nearer beside them, is not seen;
 *   nor one that is the same at all of the first 33 and moves only between two of them
 */
export async function workBack(
  answerAt: AnswerAt,
  scale: Scale,
  present: number,
  wish: Wish,
): Promise<WorkedBack> {
  const ask = asking(answerAt);
  const [now] = await ask([present]);
  if (now && now.answer !== null && isMet(wish, now.answer)) return { state: "already", answer: now.answer };
  let looks = await ask(firstValues(scale, present));
  // What is the same at every first look is not moved by it: no closer look is worth its wait.
  if (looks.every(({ answer }) => answer === looks[0]?.answer))
    return { state: "never", best: bestOf(wish, looks), still: true };
  const isAnyMet = () => looks.some(({ answer }) => isMet(wish, answer));
  if (!isAnyMet()) looks = await closerLook(ask, scale, wish, looks);
  if (!isAnyMet()) return { state: "never", best: bestOf(wish, looks), still: false };
  const found = await edges(ask, scale, wish, looks);
  const away = ({ value }: Met) => Math.abs(placeOn(scale, value) - placeOn(scale, present));
  const [nearest, ...others] = [...found].sort((a, b) => away(a) - away(b));
  if (!nearest) return { state: "never", best: bestOf(wish, looks), still: false };
  return { state: "found", nearest, others };
}

/** Round values looked at on either side of the one that was found. */
const RUNGS = 2;

/** The round values next to one, itself among them where it is round. */
function rungsBeside(scale: Scale, value: number): readonly number[] {
  const beside = ([-1, 1] as const).flatMap((by) => {
    const first = roundStep(scale, value, by);
    const rungs = [roundStep(scale, first, by === 1 ? -1 : 1), first];
    while (rungs.length <= RUNGS) rungs.push(roundStep(scale, rungs.at(-1) ?? first, by));
    return rungs;
  });
  return [...new Set(beside)];
}

/**
 * What is offered in place of a value that was found: the round value of the hand's own steps next to it. It was evaluated and
 * meets the wish; where no round one beside it does, the value stays as it was found.
 */
async function roundOffer(answerAt: AnswerAt, scale: Scale, wish: Wish, found: Met): Promise<Met> {
  // Of whole numbers the least that does it is told.
  if (scale.whole) return found;
  const rungs = rungsBeside(scale, found.value);
  const answers = await answerAt(rungs);
  const away = ({ value }: Met) => Math.abs(placeOn(scale, value) - placeOn(scale, found.value));
  const met = rungs.flatMap((value, at): Met[] => {
    const answer = answers[at] ?? null;
    return answer !== null && isMet(wish, answer) ? [{ value, answer }] : [];
  });
  return met.sort((a, b) => away(a) - away(b))[0] ?? found;
}

/** The same with each value that is told in round ones; two that come to the same are told once. */
export async function inRoundValues(
  answerAt: AnswerAt,
  scale: Scale,
  wish: Wish,
  worked: WorkedBack,
): Promise<WorkedBack> {
  if (worked.state === "already") return worked;
  if (worked.state === "never") {
    const { best } = worked;
    const asGood = best && (await roundOffer(answerAt, scale, { ...wish, target: best.answer }, best));
    return { ...worked, best: asGood };
  }
  const nearest = await roundOffer(answerAt, scale, wish, worked.nearest);
  const others: Met[] = [];
  for (const other of worked.others) {
    const met = await roundOffer(answerAt, scale, wish, other);
    if (![nearest, ...others].some(({ value }) => value === met.value)) others.push(met);
  }
  return { ...worked, nearest, others };
}
