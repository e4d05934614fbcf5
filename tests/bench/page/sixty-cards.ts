// A worksheet of sixty cards: the demo's place several times over, each copy with its own pipes.

import { readFileSync } from "node:fs";

type Card = { readonly id: string; readonly kind: string; readonly title: string };

const CARDS = 60;
const SINGLE = ["site", "weather", "season", "cost"];

/** A copy of the card in which whatever names a copied card names its copy. */
function copyOf(card: Card, ids: ReadonlySet<string>, copy: number): Card {
  const renamed = JSON.stringify(card, (key, value: unknown) => {
    if (key === "title") return `${String(value)} ${copy}`;
    return typeof value === "string" && ids.has(value) ? `${value}_${copy}` : value;
  });
  return JSON.parse(renamed);
}

export function sixtyCards(): string {
  const demo = JSON.parse(readFileSync(`${process.cwd()}/templates/hillside-totes.json`, "utf8"));
  const cards: readonly Card[] = demo.cards;
  const copied = cards.filter(({ kind }) => !SINGLE.includes(kind));
  const ids = new Set(copied.map(({ id }) => id));
  const all = [...cards];
  for (let copy = 2; all.length < CARDS; copy++) {
    const next = copied.map((card) => copyOf(card, ids, copy));
    all.push(...next.slice(0, CARDS - all.length));
  }
  return JSON.stringify({ ...demo, title: "Sixty cards", cards: all });
}
