// What a finished run says: means over whole seasons and years, worst days, and what bound it.

import { errorShare } from "./account.ts";
import type {
  BatteryAnswer,
  BedAnswer,
  DrawAnswer,
  LineAnswer,
  RoofAnswer,
  SeasonAnswer,
  SourceAnswer,
  TankAnswer,
} from "./answer.ts";
import { type Autonomy, lasting, runAutonomy } from "./autonomy.ts";
import type { ChargeBook } from "./batteries.ts";
import { needs } from "./bed-need.ts";
import { bedSeasons } from "./bed-seasons.ts";
import type { Bed } from "./beds.ts";
import type { TankPart } from "./input.ts";
import { noFailureStorage } from "./no-failure.ts";
import { quantileOf } from "./quantile.ts";
import type { Source } from "./sources.ts";
import { type Span, sumOver, totalOf } from "./spans.ts";
import type { SeasonState } from "./state.ts";
import { meanOf, sumOfAll, sumOfWhole, type Tally } from "./tally.ts";
import { levelOf } from "./tanks.ts";
import { bindingOf, sumOfSeasons, totalsOf } from "./totals.ts";

/**
 * The answer of a finished run.
 *
 * @param state the run after its last day
 */
export function summaryOf(state: SeasonState): SeasonAnswer {
  const { ledger } = state;
  const autonomy = runAutonomy(state);
  const throughWater = Math.max(ledger.waterIn, ledger.waterOut) + Math.abs(ledger.waterAtStart);
  const throughEnergy = Math.max(ledger.energyIn, ledger.energyOut) + ledger.energyAtStart;
  return {
    firstDay: state.record.firstDay,
    totals: totalsOf(state, autonomy, {
      water: errorShare(ledger.waterError, throughWater),
      energy: errorShare(ledger.energyError, throughEnergy),
    }),
    noFailure: noFailureStorage(state),
    leftOut: [...state.leftOut].sort((a, b) => (a.id < b.id ? -1 : 1)),
    roofs: state.caught.map((roof) => roofAnswer(state, roof)),
    tanks: state.tanks.parts.map((part, place) => tankAnswer(state, autonomy, part, place)),
    lines: state.pipes.lines.map(({ id }, place) => lineAnswer(state, id, place)),
    draws: state.draws.map(drawAnswer),
    deliveries: state.sources
      .filter(({ roundVolume }) => roundVolume === 0)
      .map((source) => sourceAnswer(source, state.seasons)),
    carries: state.sources
      .filter(({ roundVolume }) => roundVolume > 0)
      .map((source) => sourceAnswer(source, state.seasons)),
    batteries: state.batteries.parts.map((part, place) => batteryAnswer(state, part.id, place)),
    beds: [...state.beds]
      .sort((a, b) => (a.part.id < b.part.id ? -1 : 1))
      .map((bed) => bedAnswer(bed, state)),
    storedTotal: state.storedTotal,
    shortDay: state.shortDay,
  };
}

function roofAnswer(state: SeasonState, { id, volume }: SeasonState["caught"][number]): RoofAnswer {
  const yearly = state.years.map((year) => sumOver(volume, year));
  return {
    id,
    caught: totalOf(volume),
    meanYearly: yearly.length > 0 ? yearly.reduce((sum, amount) => sum + amount, 0) / yearly.length : null,
  };
}

function tankAnswer(state: SeasonState, autonomy: Autonomy, part: TankPart, place: number): TankAnswer {
  const stored = state.stored[place] as Float64Array;
  let lowest = 0;
  for (let day = 1; day < stored.length; day++) {
    if ((stored[day] as number) < (stored[lowest] as number)) lowest = day;
  }
  const store = autonomy.tanks[place] ?? { reachable: 0, draw: null };
  state.tanks.volume[place] = stored[lowest] as number;
  const lowestLevel = levelOf(state.tanks, place);
  state.tanks.volume[place] = stored[stored.length - 1] as number;
  const spill = state.spill[place];
  return {
    id: part.id,
    meanYearlySpill: spill ? meanOf(spill.years) : null,
    spilled: spill ? sumOfAll(spill) : 0,
    passedOn: state.passedOn[place] as number,
    lowestLevel,
    lowestDate: state.record.firstDay + lowest,
    reachable: store.reachable,
    daysOfAutonomy: lasting(store),
    evaporated: state.evaporated[place] as number,
    leaked: state.leaked[place] as number,
    stored,
  };
}

