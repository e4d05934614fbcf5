// The sentence that leads: in how many seasons beds go short, how badly in the worst, and how long full tanks last.
// It names no part; shares and the driest year stand in its working.

import { idsOf } from "../network/network.ts";
import {
  type Asked,
  counted,
  isMadeUp,
  isSaid,
  networkOfSheet,
  number,
  type Piece,
  type Sentence,
  value,
} from "./asked.ts";
import { withoutOthers } from "./left-out.ts";
import { withinLine } from "./words/lists.ts";

/** How much room a sentence has. */
export type Room = {
  /** Where a number carries what it was, or a phone is in the hand: "Short in ...". */
  readonly short?: boolean;
  /** Before all of the worksheet is worked out: nothing stands under the lead yet. */
  readonly alone?: boolean;
  /** Where one line more would be too many: "without rain" goes. */
  readonly brief?: boolean;
  /** The season that was named last, while a number moves: the sentence keeps its words, whatever its numbers come to. */
  readonly steady?: string | undefined;
};

const SHORT = "season.seasons_short";
const SEASONS = "season.seasons";
const WORST = "season.worst_season_days_short";
/** Names the worst season in the sentence. */
export const WORST_YEAR = "season.worst_season";
const FULL = "season.days_of_autonomy";

const begins = (room: Room, long: string, short: string): string => (room.short ? short : long);

/** "7 of 20 seasons; in the worst, 2009, on 8 days." */
function inSome(asked: Asked, seasons: number, room: Room, made: string): readonly Piece[] {
  const short = number(asked, SHORT) ?? 0;
  const days = counted(asked, WORST, "trouble", "day");
  const { steady } = room;
  const year = value(
    WORST_YEAR,
    "plain",
    steady === undefined ? {} : { text: steady, soft: true, was: null },
  );
  const of = value(SHORT, "trouble", { after: ` of ${seasons}`, whole: SEASONS });
  const head = [begins(room, "Beds go short in ", "Short in "), of, ` ${made}seasons`];
  // Which season is the worst, and that there is one, is not sure either.
  if (asked.isSpan?.(SHORT) || asked.isSpan?.(WORST)) return [...head, "; in the worst on ", days, "."];
  return short === 1 && steady === undefined
    ? [...head, ": ", year, ", on ", days, "."]
    : [...head, "; in the worst, ", year, ", on ", days, "."];
}

/** A record of one whole season has neither a worst nor others. */
function inOne(asked: Asked, room: Room, made: string): readonly Piece[] {
  if (number(asked, SHORT) === 0 && !asked.isSpan?.(WORST))
    return [
      begins(room, "Beds ", ""),
      value(WORST, "growth", { text: room.short ? "Never" : "never", was: "short on" }),
      begins(room, " go short", " short"),
      ` in this one ${made}year.`,
    ];
  return [
    begins(room, "Beds go short on ", "Short on "),
    counted(asked, WORST, "trouble", "day"),
    ` in this one ${made}year.`,
  ];
}

/** While the season has never been run each number keeps its place. */
function waiting(room: Room): readonly Piece[] {
  return [
    begins(room, "Beds go short in ", "Short in "),
    value(SHORT, "plain"),
    " seasons; in the worst on ",
    value(WORST, "plain", { after: " days" }),
    ".",
  ];
}

function ofBeds(asked: Asked, room: Room): readonly Piece[] {
  const [seasons, short] = [number(asked, SEASONS), number(asked, SHORT)];
  if (seasons === null || short === null) return waiting(room);
  const made = isMadeUp(asked) ? "made-up " : "";
  if (seasons === 1) return inOne(asked, room, made);
  if (short > 0 || room.steady !== undefined || asked.isSpan?.(SHORT))
    return inSome(asked, seasons, room, made);
  return [
    begins(room, "Beds never go short in ", "Never short in "),
    value(SHORT, "growth", { text: String(seasons), was: "short in", whole: SEASONS }),
    ` ${made}seasons.`,
  ];
}

/** "Full tanks last 43 days without rain." Nothing where no tank serves a bed. */
export function fullTanks(asked: Asked, room: Room): readonly Piece[] {
  if (!isSaid(asked, FULL)) return [];
  return ["Full tanks last ", value(FULL, "water"), room.brief ? "." : " without rain."];
}

/** What animals and other uses draw, where no bed is watered. */
function ofDraws(asked: Asked): readonly Piece[] {
  const id = "season.longest_short_run";
  const where = isMadeUp(asked) ? "in made-up weather" : "on your record";
  if (number(asked, id) === 0 && !asked.isSpan?.(id))
    return [
      "What is drawn from the tanks ",
      value(id, "growth", { text: "never", was: "short on" }),
      ` ran short ${where}.`,
    ];
  return [
    "What is drawn from the tanks ran short for up to ",
    counted(asked, id, "trouble", "day"),
    ` on end ${where}.`,
  ];
}

/** What holds without some parts: the same words behind a comma. */
function behind(without: string, pieces: readonly Piece[]): readonly Piece[] {
  const small = (text: string, at: number): string => (at === 0 ? withinLine(text) : text);
  const said = pieces.filter((piece) => piece !== "");
  return [
    without,
    ...said.map((piece, at): Piece => {
      if (typeof piece === "string") return small(piece, at);
      return piece.text ? { ...piece, text: small(piece.text, at) } : piece;
    }),
  ];
}

/** The lead of a place in which water comes to something. */
export function leadOf(asked: Asked, room: Room): Sentence {
  const network = networkOfSheet(asked);
  const hasBeds = idsOf(network, "bed").length > 0;
  const drawsOnly = !hasBeds && idsOf(network, "draw").length > 0;
  const first = drawsOnly ? ofDraws(asked) : ofBeds(asked, room);
  const then = hasBeds ? fullTanks(asked, room) : [];
  const said = then.length > 0 ? [...first, " ", ...then] : first;
  const without = withoutOthers(asked);
  return { id: "lead", lead: true, pieces: without === "" ? said : behind(without, said) };
}
