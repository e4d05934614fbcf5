// A pump straight on a panel: its share of full flow through a clear day and a dull one, and what suits it.

import type { Figure } from "../../graph/figure.ts";
import { all, outcomes } from "../../graph/outcomes.ts";
import { numberOf } from "../../graph/readers.ts";
import type { Model, ModelInput, Outputs, Value } from "../../graph/types.ts";
import { directDay, directRun, MOST_VOLTAGE_RATIO } from "../../physics/direct-drive.ts";
import { type Lifting, pumpRun } from "../../physics/pump-run.ts";
import { clearSkyRadiation, extraterrestrialRadiation } from "../../physics/sun.ts";
import { MONTH_NAMES } from "../../units/calendar-names.ts";
import { HOUR } from "../../units/constants.ts";
import type { MonthlySky } from "../weather/monthly-sky.ts";
import { curveIn, dayOn, lightAt, MEAN_DAYS, type PanelSupply } from "./light.ts";
import { PLACE, seasonOf, standingOf } from "./models.ts";

/** Share of a clear day's sunshine under a closed cover of cloud [-]: from memory. */
const OVERCAST = 0.2;

/** Stretches of the day for its hours: some five minutes each. */
const FINE = 193;

const DIRECT = [
  "direct_hours",
  "direct_full_hours",
  "direct_flow_share",
  "share_early",
  "share_noon",
  "share_late",
  "share_overcast",
  "highest_voltage",
  "overvoltage",
  "watts_over_pump",
  "volts_over_pump",
  "direct_day",
] as const;

/** Hours of the chart, by the sun. */
const [DAWN, DUSK, STEPS] = [4, 20, 32];

type Hour = (time: number) => number;

function dayFigure(clear: Hour, dull: Hour, at: number, month: string): Figure {
  const times = Array.from(
    { length: STEPS + 1 },
    (_, step) => (DAWN + ((DUSK - DAWN) * step) / STEPS) * HOUR,
  );
  const points = (of: Hour) => times.map((time) => [time, of(time)] as const);
  const hours = times.filter((time) => time % HOUR === 0 && clear(time) > 0);
  return {
    says: `Share of the pump's full flow through a clear and a dull day in ${month}, by the sun.`,
    note: "Full flow is that at the pump's stated voltage, through its hose. A dull day is taken to have a fifth of the clear one's light, from memory. The sun's time differs from your clock's by up to an hour or two.",
    columns: [
      { label: "By the sun", measure: "clock" },
      { label: "Clear day", measure: "share", bar: true },
      { label: "Dull day", measure: "share" },
    ],
    rows: hours.map((time) => [time, clear(time), dull(time)]),
    chart: {
      across: { label: "by the sun", measure: "clock" },
      up: { label: "of full flow", measure: "share" },
      curves: [
        { label: "clear day", part: "first", points: points(clear) },
        { label: "dull day", part: "second", points: points(dull) },
      ],
      marks: [{ label: "you water", across: at }],
    },
  };
}

function directOf(input: ModelInput, lifting: Lifting): Outputs {
  const supply = input.values["supply"] as PanelSupply;
  const sky = input.values["weather.sky"] as MonthlySky;
  const season = seasonOf(input);
  const month = season[Math.floor(season.length / 2)] ?? 0;
  const standing = standingOf(input);
  const above = extraterrestrialRadiation(standing.latitude, MEAN_DAYS[month] as number);
  const bright = clearSkyRadiation(above, numberOf(input, "site.elevation"));
  const air = sky.air[month] as number;
  const full = pumpRun(lifting, { voltage: lifting.pump.ratedVoltage, resistance: 0 }).flow;
  const share = (light: number, warmth = air) =>
    full > 0 ? directRun(lifting, supply.wireResistance, curveIn(supply, light, warmth)).flow / full : 0;
  const [day, dullDay] = [
    dayOn(standing, month, bright, FINE),
    dayOn(standing, month, bright * OVERCAST, FINE),
  ];
  const clear: Hour = (time) => share(lightAt(day, time));
  const dull: Hour = (time) => share(lightAt(dullDay, time));
  const whole = directDay(lifting, supply.wireResistance, day, (light) => curveIn(supply, light, air));
  const { label, bank } = supply.panel;
  const { pump } = lifting;
  const values: Record<(typeof DIRECT)[number], Value> = {
    direct_hours: whole.pumpingTime,
    direct_full_hours: whole.fullTime,
    direct_flow_share: share(supply.watering, supply.air),
    share_early: clear(9 * HOUR),
    share_noon: clear(12 * HOUR),
    share_late: clear(15 * HOUR),
    share_overcast: dull(12 * HOUR),
    highest_voltage: whole.highestVoltage,
    overvoltage: whole.highestVoltage / pump.ratedVoltage,
    watts_over_pump:
      (label.bestVoltage * label.bestCurrent * bank) / (pump.ratedVoltage * pump.openFlowCurrent),
    volts_over_pump: label.bestVoltage / (MOST_VOLTAGE_RATIO * pump.ratedVoltage),
    direct_day: dayFigure(clear, dull, numberOf(input, "site.water_at"), MONTH_NAMES[month] ?? ""),
  };
  return outcomes(values);
}

/** The first pump that hangs on it alone, at its first hose. */
function firstLifting(input: ModelInput): Lifting | null {
  const lists = input.values["pumps"] as readonly (readonly Lifting[])[];
  return lists.flat()[0] ?? null;
}

export const driving: Model = {
  name: "driving",
  takes: ["supply", "pumps", ...PLACE, "site.elevation", "site.water_at"],
  outputs: [...DIRECT, "drives"],
  run: (input) => {
    const lifting = firstLifting(input);
    return lifting
      ? { ...directOf(input, lifting), drives: { value: 1 } }
      : { ...all(DIRECT, { none: "no pump with a hose runs on it alone" }), drives: { value: 0 } };
  },
};
