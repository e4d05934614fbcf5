// The page in one file: whether this page is one, what stands in it, and how one is made of the open worksheet.

import { HOLDER, withWorksheet } from "../storage/page-file.ts";

/** Where there is no page there is none in one file either. */
const holder = (): HTMLElement | null => globalThis.document?.getElementById(HOLDER) ?? null;

export const isOneFile = (): boolean => holder() !== null;

/** The text of the worksheet that stands in this page; "" where there is none. */
export const worksheetInPage = (): string => holder()?.textContent ?? "";

/** This page as it was before it drew anything. */
function ownText(): string {
  const copy = document.documentElement.cloneNode(true) as HTMLElement;
  copy.querySelector("#page")?.replaceChildren();
  return `<!doctype html>\n${copy.outerHTML}\n`;
}

/** The page without a worksheet that lies beside this one, or this one where it is one itself; rejects where there is none. */
async function emptyPage(): Promise<string> {
  if (isOneFile()) return ownText();
  const answer = await fetch(new URL(import.meta.env["VITE_ONE_FILE"], document.baseURI));
  if (!answer.ok) throw new Error(answer.statusText);
  return answer.text();
}

/**
 * The page in one file with a worksheet in it.
 *
 * @returns null where the program could not be had
 */
export async function pageWith(fileText: string): Promise<string | null> {
  try {
    return withWorksheet(await emptyPage(), fileText);
  } catch {
    return null;
  }
}
