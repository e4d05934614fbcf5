// What an answer on top leaves out, said in its working: the share and the driest year beside the short days, how it is
// reckoned beside the full tanks, names beside what is left out.

import { tankOf } from "../network/beds.ts";
import { feedsTank } from "../network/feeds.ts";
import { idsOf } from "../network/network.ts";
import { isWholeShare } from "../units/rounding.ts";
import {
  type Asked,
  isMadeUp,
  networkOfSheet,
  number,
  type Piece,
  reasonOf,
  type Sentence,
  value,
  word,
} from "./asked.ts";
import { inDriestYear, inOneYear } from "./few-years.ts";
import { isOneYear, lackedMostOften, powerUnknown, without } from "./lacking.ts";
import { leftOut } from "./left-out.ts";

const sentence = (id: string, pieces: readonly Piece[]): Sentence => ({ id, lead: false, pieces });

/** The days of autonomy are those of the beds alone. */
function notCounted(asked: Asked): string {
  const network = networkOfSheet(asked);
  const taking = new Set(idsOf(network, "draw").filter((id) => tankOf(network, id) !== null));
  const draws = asked.cards.filter(({ id }) => taking.has(id));
  if (draws.length === 0) return "";
  return draws.length === 1 ? `, not counting ${draws[0]?.title}` : ", not counting other draws";
}

function ofFullTanks(asked: Asked): readonly Sentence[] {
  const id = "season.days_of_autonomy";
  const why = reasonOf(asked.result(id));
  const pieces: readonly Piece[] = why
    ? [`How long full tanks carry the beds cannot be said yet: ${why}.`]
    : [
        "Full tanks carry the beds for ",
        value(id, "water"),
        ` without rain, at the peak of the season${notCounted(asked)}.`,
      ];
  return [sentence("storage", pieces)];
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
    madeUp: isMadeUp(asked),
  });
}

/** How much of their thirst the beds had met in the worst season. */
function shareInWorst(asked: Asked): readonly Sentence[] {
  const id = "season.worst_season_share_met";
  const share = number(asked, id);
  // Where no season was short there is no worst one.
  if (share === null || isWholeShare(share) || isOneYear(asked)) return [];
  return [
    sentence("worst_share", [
      "In the worst season, ",
      value("season.worst_season", "plain"),
      ", beds got ",
      value(id, "trouble"),
      " of what they would have used.",
    ]),
  ];
}

function ofShortDays(asked: Asked): readonly Sentence[] {
  const year = driest(asked);
  const lacked = lackedMostOften(asked);
  return [
    ...shareInWorst(asked),
    ...(year.length > 0 ? [sentence("driest", year)] : []),
    ...(lacked ? [lacked] : []),
  ];
}

/** Whether the lower tank that is hardest pressed is full again in time. */
function keepingUp(asked: Asked): readonly Sentence[] {
  const worst = word(asked, "season.tightest_line");
  if (worst === "") return [];
  const lower = feedsTank(networkOfSheet(asked), worst);
  const title = asked.cards.find((card) => card.id === lower)?.title ?? "the lower tank";
  const late = (number(asked, "season.tightest_share") ?? 0) > 1;
  return [
    sentence("keeping_up", [
      `Refilling ${title} takes `,
      value(`${worst}.refill_after_watering`, late ? "trouble" : "water"),
      late
        ? " after the largest watering: too late, for beds ask again after "
        : " after the largest watering; beds ask again after ",
      value(`${lower}.shortest_interval`, "growth"),
      ".",
    ]),
  ];
}

const OF: Readonly<Record<string, (asked: Asked) => readonly Sentence[]>> = {
  "season.seasons_short": ofShortDays,
  "season.worst_season": ofShortDays,
  "season.worst_season_days_short": ofShortDays,
  "season.days_of_autonomy": ofFullTanks,
  "season.left_out": (asked) => [without(asked) ?? []].flat(),
  "season.unmetered": (asked) => [powerUnknown(asked) ?? []].flat(),
};

/** What its working says beside a number of the answers; nothing for most. */
export function besideAnswer(asked: Asked, id: string): readonly Sentence[] {
  if (id.endsWith(".refill_after_watering") || id.endsWith(".shortest_interval")) return keepingUp(asked);
  return OF[id]?.(asked) ?? [];
}

/** All of it, of every number of the answers, each sentence once. */
export function allBeside(asked: Asked): readonly Sentence[] {
  return [
    ...ofShortDays(asked),
    ...ofFullTanks(asked),
    ...["left_out", "unmetered"].flatMap((row) => besideAnswer(asked, `season.${row}`)),
    ...keepingUp(asked),
  ];
}
