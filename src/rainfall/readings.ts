// Readings as they are met, row by row, in typed arrays that grow: a big file never becomes millions of objects.

export const MARK_TRACE = 1;
export const MARK_ACCUMULATED = 2;
export const MARK_MINUS_ONE = 4;

/** Dated values of one further column. */
export class SeriesLog {
  count = 0;
  day = new Float64Array(1024);
  value = new Float64Array(1024);

  push(day: number, value: number): void {
    if (this.count === this.day.length) {
      this.day = grown(this.day);
      this.value = grown(this.value);
    }
    this.day[this.count] = day;
    this.value[this.count] = value;
    this.count++;
  }
}

function grown(old: Float64Array): Float64Array<ArrayBuffer> {
  const larger = new Float64Array(old.length * 2);
  larger.set(old);
  return larger;
}

/** Rain readings in the file's own unit; NaN where the file says missing. */
export class Readings {
  count = 0;
  /** Day number, or a packed date while the order of day and month is open. */
  day = new Float64Array(1024);
  rain = new Float64Array(1024);
  line = new Float64Array(1024);
  /** Minutes since midnight, -1 without a time. */
  minute = new Float64Array(1024);
  /** Days that the amount covers, ending on its day. */
  span = new Map<number, number>();
  mark = new Map<number, number>();

  push(day: number, rain: number, line: number, minute: number): void {
    if (this.count === this.day.length) {
      this.day = grown(this.day);
      this.rain = grown(this.rain);
      this.line = grown(this.line);
      this.minute = grown(this.minute);
    }
    this.day[this.count] = day;
    this.rain[this.count] = rain;
    this.line[this.count] = line;
    this.minute[this.count] = minute;
    this.count++;
  }
}

export type ExtraName = "highest" | "lowest" | "wind" | "vapour" | "sun";

/** How often something was met, by its own name. */
export class Tally {
  readonly counts = new Map<string, number>();

  add(name: string): void {
    this.counts.set(name, (this.counts.get(name) ?? 0) + 1);
  }
}
