// What no answer may pass, whatever the place: physical bounds of shares, efficiencies, health, and of water that is there.

import { CARD_KINDS } from "../../../src/kinds/index.ts";
import type { PanelSupply } from "../../../src/kinds/panel/light.ts";
import { type Lifting, pumpRun } from "../../../src/physics/pump-run.ts";
import { property } from "../harness.ts";
import type { Worked } from "../worked.ts";

/** Rounding of sums over twenty years, over what they sum. */
const SLACK = 1e-9;

/** Factors and efficiencies that are shares by what they mean, though shown as plain factors. */
const SHARES = /efficiency|health|share|^(met|reliability|season_met)$/;

/**
 * Amounts over a wish, a label or a usual value, of which either may be the larger: no bound by what they mean. What is
 * planted over the bed there is may pass one, and is flagged where it does. A pump's flow on a panel is over that at its
 * stated voltage, which a panel may pass; how far it may is a property of its own below.
 */
const MAY_PASS =
  /^(bed\.most_share|carry\.(limit_share|share_of_day)|season\.tightest_share|pump\.tested_share|delivery\.share_of_label|panel\.(direct_flow_share|share_(early|noon|late|overcast)))$/;

/** A label may be understated by this much, as the rows' own limits have it; more is a slip of the test. */
const HEALTH = 1.2;
const mostOf = (row: string): number => (/health/.test(row) ? HEALTH : 1);

const numbersOf = (worked: Worked): readonly (readonly [id: string, row: string, value: number])[] =>
  worked.worksheet.cards.flatMap((card) =>
    (CARD_KINDS[card.kind]?.rows ?? []).flatMap((row) => {
      const isShare =
        "measure" in row && (row.measure === "share" || (row.measure === "factor" && SHARES.test(row.name)));
      const value = worked.number(`${card.id}.${row.name}`);
      const name = `${card.kind}.${row.name}`;
      return isShare && value !== null && !MAY_PASS.test(name)
        ? [[`${card.id}.${row.name}`, name, value] as const]
        : [];
    }),
  );

property("no share, efficiency or health lies under nothing or over all there is", (worked) => {
  const wrong = numbersOf(worked).find(([, row, value]) => value < -SLACK || value > mostOf(row) + SLACK);
  return wrong === undefined ? null : `${wrong[0]} (${wrong[1]}) is ${wrong[2]}`;
});

property("no tank gives, holds or loses more than there is of its water", (worked) => {
  for (const id of worked.cardsOf("tank")) {
    const of = (row: string) => worked.number(`${id}.${row}`);
    const all = (of("capacity") ?? 0) * (of("count") ?? 0);
    for (const row of ["usable", "reachable", "dead_water", "stranded", "water_today"]) {
      const value = of(row) ?? 0;
      if (value < -SLACK * all || value > all * (1 + SLACK)) return `${id}.${row} is ${value} of ${all}`;
    }
    const [lowest, brim] = [of("lowest_level") ?? 0, of("water_height") ?? Infinity];
    if (lowest < -SLACK || lowest > brim * (1 + SLACK)) return `${id} fell to ${lowest} of ${brim}`;
  }
  return null;
});

property("no line carries a drop that it has not, and no pump makes more than is put in", (worked) => {
  for (const id of worked.cardsOf("line")) {
    const [head, eaten] = [worked.number(`${id}.head`), worked.number(`${id}.friction_head`)];
    if (head !== null && eaten !== null && eaten > Math.max(0, head) * (1 + 1e-6) + 1e-9)
      return `${id} eats ${eaten} of ${head}`;
  }
  return null;
});

/** A panel's open voltage over that on its label, at most: it rises by about 0.3 % a kelvin under 25 °C, here to -25 °C. */
const COLD = 1.15;
/** A day's steps may miss its brightest moment by so much of the voltage. */
const BETWEEN_STEPS = 1.001;

property(
  "a pump straight on a panel gives no more water than the panel's highest voltage can lift",
  (worked) => {
    for (const id of worked.cardsOf("panel")) {
      const lifting = ((worked.value(`${id}.pumps`) ?? []) as readonly (readonly Lifting[])[]).flat()[0];
      const [supply, highest] = [worked.value(`${id}.supply`), worked.number(`${id}.highest_voltage`)];
      if (!lifting || !supply || highest === null) continue;
      // Without light all that flows is what runs by itself, as with next to no voltage.
      const at = (voltage: number) =>
        pumpRun(lifting, { voltage: Math.max(voltage, 1e-6), resistance: 0 }).flow;
      const full = at(lifting.pump.ratedVoltage);
      const open = (supply as PanelSupply).panel.label.openVoltage * COLD;
      // Under cloud, or in another month, one that stands in its own shade by day has more light than on the clear day.
      const most = {
        share_early: highest * BETWEEN_STEPS,
        share_noon: highest * BETWEEN_STEPS,
        share_late: highest * BETWEEN_STEPS,
        share_overcast: open,
        direct_flow_share: open,
      };
      for (const [row, voltage] of Object.entries(most)) {
        const flow = (worked.number(`${id}.${row}`) ?? 0) * full;
        if (flow > at(voltage) * (1 + 1e-6)) return `${id}.${row} makes ${flow}, ${voltage} V ${at(voltage)}`;
      }
    }
    return null;
  },
);
