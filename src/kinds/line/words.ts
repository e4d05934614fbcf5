// What the rows and cautions of this card mean and where they come from; loaded when somebody asks.

import type { KindWords } from "../../graph/words.ts";
import { COST_WORDS, DEFINITION, MEMORY, PRACTICE } from "../sources.ts";

const SANKS = "Sanks, Pumping Station Design, as quoted in trade discussion; read second-hand";

const PRIMING =
  "To prime it: shut both ends, fill both legs from the top until no bubble comes, close the top, then open the lower end first.";

const GRADE = "definition of the hydraulic grade line; friction spread evenly along one bore";

const ORIFICE = "orifice in series with the hose, as in Darcy-Weisbach practice; Cd 0.62 sharp edge";

const CHURCHILL = "Churchill 1977, all flow regimes, with Darcy-Weisbach";

const REFILL = `${CHURCHILL}; ${ORIFICE}; integrated`;

export const words: KindWords = {
  rows: {
    from: "The higher tank, or a joint.",
    to: "The tank it fills, or a joint.",
    length: "As it lies, bends and all.",
    bore: "A 5/8 in garden hose is 5/8 in, 16 mm, inside; pipe sizes are not their bore.",
    valve_bore:
      "The hole in the seat. Empty for an open end. A seat made for mains pressure is far smaller than one for a tank.",
    shut_level: "In the lower tank, above its floor. For an open end, the depth that counts as full.",
    reference_share: "How full the upper tank is when these answers are worked out.",
    fittings_k: [
      "Entry 0.5, exit 1, each coupling about 0.9, a ball valve 0.05, an elbow 0.9.",
      "default from hydraulics tables: entry 0.5, exit 1.0, two couplings 0.9",
    ],
    roughness: ["Smooth plastic and hose.", MEMORY],
    valve_coefficient: [
      "Sharp-edged hole 0.62, short tube 0.80.",
      "Encyclopaedia Britannica, 11th ed., Hydraulics: 0.62 sharp edge",
    ],
    valve_band: ["The last rise of water over which the float shuts the valve.", MEMORY],
    check_valve: "Stops water running back.",
    route: [
      "Distance along the hose from its start, and the height of the hose there above height nought. Humps are what matters.",
      "your own entry",
    ],
    primed:
      "Only for a hump above the upper water: filled wholly with water and kept so, it runs as a siphon.",
    hump_height: ["Where the route climbs and falls again.", DEFINITION],
    hump_at: ["Along the hose from its start.", DEFINITION],
    siphon_by: ["The highest hump less the water in the upper tank.", DEFINITION],
    suction_by: ["How far a hump stands over the height that the water has left.", GRADE],
    suction_at: ["Along the hose from its start.", GRADE],
    air_head: [
      "The rises to all humps that the flow is too slow to clear of air.",
      `an air pocket costs its own height: May, Allen and Nelson 2018, abstract read; ${SANKS}`,
    ],
    air_at: ["Along the hose from its start.", SANKS],
    filters_k: ["The loss of every filter in it, as clogged as it gets.", DEFINITION],
    all_k: ["All losses but the hose's own and the valve's, on the speed in the hose.", DEFINITION],
    head: [
      "The height of the upper water above the end of the line. Measured between two tanks, with the upper one as full as given here, it stands for the heights in flow, refill and season alike; at a joint the season goes by the heights.",
      DEFINITION,
    ],
    opening: [
      "What the valve lets through: its hole times its coefficient, or what your refill or bucket taught.",
      ORIFICE,
    ],
    flow: [
      "The flow at which friction, fittings and valve together use up the drop. Measured behind a joint it tells of the valve as if no other line ran there.",
      `${CHURCHILL}; ${ORIFICE}`,
    ],
    refill_time: [
      "From the lowest you can draw it to, until the float shuts, with both waters moving; at a joint, with the other floats shut.",
      REFILL,
    ],
    refill_end: ["How filling the lower tank ends.", REFILL],
    settles_at: [
      "The depth in the lower tank at which the levels meet or the source gives out.",
      "continuity of both tanks",
    ],
    settles_volume: ["The water in the lower tank at that depth.", "continuity of both tanks"],
    refill_after_watering: [
      "From the level that the largest single watering leaves, until the float shuts.",
      REFILL,
    ],
    full_by: ["The hour of watering plus the refill after the largest watering.", DEFINITION],
    ways: ["Back too, where neither float nor check valve stops it.", DEFINITION],
    velocity: ["Flow over the bore's area.", DEFINITION],
    reynolds: [
      "Under about 2000 the flow is smooth, over 4000 it is turbulent; between them any figure is doubtful by a third.",
      DEFINITION,
    ],
    friction_factor: [
      "How hard the hose's wall holds the water back, by its Reynolds number and its roughness over its bore.",
      CHURCHILL,
    ],
    friction_head: [
      "The part of the drop that hose and fittings use up; the valve uses the rest.",
      CHURCHILL,
    ],
    hose_holds: ["Its bore's section times its length.", DEFINITION],
    comes_after: [
      "What the hose holds over its flow. While it fills, the drop is less or more than then, so take it as a rough guide.",
      DEFINITION,
    ],
    purge_flow: ["The flow that carries an air bubble along a level hose of this bore.", SANKS],
    ...COST_WORDS,
  },
  cautions: {
    no_drop: [
      "The far end is as high as the water, so nothing runs. Raise the upper tank or lower the lower one.",
      DEFINITION,
    ],
    too_little_drop: [
      "A drop of {head} over {length} of hose is little: a small error in a height, or one pocket of air, uses it up. Measure both waters with a level or a clear hose.",
      "NRCS Missouri, Watering Systems for Serious Graziers p. 29: 300 ft with 4 ft of fall needs a careful survey",
    ],
    cannot_clear_air: [
      "Too slow to carry air bubbles out of the hose: that takes {purge_flow}. Lay the hose so that it only falls, and fill it once from the low end.",
      SANKS,
    ],
    high_pressure_seat: [
      "A seat this small is made for mains pressure. Under {head} of drop it fills painfully slowly: fit the wide, low-pressure seat.",
      "City and Guilds plumbing text on high- and low-pressure seats, read; seat sizes from memory",
    ],
    between_regimes: [
      "At this flow the water is neither smooth nor turbulent. Take the figure as right to about a third, and time a bucket.",
      "textbook limits 2000 and 4000; from memory",
    ],
    levels_equal: [
      "Stops at {settles_volume}, levels equal: from there on the lower tank gets no more, however long you wait. Raise the upper tank, or lower the lower one.",
      "continuity of both tanks",
    ],
    never_fills: [
      "Never fills it: the upper tank gives out first, with {settles_volume} in the lower one.",
      "continuity of both tanks",
    ],
    float_over_brim: [
      "Its float shuts at a depth of {shut_level}, and the lower tank holds water only up to {to.water_height}: it never shuts, and the upper tank runs out over the brim. Set the float lower.",
      DEFINITION,
    ],
    refill_too_late: [
      "Not full again in time: it takes {refill_after_watering}, and the beds ask again after {to.shortest_interval}. A wider seat or hose, more drop, or a bigger tub.",
      DEFINITION,
    ],
    runs_both_ways: [
      "Nothing stops this line from running back when the lower water stands higher. Fit a check valve, or end it above the lower water, unless that is what you want.",
      DEFINITION,
    ],
    end_below_tank: [
      "Its open end lies {falls_below} below the upper tank's floor and nothing shuts it: it runs until the upper tank is down to its outlet, and the lower one runs over. Fit a float valve.",
      DEFINITION,
    ],
    hump_above_source: [
      `The hose climbs {siphon_by} above the upper water at {hump_at}: it runs only as a siphon, and stops for good when air gets in. ${PRIMING} Better lay it lower.`,
      "FEMA 484 and Colorado DWR note on siphons, read",
    ],
    hump_too_high: [
      "The hump at {hump_at} stands {siphon_by} above the upper water, and no siphon lifts more than {siphon_limit} here. Nothing can run.",
      "hydrostatics; in practice 20 ft: FEMA 484, read",
    ],
    siphon_practice: [
      "Siphons are built for no more than about 20 ft, 6 m; a soft hose is sucked flat before that.",
      "FEMA 484, read; Colorado DWR note, read",
    ],
    under_grade_line: [
      "At {suction_at} the hose lies {suction_by} over the height that the water has left there: it is under suction, air comes out of the water and stays, and a soft hose goes flat. Lay it lower there, or put the tight valve at the far end.",
      "definition of the hydraulic grade line",
    ],
    hump_traps_air: [
      "The flow is too slow to push air over the hump at {air_at}, and trapped air may take {air_head} of the {head} of drop. Lay the hose so that it only falls; or fit a small tap at the top of the hump and let the air out there; or fill it from the low end until no bubble comes.",
      `May, Allen and Nelson 2018, abstract read; ${SANKS}`,
    ],
    backflow: [
      "Never join this to a drinking-water pipe, not even through a valve. An air gap or a tested backflow preventer is the law in most places.",
      "Nevada NAC 446.425; local code decides",
    ],
  },
  frost: {
    text: "Shut it at the upper tank, open both ends and lift it from one end to the other until no more water comes. Leave its taps half open and its float valve down.",
    source: PRACTICE,
  },
};
