// What the rows and cautions of this card mean and where they come from; loaded when somebody asks.

import type { KindWords } from "../../graph/words.ts";
import { COST_WORDS, DEFINITION, PRACTICE } from "../sources.ts";

const THEN = "Written down when the bucket is typed in, so that a later change does not touch what was seen.";

const SOLVED = "pump curve against lift and hose (Darcy-Weisbach with Churchill 1977), with the wire's drop";

const AFFINITY =
  "affinity laws: flow with the speed, and speed with the voltage (from memory); torque, and so current, with its square";

export const words: KindWords = {
  rows: {
    bucket_volume: "Held where the water leaves.",
    bucket_time: "Through the wand or rose, where one is on. Time it twice; the second is the honest one.",
    open_time: "At the open end of the same hose. With both times pump and wand are told apart.",
    tested_length: THEN,
    tested_bore: THEN,
    tested_lift: THEN,
    tested_voltage: THEN,
    tested_resistance: THEN,
    hose_length: "From the pump to its end.",
    hose_bore: "A 5/8 in garden hose is 5/8 in, 16 mm, inside.",
    roughness: ["Smooth plastic and hose.", "from memory"],
    fittings_k: ["All of them together, entry and open end too, on the speed in the hose.", PRACTICE],
    head_k:
      "What it takes on top of an open end, on the speed in the hose. A bucket timed through it teaches this.",
    rose_holes: "Count one row and multiply.",
    rose_hole: ["A drill that just fits tells.", PRACTICE],
    filters_k: ["The loss of every filter or strainer in it, as clogged as it gets.", DEFINITION],
    tank_share: "The water that the flow below is for, and the bucket was timed at.",
    from: "The tank it draws from.",
    pump: "The pump at its end. Without one, a bucket and a clock must do.",
    powered_by: "The battery it is clipped to, where no pump's card says so.",
    lowest_water: ["Depth of water the pump cannot pick up.", PRACTICE],
    outlet_height:
      "Height of the hose's end above height nought, where it lies when the pump is off. Left empty: above the tank.",
    set_up: ["For each bed: carry it there, clip it on, pack it up.", PRACTICE],
    siphons_down_to: [
      "Height of the hose's end above the tank's floor, or the depth that the pump cannot pick up.",
      DEFINITION,
    ],
    largest_watering: ["The bed that takes the most at once.", DEFINITION],
    round_volume: ["What all its beds take at one watering each.", DEFINITION],
    peak_volume: ["What all its beds need on a peak day.", DEFINITION],
    watering_time: [
      "The largest watering, from a full tank whose level falls meanwhile; by the bucket's flow alone where there is no pump's card.",
      "continuity, integrated over the level",
    ],
    watering_end: ["How the largest watering ends, from a full tank with nothing running in.", "continuity"],
    tankfuls_per_watering: ["The largest watering over what the tank lets you reach.", DEFINITION],
    refill_wait: [
      "The tankfuls after the first, each with the time in which a line fills the tank again; nothing runs in while the pump runs.",
      DEFINITION,
    ],
    drawdown_time: [
      "From full down to what the pump cannot reach, with nothing running in.",
      "continuity, integrated over the level",
    ],
    round_energy: ["Power times the time that all its beds take.", DEFINITION],
    season_volume: ["What it gave in a usual season.", "the weather in use, day by day"],
    season_time: ["How long it ran in a usual season.", "the weather in use, day by day"],
    flow: [
      "Where the head that the pump makes is just used up by lift, hose and wand; without a pump's card, the bucket over its time.",
      SOLVED,
    ],
    share_of_label: ["What comes out over the open flow on the label.", DEFINITION],
    head: [
      "Lift, and what hose, fittings, wand and rose use up; the pump makes just that where it runs.",
      SOLVED,
    ],
    lift: ["From the water in the tank, filled to the share given, up to the hose's end.", DEFINITION],
    velocity: ["Flow over the bore's area.", DEFINITION],
    friction: ["How much the hose's wall holds the water back.", "Churchill 1977, Chem. Eng. 84:91-92"],
    hose_head: [
      "Friction factor times length over bore, plus all fittings, times the head of the speed.",
      "Darcy-Weisbach with Churchill 1977",
    ],
    wand_head: [
      "Their losses times the head of the speed in the hose.",
      "Darcy-Weisbach practice: K times the velocity head",
    ],
    rose_k: [
      "The hose's area over 0.62 of all its holes' area, squared; nothing where a bucket was timed through it.",
      "Torricelli; orifice of d √N, Cd 0.62 for a sharp edge",
    ],
    open_flow_here: ["What it would give without lift and hose.", AFFINITY],
    current: [
      "What a meter in the lead shows while it runs: (V/Vr)² (I0 + (Io - I0) q), I0 shut, Io wide open, q the flow over the open flow at the voltage V that arrives; or your own reading.",
      `${AFFINITY}; a straight line between its two currents`,
    ],
    arriving_voltage: [
      "The battery's voltage less the current times the wire's resistance, both ways.",
      "Ohm's law",
    ],
    power: ["Its current times the voltage that arrives.", DEFINITION],
    drawn_power: ["Its current times the battery's voltage: the pump's and the wire's together.", DEFINITION],
    efficiency: [
      "Weight of the water a second times the head it is lifted by, over the power. Small ones reach a fifth at best.",
      DEFINITION,
    ],
    spare_head: ["What the pump lifts at most, as fed, less the lift.", "curve of the pump at no flow"],
    head_k_in_use: ["By the bucket, where one was timed.", SOLVED],
    blames: [
      "What the bucket showed against what the figures say, within 7 %: at the open end the pump's doing, through the wand what is left.",
      PRACTICE,
    ],
    ...COST_WORDS,
  },
  cautions: {
    waits_for_refill: [
      "The largest watering, {largest_watering}, is {tankfuls_per_watering} tankfuls: the pump runs {watering_time} in all, and between it waits {refill_wait} for the tank to fill again. In one go the beds get no more than one tankful.",
      DEFINITION,
    ],
    more_than_the_tank: [
      "The largest watering, {largest_watering}, is more than its tank holds, and no line fills the tank again: the rest waits for rain.",
      DEFINITION,
    ],
    siphons_empty: [
      "The hose ends under the tank's floor: when the pump stops, it runs on as a siphon until the tank is empty. Hang its end above the brim, or fit a vented loop over it. A check valve is no cure.",
      "hydrostatics; cure: pump makers' sheets and ABYC in quotation, read",
    ],
    end_below_tank: [
      "The hose ends under the tank's brim: when the pump stops, it runs on as a siphon down to a depth of {siphons_down_to}. Hang its end above the brim, or fit a vented loop over it. A check valve is no cure.",
      "hydrostatics; cure: pump makers' sheets and ABYC in quotation, read",
    ],
    fuse_at_battery: [
      "A fuse within 7 in, 18 cm, of the battery's post, no bigger than the pump's maker and the thinnest wire allow. A bare battery lead can start a fire.",
      "33 CFR 183.455 (boats), read in a copy; local codes and licensed practice decide",
    ],
    runs_dry: [
      "Do not leave it running dry: the water is what cools it.",
      "a caravan forum's accounts, read",
    ],
    lift_above_shutoff: [
      "The hose ends higher over the water than this pump lifts: nothing comes. Lower its end, or find a pump that lifts more.",
      "curve of the pump at no flow",
    ],
    far_under_label: [
      "Only {share_of_label} of the label: the label is without hose or lift. Of the {head} that the pump makes, lift takes {lift}, {hose_length} of {hose_bore} hose with its fittings {hose_head}, wand and rose {wand_head}.",
      "BoatUS Foundation Findings 14 for labels; Darcy-Weisbach with Churchill for the hose",
    ],
    far_under_label_downhill: [
      "Only {share_of_label} of the label, though the hose ends below the water: {hose_length} of {hose_bore} hose with its fittings takes {hose_head}, wand and rose {wand_head}.",
      "BoatUS Foundation Findings 14 for labels; Darcy-Weisbach with Churchill for the hose",
    ],
    hose_before_pump: [
      "Here a wider hose gains more than a bigger pump: take each in hand and compare before you buy.",
      "the same relations, with the next hose and with bigger pumps",
    ],
    too_good: [
      "{efficiency} of its power would lift water, more than any small pump manages: they reach 10 to 25 %. Its greatest lift or its current is doubtful. Time a bucket.",
      "E. Maurer, Santa Clara University, 2016, read: near 20 % at best",
    ],
    too_good_as_timed: [
      "{efficiency} of its power would lift water as the bucket has it, more than any small pump manages: they reach 10 to 25 %. Look at the bucket, the meter and the lift again.",
      "E. Maurer, Santa Clara University, 2016, read: near 20 % at best",
    ],
    over_all_power: [
      "More than all its power would lift water: no pump can. Look at the bucket, the meter, the lift and the size of the hose again.",
      "conservation of energy",
    ],
    strainer_clogs: [
      "Leaves and slime on its grille kill small pumps: a strainer that can be cleaned, looked at each time. A filter's card on this hose reckons it in.",
      "ISO 8849:2021 in excerpts asks for a cleanable strainer, read",
    ],
    laid_to_pump: [
      "One bucket cannot tell a weak pump from a hose that is clogged or longer than said: what differs is laid to the pump. With a wand on, time the open end too.",
      "curve of the pump against hose and lift",
    ],
    laid_to_wand: [
      "One bucket through the wand cannot tell a clogged wand from a weak pump: what differs is laid to the wand. Take it off and time the open end too.",
      "curve of the pump against hose and lift",
    ],
    tank_gives_out: [
      "A full tank is empty before the largest watering is done: stand by, and stop the pump before it runs dry.",
      "continuity of the tank",
    ],
    falls_too_low: [
      "As the tank empties the lift grows beyond this pump before the watering is done.",
      "curve of the pump at no flow",
    ],
  },
  frost: {
    text: "Drain its hose, suction side and all, and roll it up dry.",
    source: PRACTICE,
  },
};
