// Bringing plans or the next money into the place of time, and into view where that lies further down.

import type { InTime } from "../looking.ts";
import type { Sheet } from "../sheet.ts";

/** Shows something in the place of time; on a phone the open part is closed, for that stands under the answers at rest. */
export function showInTime(sheet: Sheet, what: InTime): void {
  if (sheet.looking.width() === "phone") sheet.looking.openPart(null);
  sheet.looking.openWorking(null);
  sheet.looking.showTime(what);
  requestAnimationFrame(() => document.querySelector(".zone-time")?.scrollIntoView({ block: "nearest" }));
}

export const showBeside = (sheet: Sheet): void => showInTime(sheet, "beside");

/** Keeps what was turned since holding as a plan, and shows it beside the sheet. */
export function keepBeside(sheet: Sheet): void {
  void sheet.plans().then((plans) => {
    plans.keep();
    showBeside(sheet);
  });
}
