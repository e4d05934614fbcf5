// Bringing the plans into the place of time, and into view where that lies further down.

import type { Sheet } from "../sheet.ts";

/** Shows the plans; on a phone the open part is closed, for the place of time stands under the answers at rest. */
export function showBeside(sheet: Sheet): void {
  if (sheet.looking.width() === "phone") sheet.looking.openPart(null);
  sheet.looking.showTime("beside");
  requestAnimationFrame(() => document.querySelector(".zone-time")?.scrollIntoView({ block: "nearest" }));
}

/** Keeps what was turned since holding as a plan, and shows it beside the sheet. */
export function keepBeside(sheet: Sheet): void {
  void sheet.plans().then((plans) => {
    plans.keep();
    showBeside(sheet);
  });
}
