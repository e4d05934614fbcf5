// What the rows and cautions of this card mean and where they come from; loaded when somebody asks.

import type { KindWords } from "../../graph/words.ts";
import { DEFINITION, PRACTICE } from "../sources.ts";

const RUN = "the weather in use, day by day";

const FAO = "FAO Irrigation and Drainage Paper 56";

export const words: KindWords = {
  rows: {
    length: "Of the part that is planted.",
    width: "Of the part that is planted.",
    contents: [
      "Each crop, the day it is planted out, and its share of the bed. Where your garden is slower or faster than the tables, give the day of the last picking too.",
      "your own entry",
    ],
    grown_in: "Pots have little soil and dry in a day or two.",
    pot_count: "All of one size.",
    pot_volume: "A tray of plugs counts as one pot.",
    pot_spread: "Looked at from above, when grown. Rain is not counted: leaves shed most of it past the pot.",
    soil: "Rub it wet between your fingers: gritty, silky or sticky.",
    root_depth: [
      "Tunnel beds that are watered often root no deeper than a foot.",
      "Univ. of Delaware Weekly Crop Update: 10 to 12 in for most",
    ],
    plant_count: "Only where single plants are watered, not the whole bed.",
    spot_area: "The wetted ground under one plant.",
    plant_spread: [
      "Ground that one plant's leaves cover when full grown. Only so much of the bed drinks; all of it where this is not said.",
      `${FAO}, examples 33 and 34`,
    ],
    wetted_share: "Strips or spots: the share of the ground that is wetted and rooted.",
    mingled: [
      "Tall and low ones mixed on the same ground: then the tall ones count for more.",
      "FAO Irrigation and Drainage Paper 56, example 46",
    ],
    young_days: ["Fresh transplants have hardly any roots: a week of a little every day is usual.", PRACTICE],
    cover: "Under cover no rain counts.",
    cover_by: "A factor if you have one measured; else the light is the better guess.",
    cover_factor: [
      "A tunnel dries its beds about three quarters as fast as open ground. An open bed alone in dry ground dries 1.1 to 1.3 times as fast.",
      "our default from published 0.60 to 0.90; 64 % by pans, Amiri et al. 2018",
    ],
    cover_light: [
      "New film more, old film less.",
      "69 % measured in a plastic solar greenhouse, Water 2022 14(15) 2410",
    ],
    cover_sides: "Sides up let some wind in.",
    mulch: "Straw, leaves or film over the soil.",
    ground_wetting: [
      "Ground between young plants that is wetted often dries much faster. Film keeps it dry: then this changes nothing.",
      "FAO Irrigation and Drainage Paper 56, Table 12 and Annex 7",
    ],
    wetted_every: "Rain and watering together.",
    wetted_depth: "Depth over the ground that is wetted.",
    air_corrects: [
      "Corrects the tables by the wind and damp of your record, where it has them. Never under cover.",
      "FAO Irrigation and Drainage Paper 56, Eq. 62",
    ],
    worth: [
      "When water is too little for all of them. Every bed is good to have until you say.",
      "your own word",
    ],
    worth_weight: [
      "10 where it must live, 3 where it is good to have, 1 where it may go, or a number of your own: at 10 it counts as much as ten times its ground at 1.",
      `our definition; ${PRACTICE}`,
    ],
    method: "How the water gets onto the soil.",
    efficiency: [
      "The rest runs off, blows away or sinks too deep.",
      "FAO Irrigation Training Manual 4, read second-hand; assumed for hand watering",
    ],
    watered_by: "First what is tried first; the next gives what the one before could not.",
    priority: "1 is watered first when water is short.",
    rule: "By the soil is thrifty; by the calendar is simple.",
    weekdays: "Days of the week on which you can be there.",
    weekday_amount: "What the soil lacks by then, or the same amount every time.",
    fixed_volume: "Each time, when a set amount is given.",
    fixed_every: "When watered by the calendar.",
    decides_on: "Looking again in the morning saves a watering when rain came in the night.",
    let_go_from:
      "From that day of the season the bed gets no more water once a dry spell is as long as you say below.",
    let_go_dry_days: "Days on end under 0.04 in, 1 mm.",
    last_soaked: "For what it needs today.",
    can_volume: "To say a watering in cans, where no cans of this worksheet water it: else theirs count.",
    usual_volume: [
      "Put in what you give, to set it beside what is worked out. 20 gallons is often said for a small tunnel: common practice, no source.",
      `${PRACTICE}, for a small tunnel`,
    ],
    soak_tried: "To say how deep that should have gone.",
    needs_today: [
      "From the coming week, run day by day from today's levels and soils without rain; without a day for today, from peak days and the record's seasons.",
      RUN,
    ],
    lacks_today: [
      "What its crops used since it was last soaked through, less the rain that counted, over what reaches the roots.",
      `${RUN}; ${FAO}, chapter 8`,
    ],
    week_days: [
      "Days on which it asks for water where it is never refused; the week's lines above say what it gets.",
      RUN,
    ],
    week_each: ["The mean of what it asks for then; the week's lines say what it gets.", RUN],
    area: ["Length times width.", DEFINITION],
    drying_there: [
      "The factor given; or what short grass would use in the light and wind under the cover over what it would under open sky, the season's days together.",
      `${FAO}, Eq. 6: Penman-Monteith`,
    ],
    growing: [
      "From planting to the last picking, with the days of the four stages: young, spreading, full, ripening.",
      `${FAO}, Table 11, stretched to your own days where you gave them`,
    ],
    taken_from: ["Crops that no table has are taken from one that is like them.", "by analogy, as said"],
    peak_day_need: [
      "Crop use less the rain that counts, over what reaches the roots: of each season the highest ten-day mean, of those the one that nine seasons in ten stay under.",
      `${FAO}; the quantile is our definition`,
    ],
    season_need: [
      "What its crops would use in the season, and what the ground lacked at planting, less the rain that the ground kept in this very run, over what reaches the roots; the mean of the record's seasons. Drier soil keeps more rain, so it moves a little with what the bed gets.",
      FAO,
    ],
    lacked_at_planting: [
      "What the ground lacked, as deep as roots may go, when something was planted or the season began; what the crop before it in that season had left short is not counted twice.",
      `${FAO}, Eq. 73 and 74 for the bare ground before`,
    ],
    potential_use: ["What the crops use in a season when they are never short.", FAO],
    rain_counted: [
      "Rain on the bed that its ground had room for while something stood there; none under cover.",
      `${FAO}, chapter 8`,
    ],
    easy_volume: [
      "What roots find on the peak days before they hold back, over what reaches them: less of it the faster they drink; of several crops, the one that has least.",
      `${FAO}, chapter 8 and Table 22, footnote 2`,
    ],
    watering_volume: [
      "What the bed needs in as many peak days as it lasts, at most what is within easy reach.",
      `${FAO}, chapter 8: readily available water`,
    ],
    watering_interval: [
      "What is within easy reach over a peak day's need, in whole days and at least one.",
      FAO,
    ],
    asked_volume: [
      "What its rule gives at once: the set amount, or the most that the soil lacks on any of its days were it never refused; by the soil, a good watering.",
      DEFINITION,
    ],
    asked_interval: ["Days between two waterings by its rule, the fewest of them.", DEFINITION],
    cans_per_watering: ["What is given at once over the can that waters it, or your own.", DEFINITION],
    trips_per_watering: ["What is given at once over what goes in one trip.", DEFINITION],
    weight_per_trip: ["Water and cans together.", "definition: water is about 8.34 lb a US gallon"],
    time_by_hand: ["Trips times a round.", DEFINITION],
    time_by_pump: ["What is given at once over the flow, with moving and setting up.", DEFINITION],
    usual_lasts: ["What you usually give over a peak day's need.", `${PRACTICE}, beside the computed figure`],
    usual_compared: [
      "What you usually give, beside a good watering and a peak day's need.",
      `${PRACTICE}, beside the computed figure`,
    ],
    first_soak: [
      "From soil with nothing left for roots to full, as deep as roots go, over what reaches the roots.",
      `${FAO}, Table 19 and Eq. 82`,
    ],
    soak_passes: [
      "The depth to be given over what the ground holds before it runs off.",
      `${PRACTICE}: about a quarter inch at once on loam, less on clay`,
    ],
    soak_pass_volume: ["The soak over its goes.", DEFINITION],
    soak_wait: [
      "A go's depth over the rate at which the soil takes water in.",
      "USDA maximum precipitation rates, read second-hand; Colorado Division of Water Resources",
    ],
    soak_time: ["Goes times the wait.", DEFINITION],
    soak_reaches: [
      "What you gave, less what is lost, over what dry soil holds. Dig and look: cracks and hard layers change it.",
      `${FAO}, Table 19`,
    ],
    season_got: [
      "Of what was poured, what the ground kept within reach of the roots, with what is lost on the way; never more than it needs. The mean of the record's seasons.",
      RUN,
    ],
    season_past_roots: [
      "Poured, and more than the ground had room for; the mean of the record's seasons.",
      RUN,
    ],
    share_met: [
      "What the crops used over what they would have used, all seasons together.",
      `${RUN}; ${FAO}, Eq. 84`,
    ],
    days_short: [
      "Days of the season on which its crops used less than they could, by more than a thousandth, whatever the reason.",
      `${RUN}; ${FAO}, Eq. 84`,
    ],
    outside_days: [
      "Days a year on which something stands here before the season begins or after it ends. Nobody waters then, and these days are in no share and no blame. Set the season's days to take them in.",
      RUN,
    ],
    rule_kept: ["Of the set amounts that were due, what was given.", RUN],
    goes_short_by: ["What it lacked on most of its short days.", RUN],
    likely_loss: [
      "How much of the harvest thirst takes, by the published response of the crop that loses most; the mean of the record's seasons.",
      `${FAO}, Eq. 90; responses of Table 24, from memory`,
    ],
    days_helped: [
      "Days on which a later way in its list gave what an earlier one could not: by can, say, when the battery was flat.",
      RUN,
    ],
    lacked_by: [
      "Days of a usual season on which its first way could not give all it asked for, by what was lacking; another way may have helped.",
      RUN,
    ],
  },
  cautions: {
    watered_by_nobody: ["Nothing waters this bed. Choose a pump or cans.", DEFINITION],
    no_need: [
      "This bed asks for no water: {no_need_why}. Check its days of planting, the season's first and last day, and the drying.",
      DEFINITION,
    ],
    crowded: [
      "From {crowded_from} what stands here at once takes {most_share} of the bed, and is counted so. Give shares that add up to 100 %, or a last picking before the next is planted.",
      DEFINITION,
    ],
    field_soil_in_pots: [
      "Garden soil packs tight in a pot and drains badly. Choose potting mix, if that is what is in them: it holds more than most soils, and the days between waterings hang on it.",
      PRACTICE,
    ],
    roof_water_on_food: [
      "Roof water goes on the soil, not on the leaves, and in the morning or well before picking. Wash what you eat raw.",
      "Illinois Extension and Rutgers FS1218 on rain barrels and vegetables",
    ],
    soak_in_goes: [
      "Soak a dry bed in {soak_passes} goes of {soak_pass_volume}, {soak_wait} apart: more at once runs off. Then dig and look how deep it went.",
      `${PRACTICE}; intake after USDA, read second-hand`,
    ],
    drip_by_gravity: [
      "Drip lines are made for 8 psi and more. From a raised tank they give a third to a half of that, and clog sooner: run one into a bucket and time it.",
      "square-root law of a turbulent emitter, from memory; Texas Tech thesis on drip at low pressure",
    ],
    soaker_by_gravity: [
      "What a soaker hose gives from a raised tank differs from hose to hose. Measure yours with a bucket.",
      PRACTICE,
    ],
  },
};
