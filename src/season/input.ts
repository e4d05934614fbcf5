// What one season run needs to know of a worksheet: plain data in SI, put together from the cards, sorted by id.
// The input's text is the key under which an answer is kept, so nothing in it may depend on clock, chance or order.

import type { Network } from "../network/network.ts";
import type { Vessel } from "../physics/vessel.ts";

/** `MM-DD` */
export type MonthDay = string;

/** How reference evapotranspiration is worked out; months are means [m/s], January first. */
export type EtoChoice = {
  readonly method: "monthly" | "penman_monteith" | "hargreaves";
  readonly latitude: number;
  readonly elevation: number;
  readonly months: readonly number[] | null;
  readonly factor: number;
  /** Highest and lowest temperature of a day, month by month [K]: the last resort where a day has none; null: no normals. */
  readonly normals: {
    readonly highest: readonly number[];
    readonly lowest: readonly number[];
  } | null;
};

export type RoofPart = {
  readonly id: string;
  /** Plan area [m2]. */
  readonly footprint: number;
  readonly runoffCoefficient: number;
  /** Depths lost after the coefficient [m]: each rain day, and once an event. */
  readonly wettingLoss: number;
  readonly firstFlush: number;
  readonly drainsTo: string | null;
  /** Connected from..until, both included; null: the whole year. */
  readonly catchFrom: MonthDay | null;
  readonly catchUntil: MonthDay | null;
};

/** All vessels of one tank card together (joined at the base): `vessel.volume` is that of all of them. */
export type TankPart = {
  readonly id: string;
  readonly vessel: Vessel;
  /** Height of the vessel's inside floor above the datum [m]. */
  readonly floor: number;
  /** Depth above the floor under which nothing can be drawn through its outlet by line or delivery [m]. */
  readonly outlet: number;
  /** Open water surface that catches rain and loses water [m2]; 0 when covered. */
  readonly openArea: number;
  /** False: nothing of its open water dries away; left out: it does. */
  readonly dries?: boolean;
  readonly overflowsTo: string | null;
  readonly startShare: number;
  /** [m3/s] while there is water. */
  readonly leak: number;
};

/** A gravity line. An end is a tank, a tee, or (to only) free: null. */
export type LinePart = {
  readonly id: string;
  readonly from: string;
  readonly to: string | null;
  readonly length: number;
  readonly bore: number;
  readonly roughness: number;
  /** All fittings with entry and exit, on the bore's velocity. */
  readonly fittingsK: number;
  /** Effective opening of the float valve, Cd times area [m2]; null: no valve. */
  readonly opening: number | null;
  /** Depth over which the float valve closes, below its shut level [m]. */
  readonly valveBand: number;
  /** Level in the target, above its floor, at which the float is shut [m]. */
  readonly shutLevel: number | null;
  /** Heights of both ends above the datum [m]. */
  readonly startHeight: number;
  readonly endHeight: number;
  /** By how much less drop there is between its tanks than the heights say, as measuring it told; left out: 0 [m]. */
  readonly lift?: number;
  readonly checkValve: boolean;
  /** A hump, dry stretch or the like stops it: nothing flows, with the reason. */
  readonly blocked: string | null;
  /** [m2/s] of the water in it. */
  readonly viscosity: number;
};

export type TeePart = { readonly id: string; readonly height: number };

/** What draws from a tank for no bed: animals, rinsing, trays. */
export type DrawPart = {
  readonly id: string;
  readonly from: string;
  readonly volume: number;
  readonly every: number;
};

/**
 * What the sun gives a pump that hangs on a panel alone, from the hour of watering on: for each month, January first, how
 * long the pump has run in full, in effect, by the end of each whole hour [s]; the first is 0, the last is at sunset.
 */
export type SunHours = readonly (readonly number[])[];

/** The same on days without and with rain. */
export type SunOnDays = { readonly dry: SunHours; readonly wet: SunHours };

/** That of the panel which drives it; and the hours of the day that are bright enough for one many times as big. */
export type SunOnPump = SunOnDays & { readonly bright: SunOnDays };

