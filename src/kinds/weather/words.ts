// What the rows and cautions of this card mean and where they come from; loaded when somebody asks.

import type { KindWords } from "../../graph/words.ts";
import { RECORD } from "../sources.ts";

const FAO = "FAO Irrigation and Drainage Paper 56, ch. 4";

export const words: KindWords = {
  rows: {
    record_kind: ["A record of your own is used where there is one.", RECORD],
    first_day: ["The first day of the record.", RECORD],
    last_day: ["The last day of the record.", RECORD],
    days: ["Days from the first to the last.", RECORD],
    missing_days: ["Days of the record without a reading.", RECORD],
    whole_years: [
      "Calendar years of the record without a missing day: yearly rain is told from them.",
      RECORD,
    ],
    mean_yearly_rain: ["The mean over the record's whole calendar years.", RECORD],
    driest_year: ["The whole calendar year with the least rain.", RECORD],
    driest_year_rain: ["The rain of the driest whole calendar year.", RECORD],
    longest_dry_run: ["The most days on end with less than 0.04 in, 1 mm, each.", RECORD],
    dry_run_from: ["The first day of the longest dry run.", RECORD],
    frost_said:
      "Where your record has no temperatures, or a hollow of yours freezes sooner than its station: the day from which on you look out for frost.",
    mean_yearly_eto: [
      "What short grass would use in a whole calendar year; the mean of them.",
      "FAO Irrigation and Drainage Paper 56",
    ],
    peak_day_eto: [
      "Of each season the highest ten-day mean; of those the one that nine seasons in ten stay under.",
      "FAO Irrigation and Drainage Paper 56; the quantile is our definition",
    ],
    eto_method: [
      "Your monthly figures or your pan if chosen; else warmth with wind, damp or sun where the record has any of these, warmth alone where it has only temperatures, and on days without any the monthly warm and cold figures.",
      "FAO Irrigation and Drainage Paper 56: Penman-Monteith, Eq. 6; Hargreaves, Eq. 52; a pan, Eq. 55",
    ],
    days_from_normals: [
      "Days on which the monthly warm and cold figures stand in for temperatures that the record lacks.",
      RECORD,
    ],
    rain_scale: "1.1 if your gauge shows a tenth more than the record's, over a season or more.",
    eto_factor: "0.9 is a fair guess by a cool sea; 1 elsewhere.",
    eto_factor_reason: "What that factor rests on, for you and whoever reads this later.",
    eto_from:
      "Monthly figures from a nearby farm advisory office are as good as most formulas. A pan is a class A pan read each day.",
    monthly_eto:
      "What short grass would use a day (ETo, reference evapotranspiration), the mean of each month, January first.",
    normal_rain: "Rain of a usual January, February and so on, for a made-up record.",
    normal_wet_days: "Days with rain in a usual month.",
    normal_highs: "Mean daily high, month by month.",
    normal_lows: "Mean daily low, month by month.",
    years: "How many years of made-up days.",
    seed: "Another number gives other made-up years with the same monthly figures.",
    pan_readings:
      "Mean of each month, January first. Readings count for ten days or longer, not for single days.",
    pan_place: "What lies upwind of it.",
    pan_damp: "Mean relative humidity of the day.",
    pan_coefficient: [
      "From the tables for where the pan stands; give your own where you know better. A pan painted black loses a tenth more, one under a screen a tenth less.",
      FAO,
    ],
  },
  cautions: {
    warmth_of_normals: [
      "{days_from_normals} days of the record have no temperatures. How fast things dried on them is told from the monthly warm and cold figures: make sure that these are of your place.",
      "FAO-56 Eq. 52 is for days; from monthly means it is rougher",
    ],
    made_up_weather: [
      "This weather is made up from monthly figures. Real dry spells run longer. Bring in a record from near you before you buy anything.",
      "Geng et al. 1986 and our comparison with a real record",
    ],
  },
};
