// What the printed page says over and under itself, and of waterings.

import { withinLine } from "./words/lists.ts";

/** What is known of a bed's waterings, as shown; "" where it is not. */
export type PrintedBed = {
  readonly volume: string;
  readonly every: string;
  readonly by: string;
  /** Its days in the coming week, and the day from which it is counted. */
  readonly days: string;
  readonly from: string;
};

/** "12 gal every 3 days, by Pump; in the week from 2021-07-03 it wants water on Tuesday". */
export function printedWatering({ volume, every, by, days, from }: PrintedBed): string {
  const usual = `${volume} every ${every}, by ${by || "nobody yet"}`;
  return days === "" ? usual : `${usual}; in the week from ${from} it wants water on ${days}`;
}

type MadeBy = { readonly datum: string; readonly madeBy: string; readonly madeOn: string };

export const printedFoot = ({ datum, madeBy, madeOn }: MadeBy): string =>
  `Figures are estimates for planning: local codes and licensed people decide on wiring, stands, drinking water and backflow. Height nought is ${datum || "wherever you choose"}. Made by ${madeBy || "nobody named"}${madeOn === "" ? "" : ` on ${madeOn}`}.`;

/** In place of a number that is still to come while it is printed, and over all of them. */
export const NOT_WORKED_OUT = "not worked out yet";
export const PRINTED_EARLY =
  "Printed before the season was worked out: what hangs on it is from before the last change, or not there. Print it again.";

export const CAUTIONS_FOLLOW = "Read the cautions on the next page first.";

/** What is said of the drawing on paper, where no day is chosen. */
export const printedLevels = (dipped: boolean): string =>
  `Heights are to scale, distances are not. The water stands as ${dipped ? "it was dipped last, carried on to today" : "the season begins"}.`;

/** Over cautions, in the order of danger (`dangerOf`). */
export const DANGERS = ["What can kill", "What can hurt", "What goes wrong", "What else to know"] as const;

/** "Drains to House tank; first flush comes to 13.5 gal": what is set of a part, each as its label and its value. */
export const printedSettings = (settings: readonly (readonly [label: string, value: string])[]): string =>
  settings.map(([label, value], at) => `${at === 0 ? label : withinLine(label)} ${value}`).join("; ");
