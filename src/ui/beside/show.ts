// Bringing the plans into the place of time, and into view where that lies further down.

import type { Sheet } from "../sheet.ts";

/** Shows the plans; on a phone the open part is closed, for the place of time stands under the answers at rest. */
export function showBeside(sheet: Sheet): void {
  if (sheet.looking.width() === "phone") sheet.looking.openPart(null);
  sheet.looking.showTime("beside");
  const intoView = () => document.querySelector(".zone-time")?.scrollIntoView({ block: "start" });
  // Before it is here there is nothing to be brought into view.
  const width = sheet.looking.width();
  if (width === "phone" || width === "list")
    void Promise.all([import("./PlansBeside.tsx"), sheet.plans()]).then(() =>
      requestAnimationFrame(intoView),
    );
}

/** Keeps what was turned since holding as a plan, and shows it beside the sheet. */
export function keepBeside(sheet: Sheet): void {
  void sheet.plans().then((plans) => {
    plans.keep();
    showBeside(sheet);
  });
}
