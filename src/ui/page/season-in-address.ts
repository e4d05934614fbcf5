// The page of the season that the address names, and whether the sheet beneath it was ever looked at.

import { createEffect, createSignal, onCleanup } from "solid-js";
import { fetchInSeason } from "../field/fetch-in-season.ts";
import { fieldPageIn } from "../field/pages.ts";

export function createSeasonInAddress() {
  const [page, setPage] = createSignal(fieldPageIn(location.hash));
  // From the home screen the page at the bed opens: it is not to wait for a sheet that nobody looks at.
  const [wanted, setWanted] = createSignal(page() === null);
  const look = () => {
    setPage(fieldPageIn(location.hash));
  };
  addEventListener("hashchange", look);
  onCleanup(() => removeEventListener("hashchange", look));
  createEffect(() => {
    if (page() === null) setWanted(true);
    else fetchInSeason().catch(() => setWanted(true));
  });
  const leave = (): void => {
    // The back button of a phone leaves by itself.
    if (fieldPageIn(location.hash)) history.replaceState(null, "", location.pathname + location.search);
    look();
  };
  return { page, leave, isSheetWanted: wanted };
}

export type InAddress = ReturnType<typeof createSeasonInAddress>;
