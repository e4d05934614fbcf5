// What holds of what beds need, got and went short of, on any worksheet.

import { shownValue } from "../../../src/graph/shown.ts";
import { wholeSeasons } from "../../../src/season/spans.ts";
import { property } from "../harness.ts";
import { OPTIONS, type Worked } from "../worked.ts";

/** Sums of floats may differ in their last bits. */
const ROUNDING = 1e-9;

property("a bed, and all beds together, got at most what they needed", (worked) => {
  const pairs = [
    ...worked.cardsOf("bed").map((id) => [`${id}.season_got`, `${id}.season_need`] as const),
    ["season.got", "season.need"] as const,
  ];
  for (const [got, need] of pairs) {
    const [has, wants] = [worked.number(got), worked.number(need)];
    if (has === null || wants === null) continue;
    if (has > wants * (1 + ROUNDING) + ROUNDING) return `${got} is ${has}, ${need} is ${wants}`;
  }
  return null;
});

property("harvest is lost only where days were short, and then nothing says never short", (worked) => {
  for (const id of worked.cardsOf("bed")) {
    const [loss, short] = [worked.number(`${id}.likely_loss`), worked.number(`${id}.days_short`)];
    if (loss !== null && loss > 0 && short === 0)
      return `${id} loses ${loss} of its harvest and is never short`;
    const said = worked.word(`${id}.needs_today`);
    if ((short ?? 0) > 0 && said.includes("never short")) return `${id} is short on ${short} days: ${said}`;
  }
  return null;
});

property("thirst is met in full exactly where no day is short, and is then shown as 100 %", (worked) => {
  const names = [...worked.cardsOf("bed"), "season"];
  for (const id of names) {
    const [share, short] = [worked.number(`${id}.share_met`), worked.number(`${id}.days_short`)];
    if (share === null || short === null) continue;
    if ((share === 1) !== (short === 0)) return `${id}: ${share} of its thirst met, ${short} days short`;
    const { graph, worksheet, results } = worked;
    const shown = shownValue(graph, worksheet, results, `${id}.share_met`, OPTIONS);
    if (/^100\s?%$/.test(shown) !== (short === 0)) return `${id}: ${shown} met, ${short} days short`;
  }
  return null;
});

/** Rows that are shares of a whole: never below nothing, never more than all of it. */
const SHARES: Readonly<Record<string, readonly string[]>> = {
  bed: ["share_met", "likely_loss", "watered_share", "rule_kept"],
  season: [
    "share_met",
    "worst_season_share_met",
    "driest_year_share_met",
    "reliability_volume",
    "reliability_days",
    "reliability_years",
  ],
  draw: ["share_met"],
  battery: ["lowest_charge"],
  delivery: ["efficiency"],
};

property("no share is below nothing or above the whole", (worked) => {
  for (const [kind, rows] of Object.entries(SHARES))
    for (const id of worked.cardsOf(kind))
      for (const row of rows) {
        const share = worked.number(`${id}.${row}`);
        if (share !== null && !(share >= -ROUNDING && share <= 1 + ROUNDING))
          return `${id}.${row} is ${share}`;
      }
  return null;
});

property("of the seasons no more are short than there are, and the worst is one of them", (worked) => {
  const [all, short] = [worked.number("season.seasons"), worked.number("season.seasons_short")];
  if (all === null || short === null) return null;
  if (short > all) return `${short} of ${all} seasons are short`;
  const days = worked.number("season.days_short") ?? 0;
  if (days > 0 !== short > 0) return `${short} seasons are short, with ${days} days a season`;
  const least = worked.number("season.worst_season_share_met");
  return (least === 1) === (short === 0) ? null : `${short} seasons are short, and at worst ${least} is met`;
});

/** Short days of each whole season, counted anew from the days that the chart draws; null where nothing was run. */
function countedSeasons(worked: Worked): ReadonlyMap<number, number> | null {
  const [days, first] = [worked.value("season.short_days"), worked.number("season.record_first_day")];
  const [start, end] = [worked.word("site.season_start"), worked.word("site.season_end")];
  if (!(days instanceof Uint8Array) || first === null || start === "" || end === "") return null;
  const spans = wholeSeasons({ start, end }, first, days.length);
  return new Map(
    spans.map((span) => [
      span.year,
      days.slice(span.first, span.last + 1).reduce((sum, day) => sum + day, 0),
    ]),
  );
}

property("the worst season is the one with the most short days, and none is worse", (worked) => {
  const [year, most] = [
    worked.number("season.worst_season"),
    worked.number("season.worst_season_days_short"),
  ];
  const counted = countedSeasons(worked);
  if (year === null || most === null || counted === null) return null;
  if (counted.get(year) !== most) return `${year} has ${counted.get(year)} short days, ${most} are said`;
  for (const [other, days] of counted) if (days > most) return `${other} has ${days}, the worst ${most}`;
  const short = [...counted.values()].filter((days) => days > 0).length;
  const [said, all] = [worked.number("season.seasons_short"), worked.number("season.seasons")];
  if (short !== said || counted.size !== all)
    return `${said} of ${all} are said short, ${short} of ${counted.size} counted`;
  return most > 0 === short > 0 ? null : `${most} days at worst, ${short} seasons short`;
});
