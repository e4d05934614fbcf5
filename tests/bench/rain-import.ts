// Rows a second of the whole import (columns, dates, amounts, checks, days) against bare papaparse in chunks, same run.

import Papa from "papaparse";
import { readRainCsv } from "../../src/rainfall/import-csv.ts";
import { isoDate } from "../../src/units/calendar.ts";
import type { Ratio } from "./measure.ts";

const MEGABYTES = 50;
const ROUNDS = 3;
const CHUNK = 1_048_576;

type Sample = { readonly name: string; readonly header: string; readonly row: (at: number) => string };

const SAMPLES: readonly Sample[] = [
  {
    name: "50 MB, readings of five minutes, 4 columns",
    header: "time,rain (mm),temp max (C),temp min (C)",
    row: (at) => {
      const minute = (at * 5) % 1440;
      const clock = `${String(Math.floor(minute / 60)).padStart(2, "0")}:${String(minute % 60).padStart(2, "0")}`;
      return `${isoDate(Math.floor(at / 288))} ${clock},${at % 7 === 0 ? "0.2" : "0.0"},21.4,12.3`;
    },
  },
  {
    name: "50 MB, daily with flags, 7 quoted columns",
    header: '"STATION","NAME","DATE","PRCP","PRCP_ATTRIBUTES","TMAX","TMIN"',
    row: (at) =>
      `"XX000000001","MADE UP, XX","${isoDate(at % 100_000)}","${at % 9 === 0 ? 56 : 0}",",,W,0700","210","85"`,
  },
];

function textOf({ header, row }: Sample): { text: string; rows: number } {
  const lines = [header];
  let size = 0;
  for (let at = 0; size < MEGABYTES * 1e6; at++) {
    const line = row(at);
    lines.push(line);
    size += line.length + 1;
  }
  return { text: `${lines.join("\n")}\n`, rows: lines.length - 1 };
}

function secondsOf(work: () => void): number {
  const start = performance.now();
  work();
  return (performance.now() - start) / 1000;
}

function bare(text: string): number {
  let rows = 0;
  // The typings know a chunk's size for files only; the code takes it for text as well.
  Papa.parse<string[], File>(text as unknown as File, {
    chunkSize: CHUNK,
    skipEmptyLines: true,
    chunk: ({ data }) => {
      rows += data.length;
    },
    complete: () => undefined,
  });
  return rows;
}

function ratioOf(sample: Sample): Ratio {
  const { text, rows } = textOf(sample);
  const times = { ours: [] as number[], bare: [] as number[] };
  for (let round = 0; round < ROUNDS; round++) {
    times.bare.push(
      secondsOf(() => {
        if (bare(text) !== rows + 1) throw new Error("papaparse lost rows");
      }),
    );
    times.ours.push(
      secondsOf(() => {
        const result = readRainCsv(text);
        if (result.state !== "ready" || result.report.rows !== rows) throw new Error("the import lost rows");
      }),
    );
  }
  const [ours, theirs] = [Math.min(...times.ours), Math.min(...times.bare)];
  return {
    name: `${sample.name}: import over bare papaparse, rows a second`,
    ratio: theirs / ours,
    atLeast: 0.6,
    detail: `${Math.round(rows / ours / 1000)} over ${Math.round(rows / theirs / 1000)} thousand rows/s`,
  };
}

/** The ratios this file promises. */
export function rows(): readonly Ratio[] {
  return SAMPLES.map(ratioOf);
}
