// The starter worksheets, in the order in which they are offered. The first opens first; the others are fetched when one
// of them is asked for.

import hillside from "../../templates/hillside-totes.json";
import { frozen } from "../document/freeze.ts";
import type { Worksheet } from "../document/worksheet.ts";
import type { Template } from "../ui/sheet.ts";

type Starter = Template & { readonly fetch: () => Promise<{ readonly default: unknown }> };

const STARTERS: readonly Starter[] = [
  {
    id: "hillside-totes",
    title: "Larkspur Bank",
    forWhom: "Totes on a slope, a tub with a float valve, a pump, a tunnel and an open bed",
    changeFirst: "Change first: the latitude, the two roofs and the height of the totes",
    fetch: async () => ({ default: hillside }),
  },
  {
    id: "one-barrel",
    title: "One barrel and a can",
    forWhom: "A shed roof, one barrel, one bed, all by hand",
    changeFirst: "Change first: the roof, and the season's first and last day",
    fetch: () => import("../../templates/one-barrel.json"),
  },
  {
    id: "pump-battery-panel",
    title: "Pump, battery and panel",
    forWhom:
      "A second-hand rig: tub with a float valve, boat pump, wire and fuse, a worn battery and its panel",
    changeFirst: "Change first: the pump's label, the hose, and what a lamp and a clock say of the battery",
    fetch: () => import("../../templates/pump-battery-panel.json"),
  },
  {
    id: "panel-alone-metric",
    title: "A panel alone at noon",
    forWhom: "Metric: a cistern, a small pump straight on a panel, two beds watered while the sun is high",
    changeFirst: "Change first: the latitude, the panel's watts and the hour at which you water",
    fetch: () => import("../../templates/panel-alone-metric.json"),
  },
  {
    id: "rainy-plot-metric",
    title: "Rainy plot, two butts",
    forWhom: "Metric, cool and wet: a small shed roof, two joined butts, roots and salad by can",
    changeFirst: "Change first: the shed roof, how many butts, and the beds' length",
    fetch: () => import("../../templates/rainy-plot-metric.json"),
  },
  {
    id: "hens-and-sweet-potatoes",
    title: "Hens and sweet potatoes",
    forWhom: "Hot, wet summers: a carport, a tote that overflows to a barrel for the hens, two beds by can",
    changeFirst: "Change first: the carport's roof, what the hens drink, and how far you carry",
    fetch: () => import("../../templates/hens-and-sweet-potatoes.json"),
  },
  {
    id: "summer-storms-one-big-tank",
    title: "Summer storms, one big tank",
    forWhom: "High and dry, rain in late summer: one house roof, a big tank, a pipe to a barrel, drip hose",
    changeFirst: "Change first: the rain of each month, the roof and the tank's height above the beds",
    fetch: () => import("../../templates/summer-storms-one-big-tank.json"),
  },
  {
    id: "dry-summer-metric",
    title: "Dry summer, three tanks",
    forWhom: "Metric: two roofs, a cistern that overflows into a second tank, three beds",
    changeFirst: "Change first: the rain of each month, the roofs and the tanks' measures",
    fetch: () => import("../../templates/dry-summer-metric.json"),
  },
  {
    id: "southern-dry-summer-metric",
    title: "South of the line, dry summer",
    forWhom:
      "Metric, a season over the new year: a corrugated tank, a header barrel, a shade tunnel, two beds",
    changeFirst: "Change first: the latitude (south is negative), the house roof and the big tank",
    fetch: () => import("../../templates/southern-dry-summer-metric.json"),
  },
  {
    id: "three-roofs-two-tunnels",
    title: "Three roofs, two tunnels",
    forWhom:
      "Wet winters, dry summers: three roofs, four tanks, two lines, a pump for two tunnels, cans for a bed",
    changeFirst: "Change first: the roofs, where each tank stands, and what the tunnels hold",
    fetch: () => import("../../templates/three-roofs-two-tunnels.json"),
  },
];

export const TEMPLATES: readonly Template[] = STARTERS.map(({ id, title, forWhom, changeFirst }) => ({
  id,
  title,
  forWhom,
  changeFirst,
}));

async function worksheetOf(data: unknown, id: string): Promise<Worksheet> {
  const { readWorksheet } = await import("../document/check.ts");
  const read = readWorksheet(data);
  if (!read.ok) throw new Error(`The starter ${id} is broken.`);
  return read.worksheet;
}

/** A starter by its id; rejects where it cannot be fetched. */
export async function template(id: string): Promise<Worksheet> {
  const starter = STARTERS.find((candidate) => candidate.id === id);
  if (!starter) throw new Error(`There is no starter ${id}.`);
  const { default: data } = await starter.fetch();
  return worksheetOf(data, id);
}

/** The worksheet that opens when nothing is kept yet. A test reads it with care; here it is taken as it stands. */
export const firstWorksheet = (): Worksheet => frozen(hillside as unknown as Worksheet);
