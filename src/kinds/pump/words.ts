// What the rows and cautions of this card mean and where they come from; loaded when somebody asks.

import pumps from "../../../shared/pumps.json";
import type { KindWords } from "../../graph/words.ts";
import { COST_WORDS, DEFINITION, MEMORY, PRACTICE } from "../sources.ts";

const BOATUS = pumps.sources["BoatUS 14"];

const AFFINITY = "affinity laws (from memory), solved for the speed at which its curve meets hose and lift";

const FIT = "H = H0 - a Q², from its ratings or by least squares over its points";

export const words: KindWords = {
  rows: {
    size: "Fills in what its label does not say.",
    open_flow: ["Without any hose, as its label has it.", MEMORY],
    shutoff_head: [
      "Height at which nothing comes any more. Labels rarely say: small ones stop at 7 to 16 ft, 2 to 5 m.",
      PRACTICE,
    ],
    figures: ["A label is believed to 0.8 of its flow: five pumps tested gave 15 to 33 % less.", BOATUS],
    believed_share: ["Share of the stated flow that is reckoned with.", BOATUS],
    rated_voltage: [
      "Makers commonly state the flow of a 12 V pump at 13.6 V.",
      pumps.sources["rating voltage"],
    ],
    curve: [
      "Points of flow and height off its data sheet; they stand for the two ratings, and are believed.",
      "your own entry",
    ],
    rated_current: ["Current at open flow and the stated voltage.", MEMORY],
    no_flow_current: ["Current while it turns against a shut outlet; not that of a stuck rotor.", PRACTICE],
    no_load_current: [
      "Against bearings and seal alone. A panel without a battery must give it before anything moves.",
      MEMORY,
    ],
    stall_current: ["What a fuse must blow at. Three to six times the running current.", PRACTICE],
    maker_fuse: "It stands on the label or in the leaflet.",
    lowest_water: ["Depth of water that it cannot pick up.", pumps.sources.msraves],
    powered_by: "The battery it is clipped to, or a panel alone.",
    tested_share: [
      "Of the speed that its figures are for: with it the open flow goes, and the greatest lift with its square. The mean of its buckets.",
      AFFINITY,
    ],
    believed_by: ["What its curve rests on.", DEFINITION],
    open_in_use: [
      "Q0: the stated flow times the believed share of it, or as its data sheet or your bucket has it.",
      FIT,
    ],
    shutoff_in_use: [
      "H0, at the stated voltage: as stated, or as its data sheet or your bucket has it.",
      FIT,
    ],
    supply_voltage: ["The battery's voltage.", DEFINITION],
    wire_resistance: ["All wire that feeds it, there and back.", DEFINITION],
    head_at_no_flow: [
      "Where nothing comes any more: H0 (V/Vr)², V the voltage that then arrives; the stated voltage Vr where it runs on no battery.",
      FIT,
    ],
    flow_at_no_head: [
      "What is believed of its open flow, times its battery's voltage over the stated one.",
      FIT,
    ],
    places: ["Hoses that it is put to, one at a time.", DEFINITION],
    running_current: ["The most of any of its hoses.", DEFINITION],
    ...COST_WORDS,
  },
  cautions: {
    label_not_believed: [
      "Only {believed_share} of the label's flow is reckoned with until you test it: the label is without hose or lift, at {rated_voltage}.",
      BOATUS,
    ],
    bucket_beats_pump: [
      "The bucket shows more than the pump's figures allow: {tested_share} of their speed. The bucket is believed: the pump is better than its figures, or the hose wider or shorter.",
      "curve of the pump against hose and lift",
    ],
    bucket_doubtful: [
      "By the bucket it turns at {tested_share} of what its figures say: look at bucket, clock and volts again, and at the size above.",
      PRACTICE,
    ],
    buckets_disagree: [
      "Its buckets at different hoses disagree by more than a tenth: their mean is taken. One hose is not as it is said to be.",
      PRACTICE,
    ],
    one_place: [
      "It can stand in one tank at a time: its hours of the day are shared between {places} hoses.",
      DEFINITION,
    ],
    too_many_volts: [
      "Its battery gives {supply_voltage}, more than a tenth over the {rated_voltage} it is made for: it draws far more, overheats and burns out. Take a battery of its own voltage, or a converter between.",
      `ISO 8849:2021 in excerpts: pumps are tested up to their design voltage, 13.6 V for 12 V; a tenth over: ${PRACTICE}`,
    ],
    draws_over_label: [
      "It draws {running_current} where its label says {rated_current} wide open: it rubs or is clogged, or one of both figures is another pump's.",
      PRACTICE,
    ],
    no_wire: [
      "No wire's card feeds it: what the wire loses is left out, and no fuse is held against the rules. Add its wire.",
      DEFINITION,
    ],
    mains_kept_away: [
      "Low voltage only in and near the water: 12 V, apart from every mains wire. A charger on the mains stays under a roof, dry, behind a ground-fault breaker, never beside a tank.",
      "ISO 10133 §7.8 on keeping the two apart, read in an extract; local codes and a licensed electrician decide",
    ],
    dry_running: [
      "Water is what cools it and keeps its seal: it must not run dry. Stop it, or let a float stop it, at {lowest_water}. Boat pumps must stand 7 h dry without a fire, not without wear.",
      "ISO 8849:2021 in excerpts and a caravan forum, read",
    ],
  },
  frost: {
    text: "Pour out what stands in it and take it in: one frost in a wet pump is enough to crack it.",
    source: PRACTICE,
  },
};
