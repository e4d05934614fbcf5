// What a bed's card says: how much, how often, by what means, whether it will get it, and what the season was like.

import type { Row } from "../../graph/types.ts";
import { REASON_OPTIONS } from "../../telling/words/bounds.ts";
import { DEFINITION, formula, output, PRACTICE } from "../rows.ts";
import { BED_NOW_ROWS } from "./now-rows.ts";
import { BED_SEASON_ROWS } from "./season-outputs.ts";

const FAO = "FAO Irrigation and Drainage Paper 56";
const RUN = "your record, day by day";

const HIDDEN: readonly Row[] = [
  output(
    "planted_area",
    "Planted",
    "ground",
    "area",
    "Length times width, or pots times what each shades.",
    DEFINITION,
    { hidden: true },
  ),
  output(
    "watered_share",
    "Share watered",
    "ground",
    "share",
    "Spots times plants over the bed, or the share given.",
    DEFINITION,
    { hidden: true },
  ),
  output(
    "root_room",
    "Room for roots",
    "ground",
    "depth",
    "As deep as roots go, or the pots' soil over what each shades.",
    DEFINITION,
    { hidden: true },
  ),
];

const NEED: readonly Row[] = [
  formula("area", "Ground", "area", "length * width", "Length times width.", DEFINITION, {
    minor: true,
    when: { row: "grown_in", is: ["ground"] },
  }),
  output(
    "drying_there",
    "Dries, to open sky",
    "cover_drying",
    "factor",
    "The factor given; or Penman-Monteith with the light and wind under the cover over that of open sky, the season's days together.",
    `${FAO}, Eq. 6`,
    { minor: true },
  ),
  output(
    "growing",
    "Stands",
    "crops_said",
    "text",
    "From planting to the last picking, with the days of the four stages: young, spreading, full, ripening.",
    `${FAO}, Table 11, stretched to your own days where you gave them`,
    { minor: true },
  ),
  output(
    "taken_from",
    "Not in the tables",
    "crops_said",
    "text",
    "Crops that no table has are taken from one that is like them.",
    "by analogy, as said",
    { minor: true, quiet: true },
  ),
  output(
    "peak_day_need",
    "Needs on a peak day",
    "demand",
    "volume",
    "Crop use less the rain that counts, over what reaches the roots: of each season the highest ten-day mean, of those the one that nine seasons in ten stay under.",
    `${FAO}; the quantile is our definition`,
  ),
  output(
    "season_need",
    "Needs in a usual season",
    "demand",
    "volume",
    "Crop use over the season less the rain that counted, over what reaches the roots; the mean of the record's seasons.",
    FAO,
    { relations: ["(potential_use - rain_counted) / efficiency"] },
  ),
  output(
    "potential_use",
    "Would use with water enough",
    "demand",
    "volume",
    "What the crops use in a season when they are never short.",
    FAO,
    { minor: true },
  ),
  output(
    "rain_counted",
    "Rain that counts, a season",
    "demand",
    "volume",
    "Rain on the bed that its roots had room for; none under cover.",
    `${FAO}, chapter 8`,
  ),
];

