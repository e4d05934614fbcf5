// Bringing plans or the next money into the place of time, and into view where that lies further down.

import type { InTime } from "../looking.ts";
import type { Sheet } from "../sheet.ts";

/** What is fetched for it: before it is here there is nothing to be brought into view. */
const FETCHED: Readonly<Record<InTime, (sheet: Sheet) => readonly Promise<unknown>[]>> = {
  year: () => [],
  beside: (sheet) => [import("./PlansBeside.tsx"), sheet.plans()],
  money: (sheet) => [import("../money/NextMoney.tsx"), sheet.nextMoney()],
};

/** Shows something in the place of time; on a phone the open part is closed, for that stands under the answers at rest. */
export function showInTime(sheet: Sheet, what: InTime): void {
  if (sheet.looking.width() === "phone") sheet.looking.openPart(null);
  sheet.looking.openWorking(null);
  sheet.looking.showTime(what);
  const intoView = () => document.querySelector(".zone-time")?.scrollIntoView({ block: "start" });
  const width = sheet.looking.width();
  if (width === "phone" || width === "list")
    void Promise.all(FETCHED[what](sheet)).then(() => requestAnimationFrame(intoView));
}

export const showBeside = (sheet: Sheet): void => showInTime(sheet, "beside");

/** Keeps what was turned since holding as a plan, and shows it beside the sheet. */
export function keepBeside(sheet: Sheet): void {
  void sheet.plans().then((plans) => {
    plans.keep();
    showBeside(sheet);
  });
}
