// Records that are made up from a few figures: the key of one holds all of them.

import { recordFromNormals } from "../rainfall/made-up.ts";
import type { DailyRecord } from "../rainfall/record.ts";

const NORMALS = "normals:";

/** Lets the oldest of those that may go go, until only so many of them are left. */
export function forgetOldest(map: Map<string, unknown>, most: number, mayGo: (key: string) => boolean): void {
  const going = [...map.keys()].filter(mayGo);
  for (const key of going.slice(0, Math.max(0, going.length - most))) map.delete(key);
}

/** Whether a record's key holds all that the record is made up from. */
export const isMadeUpKey = (key: string): boolean => key.startsWith(NORMALS);

/** The record that its key says how to make up. */
export const madeUpRecord = (key: string): DailyRecord => ({
  ...recordFromNormals(JSON.parse(key.slice(NORMALS.length))),
  key,
});
