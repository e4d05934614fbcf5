// How a hose is filled for the first time: what to open and shut, in which order, how much it takes and where air stays.

import type { Show } from "./bed-day.ts";

/** A high point of a hose [m]; `trouble` as the card's route has it, null: the flow clears it by itself. */
type High = {
  readonly distance: number;
  readonly rise: number;
  readonly trouble: string | null;
};

export type FirstFill = {
  /** Titles of the tanks or joints at its ends; null: none. */
  readonly from: string | null;
  readonly to: string | null;
  readonly hasFloat: boolean;
  /** What the hose holds [m3], its flow, the flow that clears it of air [m3/s], and when water comes [s]; null: not known. */
  readonly holds: number;
  readonly flow: number | null;
  readonly clearsFrom: number | null;
  readonly comesAfter: number | null;
  /** Null: nobody said how it lies. */
  readonly highs: readonly High[] | null;
  /** What a can holds, where there is one [m3]. */
  readonly can: number | null;
};

const tap = ({ from }: FirstFill): string => (from === null ? "its upper tap" : `the tap at ${from}`);

function cansOf({ holds, can }: FirstFill, show: Show): string {
  if (can === null) return "";
  const count = Math.ceil(holds / can - 1e-9);
  return count === 1 ? `, one can of ${show(can, "volume")}` : `, ${count} cans of ${show(can, "volume")}`;
}

/** Over the upper water it runs as a siphon only, filled by hand. */
function primed(fill: FirstFill, hump: High, show: Show): readonly string[] {
  const after = fill.comesAfter === null ? "" : ` within about ${show(fill.comesAfter, "duration")}`;
  return [
    "Shut both ends.",
    `Pour water in at the top of its hump, ${show(hump.distance, "distance")} along, until both legs stand full: ${show(fill.holds, "volume")} in all${cansOf(fill, show)}.`,
    "Wait until no bubble comes, fill up once more, and close the top so that no air gets in.",
    `Open the lower end first, then ${tap(fill)}.`,
    `Water must come${after}. If none comes, air is in it: shut both ends and fill it again.`,
  ];
}

function over(fill: FirstFill, high: High, show: Show): string {
  const at = `At ${show(high.distance, "distance")} along it climbs ${show(high.rise, "height")} and falls again`;
  if (high.trouble === "under_pressure")
    return `${at}, higher than the running water reaches: air gathers there again and again. Let it out at the top, and lay it lower when you can.`;
  if (high.trouble === null || fill.flow === null) return `${at}: the flow takes the air along.`;
  const wants = fill.clearsFrom === null ? "" : `: that takes ${show(fill.clearsFrom, "flow")}`;
  return `${at}, and ${show(fill.flow, "flow")} is too slow to take the air along${wants}. Let the air out at the top, by a small tap or a joint unscrewed there, until water comes.`;
}

function running(fill: FirstFill, show: Show): readonly string[] {
  const end = fill.to === null ? "its far end" : `its end at ${fill.to}`;
  const after =
    fill.comesAfter === null
      ? ""
      : ` Wide open, water would come after about ${show(fill.comesAfter, "duration")}; give it longer:`;
  const slow = fill.flow !== null && fill.clearsFrom !== null && fill.flow < fill.clearsFrom;
  return [
    fill.hasFloat ? `Let the float hang down, so that ${end} is open.` : `Open ${end}.`,
    slow
      ? `Its flow is too slow to carry air out. Fill it once from the low end, by a funnel held higher than its top or by a pump, until water without bubbles comes at the upper end; then open ${tap(fill)}.`
      : `Open ${tap(fill)} a quarter and leave it so: filled slowly, the water pushes the air ahead of it.`,
    `The hose holds ${show(fill.holds, "volume")}.${after || " Then"} let it run until it comes without spitting.`,
    ...(fill.highs ?? []).map((high) => over(fill, high, show)),
    ...(fill.highs === null && slow
      ? [
          "Lay it so that it only falls: its flow is too slow to take air over a rise, and where it rises is not on the sheet.",
        ]
      : []),
    `Open ${tap(fill)} all the way.${fill.hasFloat ? " Lift the float by hand: the flow must stop." : ""}`,
  ];
}

/**
 * The steps of a first filling, in their order; none where filling helps nothing.
 *
 * @source common practice, no source; what high points do is the card's own reckoning
 */
export function firstFill(fill: FirstFill, show: Show): readonly string[] {
  const highs = fill.highs ?? [];
  if (highs.some(({ trouble }) => trouble === "siphon_too_high")) return [];
  const humps = highs.filter(({ trouble }) => trouble === "siphon");
  const hump = humps.reduce<High | null>((top, high) => (!top || high.rise > top.rise ? high : top), null);
  return hump ? primed(fill, hump, show) : running(fill, show);
}