export type DeliveryPart = {
  readonly id: string;
  readonly from: string;
  /** The pump that is carried from place to place; deliveries with the same word share it. */
  readonly pump: string | null;
  /** Flow against level in the source: one row per depth above its floor, rising [m], [m3/s], [W]. */
  readonly depths: readonly number[];
  readonly flows: readonly number[];
  readonly powers: readonly number[];
  /** Depth under which it draws no water [m]. */
  readonly lowestWater: number;
  /** Battery it runs from; null: no limit on energy is known. */
  readonly battery: string | null;
  /** The sun that drives it, where no battery stands between; left out: none. */
  readonly sun?: SunOnPump | null;
  /** Moving and setting up, once a watering [s]. */
  readonly setUp: number;
  /** Whether someone holds the hose while it runs, so that its running counts as that person's time; left out: yes. */
  readonly attended?: boolean;
};

export type CarryPart = {
  readonly id: string;
  readonly from: string;
  readonly canVolume: number;
  readonly cansAtOnce: number;
  /** One round with `cansAtOnce` cans: fill, walk, pour, walk back [s]. */
  readonly roundTime: number;
  /** Way from the tank to the bed [m], and one empty can [kg]. */
  readonly distance: number;
  readonly canMass: number;
};

/** How a battery gets its charge: each night from the house; on its panel where it stands; carried to it every so many days; swapped with a second one that stands at the panel. */
export type ChargeWay = "mains" | "in_place" | "carried" | "swapped";

/** Energy that a panel brings on a day without and with rain of each month [J], January first. */
export type PanelCharge = { readonly dry: readonly number[]; readonly wet: readonly number[] };

export type BatteryPart = {
  readonly id: string;
  /** Usable from full to the depth of discharge [J]; where two are swapped, of each. */
  readonly usable: number;
  readonly efficiency: number;
  readonly startShare: number;
  readonly charged: ChargeWay;
  /** Days from one at the panel to the next, where it is carried. */
  readonly carriedEvery: number;
  /** Energy that its panel brings on a day without and with rain of each month [J], January first. */
  readonly dryCharge: readonly number[];
  readonly wetCharge: readonly number[];
  /** What each panel brings of that, by its id; left out: one brings all, or none is known. */
  readonly panels?: Readonly<Record<string, PanelCharge>>;
  /** Share of its charge that it loses by itself in a day. */
  readonly selfDischarge: number;
  /** Energy that other loads take of the one in use each day, as far as it has it [J]; left out: none. */
  readonly otherLoads?: number;
  /** No charge from a panel on days whose air is colder on the mean [K]; null: charged in any cold. */
  readonly leastChargingTemperature: number | null;
};

/** What was noted of a crop, and on which day [days since 1970-01-01]. */
export type CropEvent = { readonly what: "planted" | "pulled"; readonly date: number };

export type CropPart = {
  readonly crop: string;
  readonly planted: MonthDay;
  /** Share of the bed, 0..1. */
  readonly share: number;
  readonly kcInitial: number;
  readonly kcMiddle: number;
  readonly kcEnd: number;
  /** Of these, what the plants take themselves: basal coefficients. */
  readonly kcbInitial: number;
  readonly kcbMiddle: number;
  readonly kcbEnd: number;
  /** Days of the four stages: initial, development, middle, late. */
  readonly stages: readonly [number, number, number, number];
  /** Share of the available water that can be used without stress. */
  readonly depletion: number;
  readonly rootStart: number;
  readonly rootEnd: number;
  /** Full grown [m]: weighs crops that mingle, and the correction for the air. */
  readonly height: number;
  /** Yield response factor Ky; null where none is published. */
  readonly yieldResponse: number | null;
  /** When it was planted and pulled up by the notes, in order; left out: as its calendar day has it. */
  readonly noted?: readonly CropEvent[];
};

/** When a bed is watered: by its soil, so much every so many days, or on set days of the week. */
export type BedRule =
  | { readonly kind: "soil" }
  | { readonly kind: "fixed"; readonly volume: number; readonly every: number }
  /** Days 1 Monday to 7 Sunday; a volume each [m3], or what the soil lacks: null. */
  | { readonly kind: "weekdays"; readonly days: readonly number[]; readonly volume: number | null };

