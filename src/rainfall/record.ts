// The daily weather record every computation runs on. Days are whole numbers since 1970-01-01; no local time.

export type DailyRecord = {
  /** Content key: the same days and columns give the same key. */
  readonly key: string;
  readonly title: string;
  /** Where the record came from, in words a reader can check. */
  readonly source: string;
  /** Made up from normals or by hand; said wherever the record is used. */
  readonly madeUp: boolean;
  /** Whole number of days since 1970-01-01 of element 0. */
  readonly firstDay: number;
  /** Rain of each day [m]; NaN where the day is missing. A trace is 0. */
  readonly rain: Float64Array;
  /** Highest and lowest air temperature of each day [K], NaN where missing; null if the record has no such column. */
  readonly highest: Float64Array | null;
  readonly lowest: Float64Array | null;
  /** Mean wind speed at 2 m [m/s], actual vapour pressure [Pa], solar radiation [J/m2 a day]; null if absent. */
  readonly wind: Float64Array | null;
  readonly vapour: Float64Array | null;
  readonly sun: Float64Array | null;
};
