// What the rows and cautions of this card mean and where they come from; loaded when somebody asks.

import type { KindWords } from "../../graph/words.ts";
import { COST_WORDS, DEFINITION, MEMORY, PRACTICE } from "../sources.ts";

const SIZES = "size guides of drum and tote sellers, read; some heights are assumptions";

const floorPressureSource = "hydrostatics: density times gravity times the height of water";

export const words: KindWords = {
  rows: {
    start_from: ["Fills in the usual sizes; measure yours, makers differ.", SIZES],
    shape:
      "Where it starts from your own figures. For anything odd give what it holds and how high the water stands.",
    capacity:
      "To the overflow. Leave it empty to work it out from the dimensions, or to take what its kind is sold as.",
    count: "Several alike with their outlets joined fill and empty as one.",
    water_height: "From the inside floor up to the overflow.",
    diameter: "For a round tank that stands.",
    length: "For a box, or a round tank that lies.",
    width: "For a box.",
    ground_height: "Above height nought; below it is negative.",
    stand_height: "From the ground up to the tank's floor.",
    outlet_height: "Water under the outlet stays in. Nothing for an open tub that you dip from.",
    cover: "An open one catches rain and dries out; it also drowns and breeds.",
    overflows_to: "Another tank that takes what this one cannot.",
    start_share: "How full it is on the first day of the record.",
    leak: "What it loses by itself.",
    level_today: "Dip a stick to the floor and read it.",
    usable: ["All of them full, less what stands under the outlet.", DEFINITION],
    reachable: [
      "The water above the highest of its outlet, its pump's lowest water and, where it leaves only by lines, the point at which the lowest line stops.",
      DEFINITION,
    ],
    dead_water: ["What stands under the outlet stays in.", DEFINITION],
    stranded: [
      "Above the outlet, but under the pump's lowest water or the level at which its lowest line stops.",
      DEFINITION,
    ],
    days_of_autonomy: [
      "Its reachable water over what its beds, its leak and its open water take on a peak day. Other draws, for animals or rinsing, are not in it.",
      "definition; bed need after FAO Irrigation and Drainage Paper 56",
    ],
    peak_day_draw: [
      "What its beds need on a peak day, directly or through lines, with its own leak and open water.",
      "FAO Irrigation and Drainage Paper 56",
    ],
    largest_taken: ["The largest single watering of a bed that is watered straight from it.", DEFINITION],
    refilled_in: [
      "By all its lines at once, from the lowest you can draw it to, until the float shuts.",
      DEFINITION,
    ],
    shortest_interval: ["The shortest time between waterings of those beds, at the peak.", DEFINITION],
    full_weight: [
      "All its water times the weight of water; the tank itself comes on top.",
      "definition: water is about 8.34 lb a US gallon",
    ],
    plan_area:
      "What one of them holds over how high its water stands, unless you measure the ground that it covers.",
    leak_empties: ["All its water over what it loses by itself.", DEFINITION],
    filled_by: ["Whether a roof, a hose or another tank's overflow leads into it.", DEFINITION],
    overflow_ends: ["Followed from tank to tank.", DEFINITION],
    slenderness: ["How high the water stands over the narrowest side that it stands on.", DEFINITION],
    floor_pressure: ["What the water presses on the floor with, by its height alone.", floorPressureSource],
    mean_yearly_spill: [
      "Roof water and overflow that found no room, over the whole calendar years.",
      "the weather in use, day by day",
    ],
    lowest_level: ["The lowest evening of the whole record.", "the weather in use, day by day"],
    water_now: [
      "What was last dipped, and day by day since then what came in and what was given, taken, lost and filled: by what you noted, else by the season's own rules. At the bed it is the same number.",
      "your notes and the weather in use, day by day",
    ],
    dip_day: "The day of the dip that it is reckoned from.",
    lasts_until: [
      "What was last dipped above the lowest drawable depth, over a peak day's draw, from the day of the dip on; before it, what waits in the tanks above that fill it, over all that hangs on those. Of several dips the first day counts. What was given, taken or filled since is not in it.",
      DEFINITION,
    ],
    ...COST_WORDS,
  },
  cautions: {
    heavy_stand: [
      "Full, the water alone weighs {full_weight}. A stand that gives way kills. Level, compacted ground, a stand built for the load and braced sideways; high or big ones need a licensed engineer and often a permit.",
      "permit practice of San Mateo, Inglewood and Minnesota; common practice",
    ],
    level_ground: [
      "Full, the water alone weighs {full_weight}. Set it on level, firm ground, away from slopes and walls.",
      "Charlottesville FAQ 256",
    ],
    open_water: [
      "Open water drowns children and animals, even a few inches of it: lid, mesh or fence. Mosquitoes need a week: screen it, or empty it within five days.",
      "US CPSC document 5006; vector control districts",
    ],
    closed_tank: [
      "Keep the lid locked and the openings under mesh of 1/16 in, 1.5 mm. Never climb into a tank.",
      "US CPSC; vector control districts; common practice",
    ],
    slender_tank: [
      "Taller than twice its width: it can topple, and such tanks commonly need a permit even on the ground. Tie it back, or set two lower ones.",
      "permit practice of San Mateo, Inglewood and Minnesota, read: on grade, to 5,000 gal and height to width 2 to 1",
    ],
    floor_load: [
      "Presses with {floor_pressure} on what it stands on: fine for firm ground, but more than a deck, porch or shed floor is built for (about 40 lb on a square foot, 200 kg on a square meter).",
      "US residential live load of 40 lb/ft2, from memory",
    ],
    stand_feet: [
      "Its floor presses with {floor_pressure} on the stand, and the stand's feet pass all of it on to far less ground: set each on a slab, level and dry, well clear of a bank or wall.",
      "definition of pressure; NRCS CPS 558 on level stable bases, read",
    ],
    sizes_disagree: [
      "It is said to hold {capacity}, but by its shape, its height of water and its other dimensions it holds {shape_volume}. Measure its length, width or height: one of these is wrong, or nobody has said it yet.",
      DEFINITION,
    ],
    dead_water: [
      "{dead_water} stand under the outlet and never come out by themselves. Lower the outlet, or dip or pump the rest.",
      DEFINITION,
    ],
    stranded_water: [
      "{stranded} above the outlet do not come out: the line stops when levels are equal or its hump stands dry, or the pump cannot pick them up. Raise this tank, or lower the line's end or hump.",
      DEFINITION,
    ],
    unreachable_tank: [
      "None of its water can be reached: its lines end higher than it can stand, or its pump cannot pick it up. Raise it, lower the end, or dip from it.",
      DEFINITION,
    ],
    nothing_fills_it: [
      "Nothing on this sheet fills it: no roof drains into it, no hose leads to it. Until one does it stays dry once it is empty, whatever the rain.",
      DEFINITION,
    ],
    leak_drains_it: [
      "The leak alone empties it in {leak_empties}. Mend it first: nothing else on this sheet helps as much.",
      DEFINITION,
    ],
    dipped_over_the_brim: [
      "Dipped at {level_today}, yet full its water stands at {water_height}: one of the two is wrong. The dip is not counted. Dip again, set its height right, or say under Notes that you read it so.",
      DEFINITION,
    ],
    dipped_deeper_than_it_is: [
      "Dipped at {level_today}, and you say you read it so; yet full its water stands at {water_height}. It counts as full that day. Set its height right.",
      DEFINITION,
    ],
    overflow_loop: [
      "Its overflow comes round to itself, so that a full circle spills on the ground where nobody looks. Let one of them overflow away, by a hose as wide as its inlets, well clear of foundations.",
      "NRCS CPS 558 and Charlottesville FAQ 256 on overflow, read",
    ],
  },
  frost: {
    text: "Leave a tenth of its height free at the top: ice needs more room than its water. What is small or stiff is best emptied, its tap left open, its lid on.",
    source: `${PRACTICE}; ice takes 9 % more room than its water: ${MEMORY}`,
  },
};
