// Water all, hold back or give up: one sentence and its reason, what each choice would lose, what it means for each bed.

import { type Advice, ALIKE, type Choice, type NoAdvice } from "../season/advice.ts";
import type { ChoiceName } from "../season/holding-choices.ts";
import { MANY_YEARS } from "../season/years-ahead.ts";
import { calendarDate } from "../units/calendar.ts";
import { dayName } from "../units/calendar-names.ts";
import { isAsAll, isSame, plentySaid, reasonOf } from "./advice-reason.ts";
import type { Show } from "./bed-day.ts";
import { listed, wholeDays } from "./words/lists.ts";

export type ToldChoice = {
  readonly choice: ChoiceName;
  readonly name: string;
  /** "lose 6 %", "30 % without rain" */
  readonly loses: string;
  /** Of the one that loses most [-]. */
  readonly bar: number;
  readonly means: string;
  readonly losesLeast: boolean;
  /** Beds that it leaves dry. */
  readonly beds: readonly string[];
};

export type ToldAdvice = {
  /** What to do, and from which bed. */
  readonly lead: { readonly what: string; readonly rest: string };
  readonly reason: string;
  /** Beds that are held back already, by a note; "" none. */
  readonly noted: string;
  /** For which way of watering its days hold, and when a bed is short by the sheet's own, for which those of other pages do. */
  readonly rule: { readonly here: string; readonly asSheet: string };
  /** What the advice comes to bed by bed, for the page that tells how long it lasts as the sheet waters. */
  readonly asAdvised: string;
  readonly head: string;
  readonly choices: readonly ToldChoice[];
  readonly rests: string;
  /** What is held back today, by a note, or if the advice is followed, or may be in a tie; null: all is watered, or nothing asks today. */
  readonly holds: { readonly beds: readonly string[]; readonly label: string } | null;
};

type TitleOf = (id: string) => string;

const HOLD = "Hold back today";

const on = (date: number): string => dayName(calendarDate(date));

/** Shares as whole percent; one place more where two that differ would read alike. */
function percents(shares: readonly number[]): readonly string[] {
  const whole = shares.map((share) => Math.round(share * 100));
  const isAlike = shares.some((share, at) =>
    shares.some(
      (other, place) => place > at && whole[at] === whole[place] && Math.abs(share - other) > ALIKE,
    ),
  );
  return shares.map((share, at) => {
    if (isAlike) return `${(share * 100).toFixed(1)} %`;
    return whole[at] === 0 && share > ALIKE ? "under 1 %" : `${whole[at]} %`;
  });
}

function nameOf({ choice, beds }: Choice, titleOf: TitleOf): string {
  if (choice === "water_all") return "Water all";
  const those = listed(beds.map(titleOf));
  return choice === "hold_back" ? `Hold back from ${those}` : `Give up ${those}`;
}

/** "Tunnel never short; Long bed short on 16 days, from Jul 24". */
function meansOf(own: Choice, titleOf: TitleOf, advice: Advice, show: Show): string {
  const { perBed, left, choice } = own;
  const { last } = advice;
  if (isAsAll(own, advice)) return "The same days as Water all";
  const beds = perBed.map(({ bed, shortDays, from }) =>
    shortDays === 0 || from === null
      ? `${titleOf(bed)} ${shortDays === 0 ? "never short" : `short on ${wholeDays(shortDays)}`}`
      : `${titleOf(bed)} short on ${wholeDays(shortDays)}, from ${on(from)}`,
  );
  const over = choice === "give_up" ? [`${show(left, "volume")} left over on ${on(last)}`] : [];
  return [...beds, ...over].join("; ");
}

type Lead = ToldAdvice["lead"];

function leadOf(advice: Advice, titleOf: TitleOf): Lead {
  const { tie, advised, choices, asking } = advice;
  const beds = listed((choices.find(({ choice }) => choice === advised)?.beds ?? []).map(titleOf));
  const isIdle = plentySaid(advice) !== "" || (tie && isSame(choices, choices.length));
  if (asking.length === 0)
    return { what: noneAsks(advice), rest: laterRest(isIdle ? "water_all" : tie ? "tie" : advised, beds) };
  const rest = advised === "hold_back" ? `from ${beds}.` : `${beds}.`;
  if (tie && isSame(choices, choices.length)) return { what: "No matter which;", rest: "water all." };
  // Of a tie what the rule does anyway.
  if (tie) {
    const what = {
      water_all: "water all.",
      hold_back: `if in doubt, hold back ${rest}`,
      give_up: `if in doubt, give up ${rest}`,
    };
    return { what: "No telling them apart;", rest: what[advised] };
  }
  if (advised === "water_all") return { what: "Water all.", rest: "" };
  return { what: advised === "hold_back" ? "Hold back" : "Give up", rest };
}

/** A bed that nothing waters may ask all the same. */
function noneAsks({ held, why, today }: Advice): string {
  if (held.length > 0) return "Nothing else asks today;";
  return why.beds.some(({ asks }) => asks?.day === today)
    ? "Nothing that can be watered asks today;"
    : "Nothing asks today;";
}

