// A pump's hose and its share in the season.

import type { SeasonShare } from "../season-share.ts";

export const deliverySeason: SeasonShare = {
  role: "waterer",
  ties: [
    { kind: "draws", from: ["from"], to: "itself" },
    // Its pump's card says what drives it, where it has one.
    { kind: "powers", from: ["pump", "powered_by"], to: "itself" },
  ],
};
