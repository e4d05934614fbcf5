// What the rows and cautions of this card mean and where they come from; loaded when somebody asks.

import type { KindWords } from "../../graph/words.ts";
import { DEFINITION, PRACTICE } from "../sources.ts";

const RUN = "the weather in use, day by day";

export const words: KindWords = {
  rows: {
    from: "The tank the cans are filled from.",
    can_volume: "Filled as you carry it.",
    can_weight: ["Steel or plastic.", PRACTICE],
    cans_at_once: "Two balance better than one.",
    distance: "One way.",
    weight_limit: [
      "Your own limit. A full bucket lifted from near the ground once a minute comes out at 40 lb, 18 kg, by the lifting equation.",
      "revised NIOSH lifting equation, a good grip close to the body, worked out by us",
    ],
    pace: ["Loaded, on soft ground. Brisk empty walking is 5 ft/s, 1.5 m/s.", PRACTICE],
    fill_time: ["By dipping or from a tap.", PRACTICE],
    pour_time: ["Slowly, onto the soil.", PRACTICE],
    round_volume: ["A can times the cans.", DEFINITION],
    round_time: ["Filling and pouring each can, and the way there and back.", DEFINITION],
    weight_per_trip: ["Water and cans together.", "definition: water is about 8.34 lb a US gallon"],
    limit_share: ["The weight of a trip over your limit.", DEFINITION],
    largest_watering: ["The bed that takes the most at once.", DEFINITION],
    trips_per_watering: ["The largest watering over what goes in one trip.", DEFINITION],
    time_per_watering: ["Trips times the time of a round.", DEFINITION],
    weight_per_watering: ["Trips times the weight of one.", DEFINITION],
    share_of_day: ["The largest watering over the time you have a day.", DEFINITION],
    season_volume: ["What was carried in a usual season.", RUN],
    season_trips: ["Rounds of draw and refill in a usual season.", RUN],
    season_time: ["Filling, walking and pouring in a usual season.", RUN],
    season_weight: ["Trips in a season times the weight of one.", DEFINITION],
    season_distance: ["Trips in a season times the way there and back.", DEFINITION],
  },
  cautions: {
    over_limit: [
      "{weight_per_trip} at a time is more than the {weight_limit} you want to carry. Fill the cans less, or carry one.",
      "your own limit",
    ],
    lifting: [
      "{weight_per_trip} at a time is more than the 51 lb, 23 kg, that the NIOSH lifting equation allows at its very best. Smaller cans, more trips.",
      "revised NIOSH lifting equation, load constant 23 kg",
    ],
    lifting_care: [
      "Bend the knees, keep the load close, rest often. A bad back or heart: ask a doctor first.",
      "NIOSH and HSE lifting guidance; common practice",
    ],
    carrying_far: [
      "Put the cans down on the way: guidance says to carry no further than about 33 ft, 10 m, without a rest.",
      "UK HSE lifting guidance, read second-hand",
    ],
  },
  frost: {
    text: "Turn the cans over.",
    source: PRACTICE,
  },
};
