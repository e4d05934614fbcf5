// The beds of a place that is laid out from a few counts, the tunnels first.

import { type LaidPart, numbered, sourcesOf, times, type Wish, word } from "../lay-out.ts";

export function laidBeds(wish: Wish): readonly LaidPart[] {
  const count = sourcesOf(wish).length;
  const beds = [
    ...times(wish.tunnels, (at) => ({ title: numbered("Tunnel bed", at), cover: "covered" })),
    ...times(wish.openBeds, (at) => ({ title: numbered("Open bed", at), cover: "open" })),
  ];
  const ways = [
    ...(wish.wateredBy === "cans" ? [] : ["pump"]),
    ...(wish.wateredBy === "pump" ? [] : ["cans"]),
  ];
  return beds.map(({ title, cover }, at) => ({
    key: `bed${at}`,
    title,
    givens: {
      cover: word(cover),
      method: word(wish.wateredBy === "cans" ? "can" : "wand"),
      priority: { value: at + 1, unit: "1" },
    },
    links: count > 0 ? { watered_by: ways.map((way) => `${way}${at % count}`) } : {},
  }));
}
