// How pump hoses start: one at each tank that beds are watered from; a bucket is asked for where no pump's label is known.

import type { AskedCard, Start } from "../asking.ts";
import { type LaidPart, numbered, pumpedFrom, type Wish } from "../lay-out.ts";
import { boresOf } from "../line/start.ts";
import { LAID_PUMP } from "../pump/start.ts";

function laid(wish: Wish): readonly LaidPart[] {
  return pumpedFrom(wish).map((from, at) => ({
    key: `pump${at}`,
    title: numbered("Pump and hose", at),
    givens: {},
    links: { from, pump: LAID_PUMP },
  }));
}

const hasPump = ({ givens }: AskedCard): boolean => Boolean(givens["pump"]?.value);

export const start: Start = {
  laid,
  asks: [
    {
      place: 52,
      rows: ["hose_length"],
      ask: "{title}: how long is the hose?",
      alike: "{count} hoses at the pump: how long is each?",
      hint: "From the pump to where the water comes out.",
      field: { row: "hose_length" },
      picks: [boresOf("hose_bore")],
      when: hasPump,
      says: ({ number, show }) => {
        const flow = number("flow");
        return flow === null ? null : `About {${show(flow, "flow")}} come out of it.`;
      },
    },
    {
      place: 53,
      rows: ["bucket_volume"],
      ask: "{title}: how much does the bucket hold?",
      hint: "Time how long your pump and hose take to fill a bucket.",
      field: { row: "bucket_volume" },
      when: (card) => !hasPump(card),
    },
    {
      place: 53.5,
      rows: ["bucket_time"],
      ask: "{title}: in what time is it full?",
      hint: "In seconds, as you water: with the wand on.",
      field: { row: "bucket_time", unit: { us: "s", metric: "s" } },
      when: (card) => !hasPump(card),
      says: ({ number, show }) => {
        const flow = number("flow");
        return flow === null ? null : `That is {${show(flow, "flow")}}.`;
      },
    },
  ],
};
