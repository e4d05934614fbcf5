// What holds between the sentences on top and the numbers below.

import { shownValue } from "../../../src/graph/shown.ts";
import { property } from "../harness.ts";
import { OPTIONS, type Worked } from "../worked.ts";

/** Two numbers of which the first, for the worst time, must not be better than the second, for the usual one. */
type Pair = { readonly worst: string; readonly usual: string; readonly better: "more" | "less" };

const PAIRS: readonly Pair[] = [
  { worst: "season.worst_date_lasts", usual: "season.days_of_autonomy", better: "more" },
  { worst: "season.worst_season_share_met", usual: "season.share_met", better: "more" },
  { worst: "weather.driest_year_rain", usual: "weather.mean_yearly_rain", better: "more" },
];

property(
  "at worst is never better than usual",
  (worked) => {
    for (const { worst, usual, better } of PAIRS) {
      const [low, mean] = [worked.number(worst), worked.number(usual)];
      if (low === null || mean === null) continue;
      const gain = better === "more" ? low - mean : mean - low;
      // A mean of equal numbers may differ from them in its last bits.
      if (gain > 1e-9 * Math.abs(mean)) return `${worst} is ${low}, ${usual} is ${mean}`;
    }
    return null;
  },
  { open: "the worst date of the record may last longer than the peak-day reckoning that is called usual" },
);

property(
  "a share of 100 % is never said in the color of trouble",
  ({ graph, worksheet, results, sentences }) => {
    for (const piece of sentences.flatMap(({ pieces }) => pieces)) {
      if (typeof piece === "string" || piece.tone !== "trouble") continue;
      const shown = shownValue(graph, worksheet, results, piece.quantity, OPTIONS);
      if (/^100\s?%$/.test(shown)) return `${piece.quantity} is ${shown}`;
    }
    return null;
  },
  { open: "the driest year's share is always in the color of trouble, also where it rounds to 100 %" },
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
