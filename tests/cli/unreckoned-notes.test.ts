// Notes that change nothing are told with their day and part; those that are reckoned with are not.

import { expect, test } from "vitest";
import { unreckonedOf } from "../../src/cli/unreckoned-notes.ts";
import type { Note } from "../../src/document/worksheet.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";

const cards = [
  { id: "tub", kind: "tank", title: "Tub", givens: {}, measured: {} },
  { id: "bed", kind: "bed", title: "Beans", givens: {}, measured: {} },
  {
    id: "grown",
    kind: "bed",
    title: "Tunnel",
    givens: { contents: { value: [{ crop: "tomato", planted: "05-15", share: 1 }], unit: "" } },
    measured: {},
  },
  { id: "site", kind: "site", title: "Here", givens: {}, measured: {} },
];
const told = (what: string, where: string, more: Partial<Note> = {}) =>
  unreckonedOf(CARD_KINDS, { cards }, [{ id: "a", day: "2026-07-10", what, where, ...more }]);

test.each([
  ["planted", "bed", /^Note of 2026-07-10, Beans: "planted" is kept, but .* names no crop\.$/],
  ["pulled", "bed", /^Note of 2026-07-10, Beans: "pulled up" is kept, but/],
  [
    "gave",
    "tub",
    /^Note of 2026-07-10, Tub: "watered" is noted of parts of the kind bed, and this is of the kind tank\. It is kept/,
  ],
  [
    "dipped",
    "bed",
    /^Note of 2026-07-10, Beans: "dipped" is noted of parts of the kind tank, and this is of the kind bed\./,
  ],
  ["bucket", "bed", /noted of parts of the kind gravity line or pump and hose, and this is of the kind bed/],
  [
    "dug",
    "bed",
    /^Note of 2026-07-10, Beans: "dug to see" is kept, but nothing of today is reckoned from it\.$/,
  ],
  ["cleaned", "tub", /"cleaned" is kept, but/],
  ["drained", "tub", /"made ready for frost" is kept, but/],
  ["drained", "bed", /^Note of 2026-07-10, Beans: "made ready for frost" is noted of parts of the kind/],
  ["dipped", "gone", /^Note of 2026-07-10, gone: there is no such part here/],
  ["broke", "gone", /there is no such part here/],
])("%s of %s changes nothing, and is told", (what, where, words) => {
  expect(told(what, where)).toEqual([expect.stringMatching(words)]);
});

test.each([
  ["gave", "bed"],
  ["planted", "grown"],
  ["pulled", "grown"],
  ["dipped", "tub"],
  ["rain", "site"],
  // Rain counts of whichever part it was noted.
  ["rain", "gone"],
  // Words that nobody here knows are told once for all where the file is read.
  ["sang", "bed"],
])("%s of %s is not", (what, where) => {
  expect(told(what, where)).toEqual([]);
});