/** How often the bare ground between young plants is wetted: sets the first crop coefficient instead of the table. */
export type GroundWetting = {
  /** Between two wettings [s], and the depth of each over the watered ground [m]. */
  readonly every: number;
  readonly depth: number;
  /** Sand and the like. */
  readonly coarse: boolean;
  /** Share of the ground's drying that a mulch leaves, 1 without. */
  readonly left: number;
};

/** From that day of each season on, once so many days on end were dry (under 1 mm), the bed gets no more water. */
export type LetGo = { readonly from: MonthDay; readonly dryDays: number };

export type BedPart = {
  readonly id: string;
  readonly area: number;
  /** Share of the area that is watered and rooted, 0..1 (spots, strips). */
  readonly wettedShare: number;
  /** Share of the area that full-grown canopies cover, 0..1: below 1 where plants stand alone. */
  readonly canopyShare: number;
  readonly crops: readonly CropPart[];
  /** Water held between field capacity and wilting point, per depth [m/m]. */
  readonly availableWater: number;
  /** Layer that dries while the ground is bare: what it can lose in all, and at full rate [m]. */
  readonly evaporable: { readonly total: number; readonly readily: number };
  /** Share of bare ground's drying that a mulch leaves, 1 without. */
  readonly bareLeft: number;
  /** Deepest the roots may go [m]. */
  readonly rootLimit: number;
  /** Covered: no rain reaches it and evapotranspiration is times `coverFactor`. */
  readonly covered: boolean;
  readonly coverFactor: number;
  /** Factor on crop use for mulch, 1 without. */
  readonly mulchFactor: number;
  /** Share of the water given that reaches the roots. */
  readonly efficiency: number;
  /** Ids of deliveries and carries, tried in order. */
  readonly wateredBy: readonly string[];
  readonly priority: number;
  readonly rule: BedRule;
  /** What is known when a watering is decided: the soil of last evening, or that of this morning with today's rain in it. */
  readonly decidesOn: "evening" | "morning";
  /** Leaves of its crops mingle over one root zone: one coefficient for all, weighed by height and share. */
  readonly mingled: boolean;
  /** Days after each planting on which the bed asks every day. */
  readonly youngDays: number;
  readonly groundWetting: GroundWetting | null;
  /** Whether wind and dryness of the record's air correct the coefficients of the tables; never under cover. */
  readonly airCorrects: boolean;
  /** Null: never let go. */
  readonly letGo: LetGo | null;
  /** What a square meter of it is worth to its grower, against others [1/m2]. */
  readonly worth: number;
};

export type LeftOut = {
  readonly id: string;
  readonly reason: string;
  /** Quantity at which the trouble began, where one is to blame. */
  readonly cause?: string;
};

/** What was noted of a part, and on which day [days since 1970-01-01]. */
export type PartEvent = { readonly what: "broke" | "mended"; readonly where: string; readonly date: number };

export type SeasonInput = {
  readonly start: MonthDay;
  readonly end: MonthDay;
  readonly storageRule: "spill_first" | "use_first";
  /** One person's time for watering a day [s]; null: no limit. */
  readonly minutesPerDay: number | null;
  /** Time of watering, after midnight [s]. */
  readonly waterAt: number;
  /** Days of the beds before it that must still be covered before a bed is watered. */
  readonly holdDays: number;
  readonly rainScale: number;
  /** [kg/m3] */
  readonly waterDensity: number;
  readonly eto: EtoChoice;
  readonly roofs: readonly RoofPart[];
  readonly tanks: readonly TankPart[];
  readonly lines: readonly LinePart[];
  readonly tees: readonly TeePart[];
  readonly draws: readonly DrawPart[];
  readonly deliveries: readonly DeliveryPart[];
  readonly carries: readonly CarryPart[];
  readonly batteries: readonly BatteryPart[];
  readonly beds: readonly BedPart[];
  /** How all parts hang together, those left out among them: what leads to them is stopped. */
  readonly network: Network;
  readonly leftOut: readonly LeftOut[];
  /** What broke and was mended by the notes, in order; left out: nothing. The days of a whole record know nothing of it. */
  readonly breaks?: readonly PartEvent[];
};
