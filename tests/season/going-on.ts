// A run stopped on a morning and gone on with, held against the run that was never stopped.

import type { DailyRecord } from "../../src/rainfall/record.ts";
import { STEPPING } from "../../src/season/gravity.ts";
import type { SeasonInput } from "../../src/season/input.ts";
import { goingOn, momentOf } from "../../src/season/moment.ts";
import { prepareSeason, runDays } from "../../src/season/run.ts";
import type { SeasonState } from "../../src/season/state.ts";

type Series = Readonly<Record<string, Float64Array>>;

/** All that a run says day by day. */
function seriesOf(state: SeasonState): Series {
  return Object.fromEntries([
    ...state.tanks.parts.map(({ id }, place) => [`${id} holds`, state.stored[place] as Float64Array]),
    ...state.batteries.parts.flatMap(({ id }, place) => [
      [`${id} holds`, state.batteries.books[place]?.stored as Float64Array],
      [`${id} used`, state.batteries.books[place]?.used as Float64Array],
    ]),
    ...state.pipes.lines.map(({ id }, place) => [`${id} moved`, state.lineMovedOn[place] as Float64Array]),
    ...state.beds.flatMap((bed) => [
      [`${bed.part.id} given`, bed.given],
      [`${bed.part.id} lacks`, bed.evening],
      [`${bed.part.id} bound`, Float64Array.from(bed.lacked)],
      [`${bed.part.id} by`, Float64Array.from(bed.lastBy)],
    ]),
    ["short", Float64Array.from(state.shortDay)],
    ["draws short", Float64Array.from(state.drawShort)],
  ]) as Series;
}

function prepared(input: SeasonInput, record: DailyRecord): SeasonState {
  const state = prepareSeason(input, record);
  if ("failed" in state) throw new Error(state.failed);
  return state;
}

const slice = (series: Float64Array | null, from: number, to: number) => series?.slice(from, to) ?? null;

/**
 * What differs by more than 1e-9 of the largest of its kind, or null: a run of the record's first days, then from the
 * morning of `stop` on by its moment alone.
 */
export function differenceFrom(
  input: SeasonInput,
  record: DailyRecord,
  stop: number,
  days: number,
): string | null {
  const whole = prepared(input, record);
  const last = Math.min(whole.length, stop + days) - 1;
  runDays(whole, STEPPING, { first: 0, last });
  const half = prepared(input, record);
  if (stop > 0) runDays(half, STEPPING, { first: 0, last: stop - 1 });
  const weather = {
    rain: record.rain.slice(stop, last + 1),
    highest: slice(record.highest, stop, last + 1),
    lowest: slice(record.lowest, stop, last + 1),
    eto: whole.eto.slice(stop, last + 1),
  };
  const known = new Map(half.beds.map((bed) => [bed.part.id, bed]));
  const { state, first } = goingOn(input, momentOf(half, stop), weather, known);
  runDays(state, STEPPING, { first, last: first + last - stop });
  const [one, other] = [seriesOf(whole), seriesOf(state)];
  for (const name of Object.keys(one)) {
    const most = (one[name] as Float64Array).reduce((top, value) => Math.max(top, Math.abs(value)), 0);
    for (let day = stop; day <= last; day++) {
      const [was, is] = [one[name]?.[day] as number, other[name]?.[first + day - stop] as number];
      if (!(Math.abs(was - is) <= 1e-9 * Math.max(1, most)))
        return `${name} is ${is} instead of ${was}, ${day - stop} days on`;
    }
  }
  return null;
}
