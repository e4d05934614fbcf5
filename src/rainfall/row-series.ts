// Readings in the order of days and times, as what looks at rows within a day needs them.
import type { Readings } from "./readings.ts";
import { readingOrder } from "./settle-dates.ts";

export type Series = {
  readonly count: number;
  readonly day: Float64Array;
  /** Minutes since midnight, -1 without a time. */
  readonly minute: Float64Array;
  readonly rain: Float64Array;
  readonly line: Float64Array;
  /** Days that an amount covers, by position. */
  readonly span: ReadonlyMap<number, number>;
  readonly mark: ReadonlyMap<number, number>;
  readonly sorted: boolean;
};

function moved(values: ReadonlyMap<number, number>, places: Uint32Array): Map<number, number> {
  return new Map(
    [...values].filter(([at]) => at < places.length).map(([at, value]) => [places[at] ?? 0, value]),
  );
}

/** The readings in order; those of one moment as they stand in the file. */
export function seriesOf(readings: Readings): Series {
  const { count, span, mark } = readings;
  const order = readingOrder(readings);
  const inOrder = (values: Float64Array): Float64Array =>
    order ? Float64Array.from(order, (at) => values[at] ?? 0) : values.subarray(0, count);
  const places = order ? new Uint32Array(count) : null;
  order?.forEach((from, to) => {
    if (places) places[from] = to;
  });
  const within = (values: ReadonlyMap<number, number>) =>
    places ? moved(values, places) : new Map([...values].filter(([at]) => at < count));
  return {
    count,
    day: inOrder(readings.day),
    minute: inOrder(readings.minute),
    rain: inOrder(readings.rain),
    line: inOrder(readings.line),
    span: within(span),
    mark: within(mark),
    sorted: order === null,
  };
}

export type Group = { readonly day: number; readonly from: number; readonly to: number };

/** The rows of each day. */
export function groupsOf(series: Series): readonly Group[] {
  const groups: Group[] = [];
  let from = 0;
  for (let at = 1; at <= series.count; at++) {
    const day = series.day[from] ?? 0;
    if (at < series.count && series.day[at] === day) continue;
    groups.push({ day, from, to: at });
    from = at;
  }
  return groups;
}
