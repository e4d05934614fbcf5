// The reason of an advice: what speaks for it by its numbers, and whether anything does.

import { type Advice, ALIKE, type Choice, isPlenty, PLENTY } from "../season/advice.ts";
import type { Show } from "./bed-day.ts";
import { listed, wholeDays } from "./words/lists.ts";

type TitleOf = (id: string) => string;

/** What a choice loses: on the mean, or in a usual run and in a dry one. */
const lossesOf = ({ loss, lossIfDry }: Choice): readonly number[] =>
  lossIfDry === null ? [loss] : [loss, lossIfDry];

const allOf = ({ choices }: Advice): Choice | undefined =>
  choices.find(({ choice }) => choice === "water_all");

/** What a choice loses less than watering all. */
function gainsOf(own: Choice, advice: Advice): readonly number[] {
  const all = allOf(advice);
  const saved = lossesOf(own);
  return all ? lossesOf(all).map((loss, at) => loss - (saved[at] as number)) : [];
}

/** Whether a choice comes to the very same as watering all, in all that is told of it. */
export function isAsAll(own: Choice, advice: Advice): boolean {
  const all = allOf(advice);
  if (!all || own === all || gainsOf(own, advice).some((gain) => Math.abs(gain) > ALIKE)) return false;
  return own.perBed.every(({ shortDays, from }, at) => {
    const other = all.perBed[at];
    return other !== undefined && other.shortDays === shortDays && other.from === from;
  });
}

const waits = (spare: number | null): string => (spare === null ? "to the season's end" : wholeDays(spare));

function spareOf({ why }: Advice, bed: string | null): number | null {
  return why.beds.find((one) => one.bed === bed)?.spare ?? null;
}

function paysMost({ why }: Advice, titleOf: TitleOf, show: Show): string {
  const best = why.beds.find(({ bed }) => bed === why.pays);
  if (!best?.asks || why.pays === why.held) return "";
  return `; ${titleOf(best.bed)} pays most for the next ${show(best.asks.volume, "volume")}`;
}

/** Whether so many that lose least lose the same, in all that is told of them. */
export function isSame(choices: readonly Choice[], count: number): boolean {
  const [first, ...others] = [...choices].sort((a, b) => a.loss - b.loss).slice(0, count);
  if (!first) return false;
  return others.every(
    ({ loss, lossIfDry }) =>
      Math.abs(loss - first.loss) <= ALIKE && Math.abs((lossIfDry ?? 0) - (first.lossIfDry ?? 0)) <= ALIKE,
  );
}

/** "There is plenty: watering all loses under 1 % of what the beds are worth."; "" where there is not, or it is not advised. */
export function plentySaid(advice: Advice): string {
  const all = allOf(advice);
  if (!all || advice.advised !== "water_all") return "";
  const gains = advice.choices.flatMap((one) => gainsOf(one, advice));
  if (!isPlenty(lossesOf(all), gains)) return "";
  const by = advice.kind === "odds" ? ", by the past years" : " in usual weather";
  const loses = all.loss < ALIKE ? "nothing" : "under 1 %";
  return `There is plenty: watering all loses ${loses} of what the beds are worth${by}.`;
}

/** Of a gain that is small by itself: how small, and why it is advised all the same; "" of any other. */
function smallSaid(advice: Advice): string {
  const own = advice.choices.find(({ choice }) => choice === advice.advised);
  const gains = own ? gainsOf(own, advice) : [];
  const most = Math.max(0, ...gains);
  if (advice.tie || advice.advised === "water_all" || most >= PLENTY) return "";
  const saves = `saves only ${(most * 100).toFixed(1)} % of what the beds are worth`;
  return own?.choice === "give_up" ? ` It ${saves}.` : ` This once it ${saves}, but waterings are many.`;
}

export function reasonOf(advice: Advice, titleOf: TitleOf, show: Show): string {
  return plentySaid(advice) || `${whySaid(advice, titleOf, show)}${smallSaid(advice)}`;
}

/** Why nothing tells the choices apart. */
function tieSaid({ choices, kind }: Advice): string {
  if (isSame(choices, choices.length))
    return `${choices.length === 2 ? "Both" : "All of them"} lose the same: what is done today makes no difference to the beds.`;
  if (isSame(choices, 2)) return "The best two lose the same, so nothing speaks for one of them.";
  return kind === "odds"
    ? "The best two lose about the same, or it would turn if one bed were worth half or twice as much to you."
    : "Which loses least hangs on the rain, or would turn if one bed were worth half or twice as much to you.";
}

function whySaid(advice: Advice, titleOf: TitleOf, show: Show): string {
  const { advised, choices, tie } = advice;
  if (tie) return tieSaid(advice);
  const own = choices.find(({ choice }) => choice === advised);
  const held = choices.find(({ choice }) => choice === "hold_back");
  const bed = held?.beds.at(-1) ?? null;
  if (advised === "hold_back" && bed !== null) {
    const spare = spareOf(advice, bed);
    const can =
      spare === 0
        ? `${titleOf(bed)} holds back growth from today on, but its water saves more elsewhere or later`
        : `${titleOf(bed)} can wait: ${waits(spare)} in its soil`;
    return `${can}${paysMost(advice, titleOf, show)}.`;
  }
  if (advised === "give_up" && own)
    return `There is too little for all: what ${listed(own.beds.map(titleOf))} would get, the others are worth more with.`;
  return bed === null ? "" : `Held back, ${titleOf(bed)} loses more than the others gain.`;
}