/** Of a day on which nothing asks: what to do at the next watering. */
function laterRest(advised: ChoiceName | "tie", beds: string): string {
  const next = {
    tie: "no telling what is best at the next watering.",
    water_all: "water all when they ask.",
    hold_back: `hold back from ${beds} at the next watering.`,
    give_up: `give up ${beds}.`,
  };
  return next[advised];
}

function restsOf({ kind, years }: Advice, hasForecast: boolean): string {
  const rain = hasForecast ? ", with the rain you expect" : "";
  const after = "Harvest lost by FAO-33 (from memory), stage by stage.";
  const few = years < MANY_YEARS ? ", too few to be sure," : "";
  if (kind === "odds")
    return `${years === 1 ? "1 past year" : `${years} past years`}${few} from today on${rain}. ${after}`;
  return `Made-up weather: usual days, and days without rain${rain}. ${after}`;
}

/** Made-up weather has no record. */
const triedOn = (kind: Advice["kind"]): string =>
  kind === "odds" ? "the years on record" : "the made-up years";

/** The rule that every choice goes on by. */
const thenBy = ({ kind }: Advice): string => `holding back as did best in ${triedOn(kind)}`;

/** What is done now. */
function doneBy({ choice, beds }: Choice, titleOf: TitleOf): string {
  const those = listed(beds.map(titleOf));
  if (choice === "water_all") return "Watering all";
  return choice === "hold_back" ? `Holding back from ${those}` : `Giving up ${those}`;
}

const usually = ({ kind }: Advice): string => (kind === "odds" ? " in a middling year" : " in usual weather");

function ruleOf(advice: Advice): ToldAdvice["rule"] {
  const { asSheet, today } = advice;
  const first = `a bed is first short on ${on(asSheet ?? today)}${usually(advice)}`;
  const sheet =
    asSheet === null
      ? `no bed is short before the season's end${usually(advice)}`
      : asSheet === today
        ? "a bed is short today"
        : first;
  return {
    here: `what you choose now, and after that for ${thenBy(advice)}.`,
    asSheet: sheet,
  };
}

/** "Holding back from Long bed, then ..., in usual weather: Small tunnel never short; Long bed short on 16 days, from Jul 24." */
function asAdvisedOf(advice: Advice, titleOf: TitleOf, show: Show): string {
  const own = advice.choices.find(({ choice }) => choice === advice.advised);
  if (!own) return "";
  const tie = advice.tie ? " (nothing tells the choices apart)" : "";
  return `${doneBy(own, titleOf)}${tie}, then ${thenBy(advice)},${usually(advice)}: ${meansOf(own, titleOf, advice, show)}.`;
}

const notedOf = ({ held }: Advice, titleOf: TitleOf): string =>
  held.length === 0 ? "" : `Held back today, as you noted: ${listed(held.map(titleOf))}.`;

function holdsOf(advice: Advice): ToldAdvice["holds"] {
  const { tie, advised, choices, asking, held: noted } = advice;
  if (noted.length > 0) return { beds: noted, label: HOLD };
  if (plentySaid(advice) !== "" || (tie && isSame(choices, choices.length))) return null;
  // In a tie either will do: whoever would rather keep the water holds back.
  const held = tie && advised === "water_all" ? "hold_back" : advised;
  if (held === "water_all") return null;
  const own = choices.find(({ choice }) => choice === held);
  const beds = (own?.beds ?? []).filter((bed) => asking.includes(bed));
  return beds.length === 0 ? null : { beds, label: HOLD };
}

/** The advice in words. */
export function adviceTold(advice: Advice, titleOf: TitleOf, show: Show, hasForecast: boolean): ToldAdvice {
  const { choices, tie, advised, last, kind } = advice;
  const losses = percents(choices.map(({ loss }) => loss));
  const dry = percents(choices.map(({ lossIfDry }) => lossIfDry ?? 0));
  const most = Math.max(...choices.map(({ loss, lossIfDry }) => lossIfDry ?? loss), 0);
  return {
    lead: leadOf(advice, titleOf),
    reason: reasonOf(advice, titleOf, show),
    noted: notedOf(advice, titleOf),
    rule: ruleOf(advice),
    asAdvised: asAdvisedOf(advice, titleOf, show),
    head: `Lost by ${on(last)}`,
    choices: choices.map((one, at) => ({
      choice: one.choice,
      name: nameOf(one, titleOf),
      loses: kind === "odds" ? `lose ${losses[at]}` : `${dry[at]} without rain`,
      bar: most > 0 ? (one.lossIfDry ?? one.loss) / most : 0,
      means: `${kind === "odds" ? "" : `In usual weather ${losses[at]}: `}${meansOf(one, titleOf, advice, show)}`,
      losesLeast: !tie && one.choice === advised,
      beds: one.beds,
    })),
    rests: restsOf(advice, hasForecast),
    holds: holdsOf(advice),
  };
}

/** Why nothing is advised. */
export const noAdviceSaid = ({ kind }: NoAdvice): string =>
  kind === "one_bed" ? "One bed alone has nobody to hold back for." : "Today lies outside the season.";
