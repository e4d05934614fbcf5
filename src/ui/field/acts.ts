// What can be noted in a panel, dips and waterings of an earlier day among it, in a grower's words.

import type { NoteWord } from "../../document/note-kinds.ts";

/** `said` stands after the part's name where it is said to be noted. */
export type Act = { readonly what: NoteWord; readonly label: string; readonly said: string };

export const ACTS: readonly Act[] = [
  { what: "dipped", label: "Dipped", said: "dipped" },
  { what: "gave", label: "Watered", said: "watered" },
  { what: "rain", label: "Rain in the gauge", said: "in the gauge" },
  { what: "soaked", label: "Soaked through", said: "soaked through" },
  { what: "dug", label: "Dug to see", said: "a finger deep it is" },
  { what: "planted", label: "Planted", said: "planted" },
  { what: "pulled", label: "Pulled up", said: "pulled up" },
  { what: "filled", label: "Filled from elsewhere", said: "filled from elsewhere" },
  { what: "took", label: "Took for something else", said: "taken for something else" },
  { what: "timed", label: "A refill timed", said: "refilled" },
  { what: "cleaned", label: "Cleaned", said: "cleaned" },
  { what: "broke", label: "Broke", said: "broke" },
  { what: "mended", label: "Mended", said: "mended" },
  { what: "drained", label: "Made ready for frost", said: "made ready for frost" },
];

/** How full a battery is, as its light or its meter tells. */
export const CHARGES = [
  { label: "Full", percent: 100 },
  { label: "¾", percent: 75 },
  { label: "Half", percent: 50 },
  { label: "¼", percent: 25 },
] as const;
