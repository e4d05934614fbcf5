// What the rows and cautions of this card mean and where they come from; loaded when somebody asks.

import type { KindWords } from "../../graph/words.ts";

export const words: KindWords = {
  rows: {
    today: [
      "Says what each bed wants now, plans the week, and fills in how long the water lasts.",
      "your own entry",
    ],
    latitude: "North is positive. Half a degree is near enough.",
    elevation: "Thins the air a little: it matters to siphons and to how fast things dry.",
    season_start: "First day on which the beds may ask for water.",
    season_end: "Last day. A season may run over the new year.",
    minutes_per_day: "What one person can spend on it. Leave it empty for no limit.",
    water_at: "The time of day at which the beds are watered: 7 pm, or 19:30.",
    storage_rule: [
      "Which comes first in a day's reckoning, the overflow or the watering. The cautious rule is the usual one.",
      "Jenkins et al. 1978, yield after or before spillage",
    ],
    water_temperature: "Cold water is thicker and runs slower through thin hose.",
    water_density: [
      "Water is heaviest at 39 °F, 4 °C, and hardly lighter when warm.",
      "Tanaka et al. 2001, Metrologia 38:301",
    ],
    water_viscosity: [
      "How thick the water is: half as thick at 104 °F, 40 °C, as at 50 °F, 10 °C.",
      "Pátek et al. 2009, J. Phys. Chem. Ref. Data 38:21",
    ],
    atmospheric_head: [
      "The height of water that the air can hold up here; no siphon lifts higher.",
      "FAO Irrigation and Drainage Paper 56, Eq. 7; Tanaka et al. 2001",
    ],
  },
  cautions: {},
};
