// What stops the water is told: a tank that nothing leads to is not short of rain, and a mistyped size is no answer.

import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import type { Card, Worksheet } from "../../src/document/worksheet.ts";
import { run } from "./run.ts";

const DEMO = fileURLToPath(new URL("../../templates/hillside-totes.json", import.meta.url));

async function said(change: (cards: readonly Card[]) => readonly Card[]): Promise<string> {
  const sheet = JSON.parse(readFileSync(DEMO, "utf8")) as Worksheet;
  const file = join(mkdtempSync(join(tmpdir(), "eavesdrip-")), "sheet.json");
  writeFileSync(file, JSON.stringify({ ...sheet, cards: change(sheet.cards) }));
  const { status, stdout } = await run(file);
  expect(status).toBeLessThan(2);
  return stdout.replaceAll("\u00a0", " ");
}

test("without the hose to it the small tank is said to be filled by nothing, and rain is not blamed", async () => {
  const text = await said((cards) => cards.filter(({ id }) => id !== "hose_down"));
  expect(text).toContain("Nothing fills Tub by the tunnel: no roof, no line and no overflow leads to it.");
  expect(text).toContain("What is short most often is water in Tub by the tunnel, which no roof fills.");
  expect(text).not.toContain("the roofs bring too little");
  expect(await said((cards) => cards)).not.toContain("Nothing fills");
});

test("of a tank of no size every answer says that it is without it, and the reason is told of that tank", async () => {
  const text = await said((cards) =>
    cards.map((card) =>
      card.id === "totes"
        ? { ...card, givens: { ...card.givens, capacity: { value: 0, unit: "gal" } } }
        : card,
    ),
  );
  expect(text).toMatch(/^Without Two totes, beds go short in \d+ of/m);
  expect(text).toContain("Each holds: more than nought is wanted here");
});
