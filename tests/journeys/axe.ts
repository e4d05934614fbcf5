// Asks axe whether a page can be used without looking at it.

import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { isLong } from "../tries.ts";

/** It is put in past the page's policy, as a debugger would. */
async function putIn(page: Page): Promise<void> {
  if (await page.evaluate(() => "axe" in globalThis)) return;
  const source = readFileSync(new URL("../../node_modules/axe-core/axe.min.js", import.meta.url), "utf8");
  await page.evaluate(source);
}

/**
 * What axe finds seriously wrong.
 * @param contrast whether the color of each word is held against what is painted below it, which is most of its work: in
 *   `npm test` of the page by day and by night, of all that is looked at with LONG=1
 */
export async function axe(page: Page, contrast = isLong): Promise<readonly string[]> {
  await putIn(page);
  return page.evaluate(async (enabled) => {
    const runner = (
      globalThis as unknown as {
        axe: {
          run: (
            options: object,
          ) => Promise<{ violations: { id: string; impact: string; nodes: { target: string[] }[] }[] }>;
        };
      }
    ).axe;
    const { violations } = await runner.run({
      resultTypes: ["violations"],
      rules: { "color-contrast": { enabled } },
    });
    return violations
      .filter(({ impact }) => impact === "serious" || impact === "critical")
      .map(
        ({ id, nodes }) =>
          `${id}: ${nodes
            .map((node) => node.target.join(" "))
            .slice(0, 3)
            .join(", ")}`,
      );
  }, contrast);
}
