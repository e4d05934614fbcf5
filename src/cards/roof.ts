// A roof: what each rain brings, and whether its downspouts can carry a storm.

import roofs from "../../shared/roofs.json";
import type { CardKind, Model, Typed } from "../graph/types.ts";
import { roofCatch } from "../season/roof-catch.ts";
import { numberOf, outcomes, recordOf, wordOrNull } from "./inputs.ts";
import { COSTS, choice, date, formula, given, link, output, RECORD } from "./rows.ts";

const MATERIALS = Object.fromEntries(roofs.materials.map((material) => [material.word, material.label]));
const COEFFICIENTS: Readonly<Record<string, Typed>> = Object.fromEntries(
  roofs.materials.map((material) => [material.word, [material.runoff_coefficient.value, "1"]]),
);

const yearly: Model = {
  name: "yearly_catch",
  takes: [
    "footprint",
    "runoff_coefficient",
    "losses",
    "wetting_loss",
    "first_flush",
    "catch_from",
    "catch_until",
    "weather.record_in_use",
    "weather.rain_scale",
  ],
  optional: ["catch_from", "catch_until"],
  record: "weather.record_in_use",
  outputs: ["mean_yearly_catch", "driest_year_catch"],
  run: (input) => {
    const inCoefficient = input.values["losses"] === "in_coefficient";
    const caught = roofCatch(
      {
        footprint: numberOf(input, "footprint"),
        runoffCoefficient: numberOf(input, "runoff_coefficient"),
        wettingLoss: inCoefficient ? 0 : numberOf(input, "wetting_loss"),
        firstFlush: inCoefficient ? 0 : numberOf(input, "first_flush"),
        catchFrom: wordOrNull(input, "catch_from"),
        catchUntil: wordOrNull(input, "catch_until"),
      },
      recordOf(input),
      numberOf(input, "weather.rain_scale"),
    );
    return outcomes(
      { mean_yearly_catch: caught.meanYearly, driest_year_catch: caught.driestYear },
      "the record has no whole calendar year",
    );
  },
};

export const roof: CardKind = {
  kind: "roof",
  label: "Roof",
  purpose: "Catches rain and sends it to a tank.",
  rows: [
    given(
      "footprint",
      "Footprint",
      "area",
      [200, "ft2"],
      "The ground it covers, seen from straight above, out to the gutter line. Never the sloped surface.",
    ),
    choice("material", "Material", MATERIALS, "metal", "What the rain lands on."),
    given(
      "runoff_coefficient",
      "Share that runs off",
      "factor",
      { by: "material", pick: COEFFICIENTS },
      "Of the rain on the roof, the share that reaches the gutter.",
      { max: 1 },
    ),
    choice(
      "losses",
      "Lost on the way",
      { each_rain: "a little of each rain", in_coefficient: "already in the share that runs off" },
      "each_rain",
      "Either the losses below, or a yearly share that already contains them. Never both.",
      { minor: true },
    ),
    given(
      "wetting_loss",
      "Wets the roof, each rain day",
      "rain",
      [0.5, "mm"],
      "Rain that only wets the roof and dries again.",
      { max: 0.02 },
    ),
    given(
      "first_flush",
      "First flush, each rain",
      "rain",
      [0.5, "mm"],
      "The first dirty water of a rain, led away. An event ends with a day under 1 mm.",
      { max: 0.02 },
    ),
    link("drains_to", "Drains to", ["tank"], "drains to no tank", "The tank its downspout leads to."),
    date(
      "catch_from",
      "Connected from",
      "month_day",
      null,
      "Leave it empty when it is connected all year.",
      "connected all year",
    ),
    date(
      "catch_until",
      "Connected until",
      "month_day",
      null,
      "Take it off before hard frost.",
      "connected all year",
    ),
    formula(
      "catch_per_depth",
      "A rain brings",
      "catch_rate",
      "footprint * runoff_coefficient",
      "Footprint times the share that runs off: water for each depth of rain, before what only wets the roof.",
      "definition: 1 in on 1 ft² is 144/231 gal",
    ),
    output(
      "mean_yearly_catch",
      "In a usual year",
      "yearly_catch",
      "yearly_volume",
      "Every rain of the record, less what wets the roof and what is flushed, over the whole calendar years.",
      RECORD,
    ),
    output(
      "driest_year_catch",
      "In the driest",
      "yearly_catch",
      "yearly_volume",
      "The same for the calendar year with the least rain.",
      RECORD,
    ),
    given(
      "design_storm",
      "Hard downpour to cope with",
      "rain_rate",
      [4, "in/h"],
      "A local five-minute rain that comes once in ten years; ask your building office.",
      { minor: true, max: 0.0002 },
    ),
    formula(
      "storm_flow",
      "Then runs off",
      "flow",
      "footprint * design_storm",
      "Footprint times the downpour, all of it running off.",
      "definition: 1 in/h on 96.25 ft² is 1 gpm",
      { minor: true },
    ),
    ...COSTS,
  ],
  models: [yearly],
  cautions: [
    {
      id: "roof_water_not_drinking",
      text: "Roof water is not drinking water. Keep it off leaves you eat raw, and keep roofs with lead, asbestos or treated timber off your tanks. Local health rules decide.",
      beside: "mean_yearly_catch",
      source: "UConn Extension; BRANZ Build 151 p. 30",
      weight: "harm",
    },
    {
      id: "gutter_heights",
      text: "Gutters are cleaned from a ladder: a firm footing and somebody to hold it. Tunnel film carries nobody. Take gutters off a tunnel before snow.",
      beside: "footprint",
      source: "UConn Extension on tunnel gutters; ladder advice is common practice, no source",
      weight: "harm",
    },
    {
      id: "drains_nowhere",
      where: { row: "drains_to", state: "none" },
      text: "This roof drains to no tank, so its rain helps nobody. Choose the tank it leads to.",
      beside: "drains_to",
      source: "definition",
      weight: "trouble",
    },
  ],
};
