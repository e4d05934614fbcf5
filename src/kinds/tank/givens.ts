// What a tank asks: its size, where it stands, its openings, and how full it is.

import type { Row } from "../../graph/types.ts";
import { choice, date, given, link, text } from "../rows.ts";
import { SHAPES } from "./models.ts";
import { byStart, STARTS } from "./usual-tanks.ts";

export const TANK_GIVENS: readonly Row[] = [
  choice("start_from", "Starts from", STARTS, "own", { minor: true }),
  choice("shape", "Shape", SHAPES, "upright_cylinder"),
  given(
    "capacity",
    "Each holds",
    "volume",
    { formula: "dimension_volume" },
    { measurable: { teaches: "the volume at every depth" }, min: 0.000_1 },
  ),
  given("count", "How many, joined at the base", "count", [1, "1"], { min: 1, max: 100 }),
  given("water_height", "Water stands, when full", "depth", byStart("water_height", [33.5, "in"]), {
    min: 0.01,
    max: 30,
  }),
  given("diameter", "Inside diameter", "depth", byStart("diameter", [22.5, "in"]), {
    absent: "no diameter given",
    minor: true,
  }),
  given("length", "Inside length", "length", byStart("length", null), {
    absent: "no length given",
    minor: true,
  }),
  given("width", "Inside width", "length", byStart("width", null), { absent: "no width given", minor: true }),
  given("ground_height", "Ground under it", "height", [0, "ft"], { min: -1000, max: 1000 }),
  given("stand_height", "Stand", "height", [0, "ft"]),
  given("outlet_height", "Outlet above its floor", "depth", [2, "in"]),
  choice("cover", "Top", { covered: "covered", open: "open" }, "covered"),
  link("overflows_to", "Overflows to", "holds_water", "overflows to the ground"),
  given("start_share", "Full at the start", "share", [50, "%"], { max: 1, minor: true }),
  given("leak", "Leaks", "flow", [0, "gal/day"], { minor: true }),
  given("level_today", "Depth when last dipped", "depth", null, { absent: "not dipped" }),
  { ...date("dipped_on", "Dipped on", "day", null), absent: "today", hidden: true },
  text("dip_said", "Said of that dip", "", { hidden: true }),
];
