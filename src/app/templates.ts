// The starter worksheets, in the order in which they are offered. The first opens first.

import dry from "../../templates/dry-summer-metric.json";
import hillside from "../../templates/hillside-totes.json";
import barrel from "../../templates/one-barrel.json";
import { readWorksheet } from "../document/check.ts";
import type { Worksheet } from "../document/worksheet.ts";
import type { Template } from "../ui/sheet.ts";

type Starter = Template & { readonly data: unknown };

const STARTERS: readonly Starter[] = [
  {
    id: "hillside-totes",
    title: "Larkspur Bank",
    forWhom: "Totes on a slope, a tub with a float valve, a pump, a tunnel and an open bed",
    changeFirst: "Change first: the latitude, the two roofs and the height of the totes",
    data: hillside,
  },
  {
    id: "one-barrel",
    title: "One barrel and a can",
    forWhom: "A shed roof, one barrel, one bed, all by hand",
    changeFirst: "Change first: the roof, and the season's first and last day",
    data: barrel,
  },
  {
    id: "dry-summer-metric",
    title: "Dry summer, three tanks",
    forWhom: "Metric: two roofs, a cistern that overflows into a second tank, three beds",
    changeFirst: "Change first: the rain of each month, the roofs and the tanks' measures",
    data: dry,
  },
];

export const TEMPLATES: readonly Template[] = STARTERS.map(({ id, title, forWhom, changeFirst }) => ({
  id,
  title,
  forWhom,
  changeFirst,
}));

/** A starter by its id. */
export function template(id: string): Worksheet {
  const starter = STARTERS.find((candidate) => candidate.id === id) ?? STARTERS[0];
  const read = readWorksheet(starter?.data);
  if (!read.ok) throw new Error(`The starter ${id} is broken.`);
  return read.worksheet;
}

/** The worksheet that opens when nothing is kept yet. */
export const firstWorksheet = (): Worksheet => template("hillside-totes");
