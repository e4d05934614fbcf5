// What a tank asks: its size, where it stands, its openings, and how full it is.

import type { Row } from "../../graph/types.ts";
import { choice, given, link } from "../rows.ts";
import { SHAPES } from "./models.ts";
import { byStart, STARTS } from "./usual-tanks.ts";

const SIZES = "size guides of drum and tote sellers, read; some heights are assumptions";

export const TANK_GIVENS: readonly Row[] = [
  choice(
    "start_from",
    "Starts from",
    STARTS,
    "own",
    "Fills in the usual sizes; measure yours, makers differ.",
    {
      minor: true,
      source: SIZES,
    },
  ),
  choice(
    "shape",
    "Shape",
    SHAPES,
    "upright_cylinder",
    "Where it starts from your own figures. For anything odd give what it holds and how high the water stands.",
  ),
  given(
    "capacity",
    "Each holds",
    "volume",
    { formula: "dimension_volume" },
    "To the overflow. Leave it empty to work it out from the dimensions, or to take what its kind is sold as.",
    {
      measurable: { teaches: "the volume at every depth" },
      min: 0.000_1,
    },
  ),
  given(
    "count",
    "How many, joined at the base",
    "count",
    [1, "1"],
    "Several alike with their outlets joined fill and empty as one.",
    { min: 1, max: 100 },
  ),
  given(
    "water_height",
    "Water stands, when full",
    "depth",
    byStart("water_height", [33.5, "in"]),
    "From the inside floor up to the overflow.",
    { min: 0.01, max: 30 },
  ),
  given(
    "diameter",
    "Inside diameter",
    "depth",
    byStart("diameter", [22.5, "in"]),
    "For a round tank that stands.",
    {
      absent: "no diameter given",
      minor: true,
    },
  ),
  given(
    "length",
    "Inside length",
    "length",
    byStart("length", null),
    "For a box, or a round tank that lies.",
    {
      absent: "no length given",
      minor: true,
    },
  ),
  given("width", "Inside width", "length", byStart("width", null), "For a box.", {
    absent: "no width given",
    minor: true,
  }),
  given(
    "ground_height",
    "Ground under it",
    "height",
    [0, "ft"],
    "Above the worksheet's zero; below it is negative.",
    { min: -1000, max: 1000 },
  ),
  given("stand_height", "Stand", "height", [0, "ft"], "From the ground up to the tank's floor."),
  given(
    "outlet_height",
    "Outlet above its floor",
    "depth",
    [2, "in"],
    "Water under the outlet stays in. Nothing for an open tub that you dip from.",
  ),
  choice(
    "cover",
    "Top",
    { covered: "covered", open: "open" },
    "covered",
    "An open one catches rain and dries out; it also drowns and breeds.",
  ),
  link(
    "overflows_to",
    "Overflows to",
    "holds_water",
    "overflows to the ground",
    "Another tank that takes what this one cannot.",
  ),
  given(
    "start_share",
    "Full at the start",
    "share",
    [50, "%"],
    "How full it is on the first day of the record.",
    { max: 1, minor: true },
  ),
  given("leak", "Leaks", "flow", [0, "gal/day"], "What it loses by itself.", { minor: true }),
  given("level_today", "Depth today", "depth", null, "Dip a stick to the floor and read it.", {
    absent: "not dipped",
  }),
];
