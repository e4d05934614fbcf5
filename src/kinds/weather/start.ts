// The sky: what it brings each month is made up until somebody says, or brings in a record. Asked last, on its card.

import type { Start } from "../asking.ts";

export const start: Start = {
  asks: [
    {
      place: 100,
      rows: ["normal_rain", "record"],
      ask: "{title}: how much rain comes each month?",
      hint: "",
      onPage: true,
    },
  ],
};
