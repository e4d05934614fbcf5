// What the page keeps, read and put where it keeps it.

import type { Browser, Page } from "playwright-core";
import { isLong } from "../tries.ts";
import { DESK, settled, site } from "./browser.ts";
import { lend, type Opened } from "./pages.ts";
import { fileOf } from "./starters.ts";

/** What is kept under a key of the page's own store, as JSON, and another thing put there; "" takes it away. */
export async function kept(page: Page, key: string, put?: string): Promise<string> {
  return page.evaluate(
    ([name, text]) =>
      new Promise<string>((resolve, reject) => {
        const opening = indexedDB.open("eavesdrip");
        opening.onerror = () => reject(opening.error);
        opening.onupgradeneeded = () => opening.result.createObjectStore("shelf");
        opening.onsuccess = () => {
          const store = opening.result.transaction("shelf", "readwrite").objectStore("shelf");
          const asked =
            text === undefined
              ? store.get(name)
              : text === ""
                ? store.delete(name)
                : store.put(JSON.parse(text), name);
          asked.onerror = () => reject(asked.error);
          asked.onsuccess = () => resolve(JSON.stringify(asked.result ?? null));
          store.transaction.oncomplete = () => opening.result.close();
        };
      }),
    [key, put] as const,
  );
}

/** Opens the page at an address where that worksheet is kept, as if it had been opened there before: no demo is worked out first. */
export async function openKept(page: Page, worksheet: object, hash = ""): Promise<void> {
  // A picture lies beside the page, with no program in it.
  await page.goto(`${site()}icon.svg`);
  const id = "0".repeat(32);
  await kept(page, `sheet:${id}`, JSON.stringify({ id, revision: 1, savedAt: 1, worksheet }));
  await kept(page, "current", JSON.stringify(id));
  await page.goto(`${site()}${hash}`);
}

/** Title of the worksheet that `openSmall` opens. */
export const SMALL = "One barrel and a can";

/** A small worksheet, for what hangs on none of the demo's: one barrel, a can and a bed. */
export async function openSmall(browser: Browser): Promise<Opened> {
  const lent = await lend(browser, { viewport: DESK, colorScheme: "light", glass: 1, asks: isLong });
  await openKept(lent.page, fileOf("one-barrel.json"));
  await settled(lent.page);
  return lent;
}
