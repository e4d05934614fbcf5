// What the rows and cautions of this card mean and where they come from; loaded when somebody asks.

import type { KindWords } from "../../graph/words.ts";

export const words: KindWords = {
  rows: {
    from: "The tank it is drawn from.",
    volume: "How much is taken each time. It comes before the beds.",
    every: "How often.",
    season_volume: ["What it got in a usual season.", "the weather in use, day by day"],
    share_met: ["What it got over what it asked for, in the season.", "the weather in use, day by day"],
    days_short: ["Days on which it got less than it asked for.", "the weather in use, day by day"],
  },
  cautions: {
    draw_drinking: [
      "Untreated roof water is not for people to drink, and clean water for animals is a matter for your vet and local rules.",
      "UConn Extension",
    ],
  },
};
