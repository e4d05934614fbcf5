// Asks axe whether a page can be used without looking at it.

import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";

/** What axe finds seriously wrong; it is put in past the page's policy, as a debugger would. */
export async function axe(page: Page): Promise<readonly string[]> {
  const source = readFileSync(new URL("../../node_modules/axe-core/axe.min.js", import.meta.url), "utf8");
  await page.evaluate(source);
  return page.evaluate(async () => {
    const runner = (
      globalThis as unknown as {
        axe: {
          run: () => Promise<{ violations: { id: string; impact: string; nodes: { target: string[] }[] }[] }>;
        };
      }
    ).axe;
    const { violations } = await runner.run();
    return violations
      .filter(({ impact }) => impact === "serious" || impact === "critical")
      .map(
        ({ id, nodes }) =>
          `${id}: ${nodes
            .map((node) => node.target.join(" "))
            .slice(0, 3)
            .join(", ")}`,
      );
  });
}
