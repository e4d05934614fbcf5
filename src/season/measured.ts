// Which days a record tells of.

import type { DailyRecord } from "../rainfall/record.ts";

/** Whether a record measured a day; made-up weather never fell. */
export const isMeasured = ({ madeUp, firstDay, rain }: DailyRecord, date: number): boolean =>
  !madeUp && date >= firstDay && date < firstDay + rain.length;
