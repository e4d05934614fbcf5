// What the rows and cautions of this card mean and where they come from; loaded when somebody asks.

import type { KindWords } from "../../graph/words.ts";
import { DEFINITION } from "../sources.ts";

const FAO = "FAO Irrigation and Drainage Paper 56";

const RUN = "the weather in use, day by day";

const RELIABILITY = "Hashimoto, Stedinger and Loucks, Water Resources Research 18 (1982), second-hand";

export const words: KindWords = {
  rows: {
    hold_days:
      "A bed is watered only if what is left still covers so many days of the beds that come before it.",
    dip_doubt: [
      "How far a stick read at the tank is off, about two times in three. How long the water lasts is told with this doubt.",
      "common practice, no source",
    ],
    left_out: [
      "Parts whose numbers are missing or wrong, or that cannot work as drawn; the rest is worked out without them.",
      DEFINITION,
    ],
    reachable: ["The reachable water of all tanks that serve beds, full.", DEFINITION],
    peak_day_draw: ["What those beds need on a peak day, with the tanks' leaks and open water.", FAO],
    days_of_autonomy: [
      "The reachable water of all tanks that serve beds over what is taken on a peak day. Other draws, for animals or rinsing, are not in it.",
      `definition; bed need after ${FAO}`,
    ],
    need: [
      "What all crops would use, and what the ground lacked at planting, less the rain that the ground kept, over what reaches the roots; the mean of whole seasons.",
      FAO,
    ],
    got: [
      "Of the water poured on all beds what the ground kept within reach of roots, with what is lost on the way; the mean of whole seasons.",
      RUN,
    ],
    past_roots: ["Poured on beds, and more than their ground had room for; the mean of whole seasons.", RUN],
    seasons: ["Whole seasons in the record.", RUN],
    seasons_short: ["Whole seasons in which some bed was short on some day.", RUN],
    worst_season: [
      "The season with the most days on which any bed was short; of equals the one in which crops used least of what they could, then the first. Named by the year in which it begins.",
      RUN,
    ],
    worst_season_share_met: ["What all crops used over what they would have used in that season.", RUN],
    worst_season_days_short: ["Days of that season on which any bed was short.", RUN],
    share_met: ["What all crops used over what they would have used, all seasons together.", RUN],
    days_short: ["Days on which any bed was short; the mean of whole seasons.", RUN],
    longest_short_run: [
      "The most days on end on which some bed was short, over the record; where there is no bed, some other draw.",
      RUN,
    ],
    driest_year_share_met: [
      "The same share of the season that began in the calendar year with the least rain.",
      RUN,
    ],
    driest_year_days_short: [
      "Days short in the season that began in the calendar year with the least rain.",
      RUN,
    ],
    short_first: [
      "The bed with the earliest short day of that season; of equals the one that is served first.",
      RUN,
    ],
    short_first_day: ["The first day on which it is short.", RUN],
    spill: ["Roof water that found no room, in a usual season.", RUN],
    binding: [
      "On each short day a bed lacks what let least through at its last short watering: storage, what leaks and dries away, rain, a roof to fill its tank, a tankful, its refill, a line that runs, the pump's time, power, daylight for a panel alone, your time, what is held back, the bed's own rule, its being given up in a dry spell, or anything that waters it. Daylight is told instead of power where even a panel many times as big would have given less than half of it. This is the one of the most short days, each bed's counted for itself.",
      `${RUN}; the order of equal ones is our definition`,
    ],
    hands_time: [
      "Moving and setting up, holding hoses, filling, walking and pouring; the mean of whole seasons.",
      RUN,
    ],
    hands_trips: ["Rounds of draw and refill; the mean of whole seasons.", RUN],
    hands_weight: ["Water and cans of all rounds; the mean of whole seasons.", RUN],
    hands_distance: ["There and back of all rounds; the mean of whole seasons.", RUN],
    tightest_refill: ["After the largest watering from the tank it fills.", DEFINITION],
    tightest_interval: ["The shortest time between waterings at the peak.", DEFINITION],
    tightest_share: ["Over 100 % it is late.", DEFINITION],
    balance_error: [
      "In less out less change in store, over all that went through: measured from the days, not assumed.",
      RUN,
    ],
    energy_error: [
      "Of all batteries: in less used less lost less change in charge, over all that went through: measured from the days.",
      RUN,
    ],
    unmetered: [
      "Hoses with neither a pump's card nor a meter reading: the season takes their power as never running out.",
      DEFINITION,
    ],
    worst_date_lasts: [
      "From full and with no more rain after it: what the beds would use, other draws, leaks and open water, day by day.",
      RUN,
    ],
    worst_date: [
      "The day of the record's seasons from which full tanks are used up soonest, were there no more rain.",
      RUN,
    ],
    reliability_years: [
      "Of the whole seasons of the record, those in which no bed was short on any day.",
      RELIABILITY,
    ],
    reliability_days: ["Of all days of the whole seasons, those on which no bed was short.", RELIABILITY],
    reliability_volume: [
      "Water that beds and other draws got over that and what they went short of.",
      RELIABILITY,
    ],
    no_failure_storage: [
      "The smallest store that would have met every watering, draw, leak and open water of the record run through twice, all tanks taken as one, every litre of it within reach, and a day's rain at hand for that day's watering.",
      "sequent peak method: Thomas and Burden 1963, as in Loucks and van Beek, Water Resource Systems, table 11.2 (read in course notes)",
    ],
    week_drying: "No rain is counted on: what comes is a gift.",
    look_at_year: "Each bed then shows its days of that season.",
  },
  cautions: {
    left_out: ["Some parts are left out of the season. Each says why on its card.", DEFINITION],
    power_unknown: [
      "What {unmetered} of your pumps takes is not known, so these answers take their power as never running out. Put an ammeter in the lead, or give the pump a card.",
      DEFINITION,
    ],
  },
};