function lineAnswer(state: SeasonState, id: string, place: number): LineAnswer {
  const tally = state.lineMoved[place] as Tally;
  const ran = (state.lineRan[place] as Float64Array).filter((time) => time > 0).sort();
  return {
    id,
    movedYearly: meanOf(tally.years),
    moved: sumOfAll(tally),
    usualRun: ran.length > 0 ? quantileOf(ran, 0.5) : null,
    longestRun: ran[ran.length - 1] ?? null,
  };
}

function drawAnswer(draw: SeasonState["draws"][number]): DrawAnswer {
  const due = sumOfWhole(draw.due.seasons);
  return {
    id: draw.id,
    seasonVolume: meanOf(draw.given.seasons) ?? 0,
    shareMet: due > 0 ? sumOfWhole(draw.given.seasons) / due : null,
    daysShort: meanOf(draw.daysShort.seasons) ?? 0,
    given: sumOfAll(draw.given),
    daysMet: draw.daysMet.count,
  };
}

function sourceAnswer(source: Source, seasons: readonly Span[]): SourceAnswer {
  return {
    id: source.id,
    seasonVolume: meanOf(source.volume.seasons) ?? 0,
    seasonTime: meanOf(source.time.seasons) ?? 0,
    seasonHands: meanOf(source.hands.seasons) ?? 0,
    seasonTrips: meanOf(source.trips.seasons) ?? 0,
    seasonEnergy: meanOf(source.energy.seasons) ?? 0,
    seasons: seasons.map(({ year }, place) => ({
      year,
      volume: source.volume.seasons[place] as number,
      time: source.time.seasons[place] as number,
      hands: source.hands.seasons[place] as number,
      trips: source.trips.seasons[place] as number,
      energy: source.energy.seasons[place] as number,
    })),
  };
}

function meanSeason(state: SeasonState, series: Float64Array): number {
  const sum = state.seasons.reduce((total, span) => total + sumOver(series, span), 0);
  return sum / state.seasons.length;
}

function batteryAnswer(state: SeasonState, id: string, place: number): BatteryAnswer {
  const { lowest, usable, daysShort } = state.batteries;
  const most = usable[place] as number;
  const tally = daysShort[place];
  const books = state.batteries.books[place] as ChargeBook;
  return {
    id,
    lowestShare: most > 0 ? (lowest[place] as number) / most : 0,
    daysEmpty: tally ? (meanOf(tally.seasons) ?? 0) : 0,
    seasonEntered: meanSeason(state, books.entered),
    seasonUsed: meanSeason(state, books.used),
    seasonLost: meanSeason(state, books.lost),
    ...books,
  };
}

/** One sum over another, of the whole seasons; null where there is nothing to share. */
function shareOf(part: Tally, whole: Tally): number | null {
  const sum = sumOfWhole(whole.seasons);
  return sum > 0 ? sumOfWhole(part.seasons) / sum : null;
}

/** Days a year on which its crops stand outside the season; without a whole year in the record, days a season. */
function outsideDays({ outside }: Bed, seasons: number): number {
  return meanOf(outside.years) ?? sumOfAll(outside) / Math.max(1, seasons);
}

function bedAnswer(bed: Bed, { seasons, record }: SeasonState): BedAnswer {
  const mean = (tally: Tally) => meanOf(tally.seasons) ?? 0;
  return {
    id: bed.part.id,
    none: bed.none,
    need: meanOf(needs(bed)) ?? 0,
    got: mean(bed.got),
    pastRoots: Math.max(0, mean(bed.met) - mean(bed.got)),
    potential: mean(bed.potential),
    owed: mean(bed.owed),
    rained: mean(bed.rained),
    outsideDays: outsideDays(bed, seasons.length),
    shareMet: shareOf(bed.use, bed.potential),
    ruleKept: bed.byCalendar ? shareOf(bed.met, bed.due) : null,
    daysShort: meanOf(bed.daysShort.seasons) ?? 0,
    binding: bindingOf(sumOfSeasons(bed.shortBy)),
    seasons: bedSeasons(bed, seasons, record.firstDay),
    given: bed.given,
    daysHelped: meanOf(bed.daysHelped.seasons) ?? 0,
    lackedDays: bed.lackedDays.map((days) => days / seasons.length),
    lacked: bed.lacked,
    lastBy: bed.lastBy,
    unfilled: bed.unfilled,
    depletion: bed.evening,
  };
}
