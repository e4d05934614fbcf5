// What holds between the sentences on top and the numbers below.

import { shownIn } from "../../../src/graph/readers.ts";
import { labelOf, shownValue } from "../../../src/graph/shown.ts";
import { toneShown } from "../../../src/telling/state-tone.ts";
import { property } from "../harness.ts";
import { OPTIONS, type Worked } from "../worked.ts";

/** Two numbers of which the first must not be more than the second: little rain is worst, and many short days are. */
type Pair = { readonly less: string; readonly more: string };

const PAIRS: readonly Pair[] = [
  { less: "weather.driest_year_rain", more: "weather.mean_yearly_rain" },
  { less: "season.days_short", more: "season.worst_season_days_short" },
];

property("the worst season and the driest year are never better than the usual ones", (worked) => {
  for (const { less, more } of PAIRS) {
    const [low, mean] = [worked.number(less), worked.number(more)];
    if (low === null || mean === null) continue;
    // A mean of equal numbers may differ from them in its last bits.
    if (low - mean > 1e-9 * Math.abs(mean)) return `${less} is ${low}, ${more} is ${mean}`;
  }
  return null;
});

property(
  // The record's own days and the reckoning with peak days are two things: either may be the longer.
  "how long full tanks last from the thirstiest day on is never called the worst case of how long they last at the peak",
  ({ graph, worksheet, sentences, textOf }) => {
    const texts = [
      ...["worst_date_lasts", "worst_date", "days_of_autonomy"].map((row) =>
        labelOf(graph, worksheet, `season.${row}`),
      ),
      ...sentences.map(textOf),
    ];
    return texts.find((text) => /\bat (the )?worst\b|worst case/i.test(text)) ?? null;
  },
);

property(
  "a share of 100 % is never said in the color of trouble",
  ({ graph, worksheet, results, sentences }) => {
    for (const piece of sentences.flatMap(({ pieces }) => pieces)) {
      if (typeof piece === "string" || toneShown(piece, shownIn(results.get(piece.quantity))) !== "trouble")
        continue;
      const shown = shownValue(graph, worksheet, results, piece.quantity, OPTIONS);
      if (/^100\s?%$/.test(shown)) return `${piece.quantity} is ${shown}`;
    }
    return null;
  },
);

property("a sentence has no hole, and no number without its value", (worked) => {
  for (const sentence of worked.sentences) {
    const text = worked.textOf(sentence);
    if (/undefined|NaN|Infinity|\[object|null/.test(text)) return text;
    for (const piece of sentence.pieces) {
      if (typeof piece === "string") continue;
      if (!worked.results.get(piece.quantity)) return `${piece.quantity} is not there, in: ${text}`;
    }
  }
  return null;
});

type Out = { readonly id: string; readonly reason: string; readonly cause?: string };

/** Whether a part's reason is borne out: the quantity it names as the cause failed or is none. */
function borneOut({ results }: Worked, { id, reason, cause }: Out): string | null {
  if (reason.trim() === "") return `${id} is left out for no reason`;
  if (cause === undefined) return null;
  const result = results.get(cause);
  if (result?.state === "failed" || result?.state === "none") return null;
  return `${id} is left out because of ${cause} (${reason}), which is ${result?.state ?? "not there"}`;
}

property(
  "parts that are left out are as many as are named, each once, and each for a true reason",
  (worked) => {
    const listed = (worked.value("season.left_out_list") ?? []) as readonly Out[];
    const count = worked.number("season.left_out");
    if (count !== null && count !== listed.length) return `${count} are said, ${listed.length} named`;
    const ids = new Set(listed.map(({ id }) => id));
    if (ids.size < listed.length) return `named twice: ${listed.map(({ id }) => id)}`;
    for (const part of listed) {
      if (!worked.worksheet.cards.some(({ id }) => id === part.id)) return `${part.id} is no card`;
      const wrong = borneOut(worked, part);
      if (wrong !== null) return wrong;
    }
    return null;
  },
);

/** Said where a record is lacking, or too short. */
const LACKING = /record (is not here|has no whole)|no (rain )?record|without a record/i;

property("a season that is still to be run is never told as a missing record", (worked) => {
  const here = worked.before.get("weather.mean_yearly_rain")?.state === "ready";
  if (!here) return null;
  for (const sentence of worked.sentencesBefore) {
    const text = sentence.pieces.filter((piece) => typeof piece === "string").join("…");
    const after = worked.sentences.some(({ pieces }) => LACKING.test(pieces.join("")));
    if (LACKING.test(text) && !after) return text;
  }
  return null;
});

/** Everything that is said in words: the sentences on top, and why a quantity is none or failed. */
function* textsOf({ results, sentences, textOf }: Worked): Generator<string> {
  yield* sentences.map(textOf);
  for (const id of results.ids) {
    const result = results.get(id);
    if (result?.state === "none") yield `${id}: ${result.reason}`;
    if (result?.state === "failed") yield `${id}: ${result.problem.text}`;
  }
}

property("no text says that a record has no whole year, or no whole season, where it has one", (worked) => {
  const [years, seasons] = [worked.number("weather.whole_years"), worked.number("season.seasons")];
  for (const text of textsOf(worked)) {
    if (/no whole (calendar )?year/.test(text) && (years ?? 0) > 0) return `${text}, of ${years} years`;
    if (/no whole season/.test(text) && (seasons ?? 0) > 0) return `${text}, of ${seasons} seasons`;
  }
  return null;
});

property("no bed is told that a watering a day is not enough and that it gets what it needs", (worked) => {
  for (const id of worked.cardsOf("bed")) {
    const text = worked.word(`${id}.needs_today`);
    if (/not enough/.test(text) && /never short|It gets it/.test(text)) return `${id}: ${text}`;
    if (/ every \d+ (s|min|h)\b/.test(text)) return `${id}: ${text}`;
  }
  return null;
});
