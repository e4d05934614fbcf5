// From the cards' results to the plan of one season run: what is known goes in, what is not is left out with its reason.

import { firstMissing, type Missing, numberOf, numberOrNull, wordOf } from "../../graph/readers.ts";
import type { ModelInput } from "../../graph/types.ts";
import { waterersOf } from "../../network/beds.ts";
import { goesTo, leaningOn } from "../../network/gone.ts";
import { whyStopped, withStopped } from "../../network/network.ts";
import type { EtoChoice, LeftOut, SeasonInput } from "../../season/input.ts";
import { networkIn } from "../network-in.ts";
import type { PartField, SeasonShare } from "../season-share.ts";

export type Shares = Readonly<Record<string, SeasonShare>>;

/** Rows of every kind that the plan is put together from. */
export const planRows = (shares: Shares): Readonly<Record<string, readonly string[]>> =>
  Object.fromEntries(
    Object.entries(shares).map(([kind, { must = [], may = [] }]) => [kind, [...must, ...may]]),
  );

type Made = SeasonInput[PartField][number] | Missing;

function partsOf(input: ModelInput, field: PartField, shares: Shares, leftOut: LeftOut[]): readonly Made[] {
  const parts: Made[] = [];
  for (const [kind, { must = [], takes }] of Object.entries(shares)) {
    if (takes?.field !== field) continue;
    for (const { id, results } of input.cards[kind] ?? []) {
      const part = firstMissing(results, must) ?? takes.make(id, results, input);
      if ("reason" in part) leftOut.push({ id, ...part });
      else parts.push(part);
    }
  }
  return parts;
}

/** Parts that lean on a part that is not there go too; what is left is tied to nothing that is gone. */
function withoutDangling(plan: SeasonInput, titleOf: (id: string) => string): SeasonInput {
  const known = new Map(plan.leftOut.map((part) => [part.id, part]));
  const unlimited = plan.deliveries.filter(({ battery }) => battery === null).map(({ id }) => id);
  for (const { id, on } of leaningOn(plan.network, new Set(known.keys()), new Set(unlimited))) {
    const cause = known.get(on)?.cause;
    const reason = `left out with ${titleOf(on)}`;
    known.set(id, { id, reason, ...(cause === undefined ? {} : { cause }) });
  }
  const reasons = new Map([...known.values()].map(({ id, reason }) => [id, reason]));
  const network = withStopped(plan.network, reasons);
  const here = <Part extends { readonly id: string }>(parts: readonly Part[]): Part[] =>
    parts.filter(({ id }) => !known.has(id));
  return {
    ...plan,
    roofs: plan.roofs.map((part) => ({ ...part, drainsTo: goesTo(network, "catches", part.id) })),
    tanks: plan.tanks.map((part) => ({ ...part, overflowsTo: goesTo(network, "spills", part.id) })),
    lines: here(plan.lines).map((part) => ({ ...part, blocked: whyStopped(network, part.id) })),
    draws: here(plan.draws),
    deliveries: here(plan.deliveries),
    carries: here(plan.carries),
    beds: here(plan.beds).map((part) => ({ ...part, wateredBy: waterersOf(network, part.id) })),
    network,
    leftOut: [...known.values()],
  };
}

/** The plan of the season from everything that the season card surveys and takes. */
export function seasonInput(input: ModelInput, shares: Shares): SeasonInput {
  const leftOut: LeftOut[] = [];
  const of = <Field extends PartField>(field: Field) =>
    partsOf(input, field, shares, leftOut) as SeasonInput[Field];
  const plan: SeasonInput = {
    start: wordOf(input, "site.season_start"),
    end: wordOf(input, "site.season_end"),
    storageRule: wordOf(input, "site.storage_rule") === "use_first" ? "use_first" : "spill_first",
    minutesPerDay: numberOrNull(input, "site.minutes_per_day"),
    waterAt: numberOf(input, "site.water_at"),
    holdDays: numberOf(input, "hold_days"),
    rainScale: numberOf(input, "weather.rain_scale"),
    waterDensity: numberOf(input, "site.water_density"),
    eto: input.values["weather.eto_choice"] as EtoChoice,
    roofs: of("roofs"),
    tanks: of("tanks"),
    lines: of("lines"),
    tees: of("tees"),
    draws: of("draws"),
    deliveries: of("deliveries"),
    carries: of("carries"),
    batteries: of("batteries"),
    beds: of("beds"),
    network: networkIn(input),
    leftOut,
  };
  const titles = new Map(
    Object.values(input.cards).flatMap((cards) => cards.map((card) => [card.id, card.title])),
  );
  return withoutDangling(plan, (id) => titles.get(id) ?? id);
}
