// What the rows and cautions of this card mean and where they come from; loaded when somebody asks.

import type { KindWords } from "../../graph/words.ts";
import { COST_WORDS, DEFINITION, MEMORY, PRACTICE } from "../sources.ts";

const LICENSED = "local codes and licensed practice decide";

const RUN = "the weather in use, day by day";

export const words: KindWords = {
  rows: {
    chemistry: "It is printed on the case.",
    rated_capacity: "Amp-hours as printed.",
    nominal_voltage: ["What it gives while it works.", MEMORY],
    health: [
      "A used one has lost some. A lamp and a clock tell: printed amp-hours against what it gave.",
      "guessed until tested",
    ],
    depth_of_discharge: ["Deeper wears it out sooner.", MEMORY],
    round_trip_efficiency: ["The rest turns into heat while charging.", MEMORY],
    charged: "How it gets its charge back.",
    carried_every: "Days from one day at the panel to the next, where it is carried.",
    temperature: "Lead holds less in the cold: two thirds at freezing.",
    peukert: ["Peukert's exponent: 1 gives as much fast as slowly; old lead has 1.2 and more.", MEMORY],
    test_load: "A load that you know, to test it with: a car's brake lamp takes 21 W.",
    tested_temperature: "Lead tested cold gives less then and there; that must not count twice.",
    test_time: [
      "From fully charged until the voltage falls to its lowest (10.5 V for a 12 V lead one). Time it once, and charge at once.",
      "Peukert 1897; health as time over rated time, US Bureau of Reclamation, Storage Battery Maintenance (1997)",
    ],
    health_in_use: [
      "By the lamp and the clock where they were tried, else as guessed: the share of the label that would last just so long at that load.",
      "Peukert 1897, solved for what it holds; with exponent 1 time over rated time, US Bureau of Reclamation, Storage Battery Maintenance (1997)",
    ],
    cold_share: [
      "One over what a lead battery must be bigger by in the cold: 1.04 at 70 °F (21 °C), 1.11 at 60 (16), 1.19 at 50 (10), 1.30 at 40 (4), 1.40 at 30 (-1); straight between.",
      "simplified IEEE method, read at batteries-solar.blogspot.com",
    ],
    haste_share: [
      "Peukert's law: what it gives at the current of its largest load, over what it gives in 20 hours.",
      "Peukert 1897, in the form read at batterystuff.com",
    ],
    charge_today: "How full it is on the first day of the record. How full it is now is noted.",
    usable_energy: [
      "Amp-hours times volts, times what is left of it, how far it may be drawn down, and what cold and haste leave.",
      DEFINITION,
    ],
    pumping_time: ["What you can use over what the pump takes.", DEFINITION],
    waterings_per_charge: ["What you can use over one watering of all its beds.", DEFINITION],
    days_without_sun: ["What you can use over what a peak day and its other loads take.", DEFINITION],
    other_power: "A lamp, a fence, and what its controller draws for itself: 0.1 to 0.5 W, from memory.",
    other_time: "A controller never rests.",
    other_energy: ["Their power times the hours they run.", DEFINITION],
    largest_load: ["The pump that takes the most.", DEFINITION],
    round_energy: ["What one watering of every bed takes.", DEFINITION],
    peak_energy: ["What a peak day's watering takes.", DEFINITION],
    self_discharge: ["Of what it holds when full, in thirty days on the shelf.", MEMORY],
    days_flat: [
      "Days on which a watering stopped, or never began, because it was drawn down; the mean of whole seasons.",
      RUN,
    ],
    lowest_charge: ["After a watering, of what you can use: the lowest of the record.", RUN],
    season_charge: ["By its panel or from the house, before its own losses; the mean of whole seasons.", RUN],
    season_use: ["The pumps' and their wires' together; the mean of whole seasons.", RUN],
    season_loss: [
      "Turned into heat while charging, lost by itself, and taken by its other loads; the mean of whole seasons.",
      RUN,
    ],
    inner_resistance: [
      "Of a whole one of the usual size, full and warm; its data sheet has it. A worn one has more.",
      MEMORY,
    ],
    charging_voltage: [
      "Its voltage times what its kind wants over it: a panel's current times this is the energy that goes in.",
      MEMORY,
    ],
    short_current: ["Its voltage when full over what it resists inside.", "Ohm's law: I = V / R"],
    most_charging_current: ["Its printed amp-hours times what its kind bears for each of them.", MEMORY],
    charging_current: ["In full sun.", DEFINITION],
    ...COST_WORDS,
  },
  cautions: {
    lead_gas: [
      "Charging it gives off hydrogen, which explodes from 4 % in air: stand it in the open or in a box vented at the top, no sparks, posts covered. Acid burns eyes: goggles and water at hand.",
      `OSHA on 29 CFR 1910.178(g)(2), 1976, and 33 CFR 183.420 (boats), read in copies; ${LICENSED}`,
    ],
    sealed_gas: [
      "Sealed lead gasses too when it is overcharged: not in a tight box, and no flame near it while it charges.",
      `33 CFR 183.420 (boats), read in a copy; ${LICENSED}`,
    ],
    ups_gas: [
      "Sealed lead gasses too when it is overcharged: not in a tight box. One whose case has swollen goes to the recycler.",
      `33 CFR 183.420 (boats), read in a copy; swelling: ${PRACTICE}; ${LICENSED}`,
    ],
    lithium_cold: [
      "Never charge it below freezing: it is ruined and may fail later. It may be used down to -4 °F, -20 °C.",
      "Battery University BU-410, table 1, and a maker's manual, read",
    ],
    bare_cells: [
      "Only a pack with its own protection board, in a whole case. Loose used cells without one catch fire, and no sum on this page makes them safe.",
      "US Consumer Product Safety Commission, 8 January 2021, on loose lithium cells, read in a copy",
    ],
    battery_short: [
      "A short across its posts drives some {short_current}: it melts tools and burns. Take off rings, cover the posts, fix it so that it cannot tip, fuse it at the post, and lift with your legs.",
      `33 CFR 183.420 (boats), read in a copy; lifting: ${PRACTICE}; ${LICENSED}`,
    ],
    cold_charge: [
      "Nights of your season fall below freezing where it stands. Charged in frost a lithium battery is ruined: take it in, or switch the panel off until it thaws.",
      "Battery University BU-410, table 1, read",
    ],
    flat_before_one_watering: [
      "It is flat before one watering of all its beds is done: {usable_energy} against {round_energy}.",
      DEFINITION,
    ],
    nothing_charges: [
      "Nothing charges it: once flat it stays flat, and lead left flat is ruined within weeks. Name what charges it, or join a panel to it.",
      `${PRACTICE}; recharge within 72 h, upsbatteryshop.co.uk, read`,
    ],
    charged_too_fast: [
      "In full sun its panels push {charging_current} into it; one of this size bears {most_charging_current}. It gets hot and gasses: a smaller panel, a bigger battery, or a controller that can be set lower.",
      `a tenth to a third of the amp-hours for lead, half for lithium, from memory; ${LICENSED}`,
    ],
    health_doubtful: [
      "{health_in_use} of its label: few hold so much. Look at the lamp's watts, the hours and the amp-hours printed again.",
      PRACTICE,
    ],
    not_a_week: [
      "Nothing charges it, and it carries only {days_without_sun} of peak days: without a charge for a week the beds go dry.",
      DEFINITION,
    ],
    worn_out: [
      "Under 80 % of its label: worn, and it goes on falling. Test it again each spring.",
      "US Bureau of Reclamation, Storage Battery Maintenance (1997), read",
    ],
    house_charger: [
      "Charge it under a roof, dry, with air around it, by a listed charger made for its kind, from a socket behind a ground-fault breaker that is tested monthly; no mains lead out to the water.",
      `utilities' pages on ground-fault breakers, read; ${PRACTICE}; ${LICENSED}`,
    ],
  },
  frost: {
    text: "Charge it full, take it in where it stays above freezing, and look at it every month. Its leaflet says what cold it takes; a lithium battery must not be charged below freezing.",
    source: `${PRACTICE}; the maker decides`,
  },
};
