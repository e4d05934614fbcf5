// What the printed page says of waterings, and under itself.

/** What is known of a bed's waterings, as shown; "" where it is not. */
export type PrintedBed = {
  readonly volume: string;
  readonly every: string;
  readonly by: string;
  /** Its days in the coming week, and the day from which it is counted. */
  readonly days: string;
  readonly from: string;
};

/** "12 gal every 3 days, by Pump; in the week from 2021-07-03 on Tuesday". */
export function printedWatering({ volume, every, by, days, from }: PrintedBed): string {
  const usual = `${volume} every ${every}, by ${by || "nobody yet"}`;
  return days === "" ? usual : `${usual}; in the week from ${from} on ${days}`;
}

type MadeBy = { readonly datum: string; readonly madeBy: string; readonly madeOn: string };

export const printedFoot = ({ datum, madeBy, madeOn }: MadeBy): string =>
  `Figures are estimates for planning: local codes and licensed people decide on wiring, stands, drinking water and backflow. Height nought is ${datum || "wherever you choose"}. Made by ${madeBy || "nobody named"} on ${madeOn}.`;
