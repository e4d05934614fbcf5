// What is lacking: parts that are left out, power that nobody knows, and what the beds lack most often.

import { takersOf } from "../network/beds.ts";
import { isRoofed } from "../network/feeds.ts";
import { idsOf } from "../network/network.ts";
import {
  type Asked,
  counted,
  networkOfSheet,
  number,
  type Piece,
  reasonOf,
  type Sentence,
  titleOf,
  value,
  word,
} from "./asked.ts";
import { leftOut, leftOutParts } from "./left-out.ts";
import { asDriver, lackedMost } from "./words/bounds.ts";
import { listed } from "./words/lists.ts";

/** "Barrel: its capacity is not given; Hose and Bed: Barrel is left out". */
function leftOutWords(asked: Asked): string {
  const byReason = new Map<string, string[]>();
  for (const { id, reason } of leftOutParts(asked)) {
    const title = titleOf(asked, id);
    const why = reason.replace(/\.$/, "");
    byReason.set(why, [...(byReason.get(why) ?? []), title]);
  }
  return [...byReason].map(([why, titles]) => `${listed(titles)} (${why})`).join("; ");
}

/** Said of all the answers together, since none of them knows of what is left out. */
export function without(asked: Asked): Sentence | null {
  const parts = leftOut(asked);
  if (parts === 0) return null;
  const many =
    parts === 1 ? " part is left out of these answers: " : " parts are left out of these answers: ";
  const pieces: Piece[] = [value("season.left_out", "trouble"), `${many}${leftOutWords(asked)}.`];
  return { id: "without", lead: false, pieces };
}

/** Power that nobody knows must not look like power that never runs out. */
export function powerUnknown(asked: Asked): Sentence | null {
  const pumps = number(asked, "season.unmetered") ?? 0;
  if (pumps === 0) return null;
  const pieces: Piece[] = [
    value("season.unmetered", "trouble"),
    pumps === 1
      ? " pump's power is not known: these answers take it as never running out."
      : " pumps' power is not known: these answers take it as never running out.",
  ];
  return { id: "power_unknown", lead: false, pieces };
}

/** A tank that something is watered from and that rain of no roof is to come to in any way; null: there is none. */
export function unroofedTank(asked: Asked): string | null {
  const network = networkOfSheet(asked);
  const isMeant = (id: string) => takersOf(network, id).length > 0 && !isRoofed(network, id);
  return idsOf(network, "tank").find(isMeant) ?? null;
}

/** Whether the record holds one whole year: it has a usual one, and none that is driest. */
export const isOneYear = (asked: Asked): boolean => number(asked, "weather.whole_years") === 1;

/** Which bed runs out first in the driest year, where one does. */
function shortFirst(asked: Asked): readonly Piece[] {
  if (word(asked, "season.short_first") === "") return [];
  return [
    isOneYear(asked)
      ? " The first to go short in this one year is "
      : " The first to go short in the driest year is ",
    value("season.short_first", "growth"),
    ", from ",
    value("season.short_first_day", "trouble"),
    ".",
  ];
}

export function lackedMostOften(asked: Asked): Sentence | null {
  const id = "season.binding";
  const why = reasonOf(asked.result(id));
  if (why && number(asked, "season.seasons_short") === 0) return null;
  if (why) return { id: "binding", lead: false, pieces: [`What is short most often: ${why}.`] };
  const bound = word(asked, id);
  if (!bound) return null;
  const driver = asDriver(word(asked, "season.binding_driver"));
  const unroofed = bound === "unroofed" ? unroofedTank(asked) : null;
  const said = lackedMost(bound, driver, unroofed === null ? "" : titleOf(asked, unroofed));
  const beds = number(asked, "season.days_short") ?? 0;
  if (beds === 0) return { id: "binding", lead: false, pieces: [said] };
  return {
    id: "binding",
    lead: false,
    pieces: [
      `${said} Beds are short on `,
      counted(asked, "season.days_short", "trouble", "day"),
      " of a usual season.",
      ...shortFirst(asked),
    ],
  };
}
