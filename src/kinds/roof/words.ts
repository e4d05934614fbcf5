// What the rows and cautions of this card mean and where they come from; loaded when somebody asks.

import type { KindWords } from "../../graph/words.ts";
import { COST_WORDS, DEFINITION, PRACTICE, RECORD } from "../sources.ts";

const LEADERS = "National Standard Plumbing Code 2006, Table 13.6.1, leaders 7/24 full; Wyly and Eaton 1961";

export const words: KindWords = {
  rows: {
    dip_rain:
      "One rain on one day, in your own gauge, with the tank dipped before and after it: nothing ran over, and nothing else came in or went out.",
    dip_catch: [
      "What that rain should bring: the share that runs off, less what wets the roof and what is flushed. Enter what your dip-stick says it brought.",
      DEFINITION,
    ],
    coefficient_in_use: [
      "What your dipped rain taught: what it brought over the area, with what was lost on the way, over its depth. Without one, the share given above.",
      "water balance of the roof in one rain",
    ],
    footprint:
      "Seen from straight above, out to the gutter line. Never the sloped surface. Leave it empty to work it out from length and width.",
    length: "Only used where the ground it covers is not given.",
    width: "Level across, not up the slope.",
    overhang: "On every side, seen from above.",
    material: "What the rain lands on.",
    runoff_coefficient: "Of the rain on the roof, the share that reaches the gutter.",
    losses: "Either the losses below, or a yearly share that already contains them. Never both.",
    wetting_loss: "Rain that only wets the roof and dries again.",
    first_flush:
      "The first dirty water of a rain, led away; most of the dirt comes in the first 0.05 in, 1.2 mm. An event ends with a day under 0.04 in, 1 mm.",
    drains_to: "The tank its downspout leads to.",
    catch_from: "Leave it empty when it is connected all year.",
    catch_until: "Take it off before hard frost.",
    catch_per_depth: [
      "The ground it covers times the share that runs off: water for each depth of rain, before what only wets the roof.",
      "definition: 1 in on 1 ft² is 144/231 gal",
    ],
    mean_yearly_catch: [
      "Every rain of the record, less what wets the roof, what is flushed and what filters throw away, over the whole calendar years.",
      RECORD,
    ],
    driest_year_catch: ["The same for the calendar year with the least rain.", RECORD],
    frost_days: [
      "Days of a usual calendar year with a low under freezing while the roof is connected.",
      RECORD,
    ],
    design_storm: "A local five-minute rain that comes once in ten years; ask your building office.",
    storm_flow: [
      "The ground it covers times the downpour, all of it running off.",
      "definition: 1 in/h on 96.25 ft² is 1 gpm",
    ],
    downspout_diameter: "Round ones of 2 to 8 in, 5 to 20 cm.",
    downspout_count: "That share this roof's water.",
    downspout_capacity: [
      "What a round downspout of this bore carries with room for the air in its middle, times how many there are.",
      LEADERS,
    ],
    first_flush_volume: ["The ground it covers times the depth that is led away.", DEFINITION],
    standpipe_bore: ["The pipe that holds it back.", PRACTICE],
    standpipe_length: ["The first flush over the pipe's section.", "geometry: 18.4 in of 4 in pipe a gallon"],
    ...COST_WORDS,
  },
  cautions: {
    roof_water_not_drinking: [
      "Roof water is not drinking water. Keep it off leaves you eat raw, and keep roofs with lead, asbestos or treated timber off your tanks. Local health rules decide.",
      "UConn Extension; BRANZ Build 151 p. 30",
    ],
    gutter_heights: [
      "Gutters are cleaned from a ladder: a firm footing and somebody to hold it. Tunnel film carries nobody. Take gutters off a tunnel before snow.",
      "UConn Extension on tunnel gutters; ladder advice is common practice, no source",
    ],
    drains_nowhere: [
      "This roof drains to no tank, so its rain helps nobody. Choose the tank it leads to.",
      DEFINITION,
    ],
    downspout_too_small: [
      "The downpour brings {storm_flow} and the downspouts carry {downspout_capacity}: the rest goes over the gutter and down the wall. A wider downspout, or one more.",
      "National Standard Plumbing Code 2006, Table 13.6.1",
    ],
    connected_in_frost: [
      "In a usual year it freezes on {frost_days} days while this roof is connected. Before the first hard frost turn the downspout away from the tank, and drain the first-flush pipe, hoses, filters, float valves and the pump; leave the taps open. Full tanks split: leave room at the top.",
      PRACTICE,
    ],
    drained_for_winter: [
      "When you take it off for the winter, drain what its water runs through as well: the first-flush pipe, hoses, filters, float valves and the pump; leave the taps open. It freezes on {frost_days_off} days of a usual winter without it. Full tanks split: leave room at the top.",
      PRACTICE,
    ],
    asphalt_and_food: [
      "Advice on asphalt and food differs: one university answer is against it, Rutgers measured metals under reuse limits. Water the soil, never the leaves.",
      "University of Washington library answer; Rutgers FS1218",
    ],
  },
  frost: {
    text: "Turn its downspout away from the tank, and empty the first-flush pipe. From a ladder only with somebody to hold it.",
    source: PRACTICE,
    ifLinked: "drains_to",
  },
};