const GIVING: readonly Row[] = [
  output(
    "easy_depth",
    "Easy half, as a depth",
    "demand",
    "depth",
    "What full-grown roots find before they hold back; of several crops, the one that has least.",
    `${FAO}, chapter 8: readily available water`,
    { hidden: true },
  ),
  output(
    "watering_volume",
    "A good watering",
    "demand",
    "volume",
    "What fills the roots' soil again when the easy half is gone, over what reaches the roots; of several crops, the one that has least.",
    `${FAO}, chapter 8: readily available water`,
    { relations: ["easy_depth * planted_area * watered_share / efficiency"] },
  ),
  output(
    "watering_interval",
    "Then lasts, at the peak",
    "demand",
    "span",
    "A good watering over a peak day's need.",
    FAO,
    { relations: ["watering_volume / peak_day_need * 1 day"] },
  ),
  formula(
    "cans_per_watering",
    "A watering in cans",
    "count",
    "ceil(watering_volume / can_volume)",
    "A good watering over your can.",
    DEFINITION,
  ),
  output(
    "trips_per_watering",
    "By hand: trips",
    "season.hands",
    "count",
    "A good watering over what goes in one trip.",
    DEFINITION,
    { quiet: true },
  ),
  output(
    "weight_per_trip",
    "Weight a trip",
    "season.hands",
    "mass",
    "Water and cans together.",
    "definition: water is about 8.34 lb a US gallon",
    { quiet: true },
  ),
  output("time_by_hand", "By hand it takes", "season.hands", "duration", "Trips times a round.", DEFINITION, {
    quiet: true,
  }),
  output(
    "time_by_pump",
    "By pump it takes",
    "season.hands",
    "duration",
    "A good watering over the flow, with moving and setting up.",
    DEFINITION,
    { quiet: true },
  ),
  formula(
    "usual_lasts",
    "What you usually give lasts, at the peak",
    "span",
    "usual_volume / peak_day_need * 1 day",
    "What you usually give over a peak day's need.",
    `${PRACTICE}, beside the computed figure`,
    {
      minor: true,
      none: [{ if: "peak_day_need <= 0 gal", reason: "it needs nothing on a peak day" }],
      quiet: true,
    },
  ),
  output(
    "usual_compared",
    "What you usually give",
    "compare",
    "text",
    "What you usually give, beside a good watering and a peak day's need.",
    `${PRACTICE}, beside the computed figure`,
    { fills: true, quiet: true },
  ),
];

const SOAK: readonly Row[] = [
  output(
    "first_soak",
    "First soak, if dry to the bottom",
    "soak",
    "volume",
    "From soil with nothing left for roots to full, as deep as roots go, over what reaches the roots.",
    `${FAO}, Table 19 and Eq. 82`,
    { minor: true },
  ),
  output(
    "soak_passes",
    "In so many goes",
    "soak",
    "count",
    "The depth to be given over what the ground holds before it runs off.",
    `${PRACTICE}: about a quarter inch at once on loam, less on clay`,
    { minor: true },
  ),
  output("soak_pass_volume", "Each go", "soak", "volume", "The soak over its goes.", DEFINITION, {
    minor: true,
    relations: ["first_soak / soak_passes"],
  }),
  output(
    "soak_wait",
    "Wait between two",
    "soak",
    "duration",
    "A go's depth over the rate at which the soil takes water in.",
    "USDA maximum precipitation rates, read second-hand; Colorado Division of Water Resources",
    { minor: true },
  ),
  output("soak_time", "All of it takes", "soak", "duration", "Goes times the wait.", DEFINITION, {
    minor: true,
    relations: ["soak_passes * soak_wait"],
  }),
  output(
    "soak_reaches",
    "Your soak goes down to",
    "soak",
    "depth",
    "What you gave, less what is lost, over what dry soil holds. Dig and look: cracks and hard layers change it.",
    `${FAO}, Table 19`,
    { minor: true, quiet: true },
  ),
];

const SEASON: readonly Row[] = [
  output("met", "Gets in a season", "season.run", "volume", "What it was given in a usual season.", RUN),
  output(
    "share_met",
    "Share of its thirst met",
    "season.run",
    "share",
    "What the crops used over what they would have used, all seasons together.",
    `${RUN}; ${FAO}, Eq. 84`,
  ),
  output(
    "days_short",
    "Days short, a season",
    "season.run",
    "count",
    "Days on which the soil was so dry that the crop held back.",
    `${RUN}; ${FAO}, Eq. 84`,
  ),
  output(
    "goes_short_by",
    "It goes short because",
    "season.run",
    "text",
    "What it lacked on most of its short days.",
    RUN,
    { options: REASON_OPTIONS, minor: true, quiet: true },
  ),
  output(
    "likely_loss",
    "Harvest likely lost, a season",
    "season.run",
    "share",
    "How much of the harvest thirst takes, by the published response of the crop that loses most; the mean of the record's seasons.",
    `${FAO}, Eq. 90; responses of Table 24, from memory`,
    { minor: true },
  ),
];

/** Result rows of a bed, in the order in which they are shown. */
export const BED_RESULTS: readonly Row[] = [
  ...BED_NOW_ROWS,
  ...HIDDEN,
  ...NEED,
  ...GIVING,
  ...SOAK,
  ...SEASON,
  ...BED_SEASON_ROWS,
];
