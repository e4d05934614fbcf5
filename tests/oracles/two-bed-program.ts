// Whom to water of two beds on one tank, by dynamic programming: each day's best choice for every level and both soils, by
// the rains of other years as if each day's were drawn by itself.

/** A bed as the program sees it: depths over its ground on each day of the season. */
export type ProgramBed = {
  /** Water to give for a depth [m3/m]. */
  readonly perDepth: number;
  /** Lack at which it asks [m]; then what its crops could use, what their root zone holds and what of it they take with ease. */
  readonly trigger: Float64Array;
  /** [m] */
  readonly potential: Float64Array;
  /** [m] */
  readonly total: Float64Array;
  /** [m] */
  readonly readily: Float64Array;
  /** Worth that is lost for a depth that its crops go without on each day [1/m]. */
  readonly cost: Float64Array;
};

export type Program = {
  /** [m3] */
  readonly capacity: number;
  /** Of the season [day] */
  readonly days: number;
  /** Roof water that comes on a day, equally likely [m3]. */
  readonly inflows: readonly (readonly number[])[];
  readonly beds: readonly [ProgramBed, ProgramBed];
};

/** Steps of the level and of each soil. */
const LEVELS = 28;
const SOILS = 14;

type Soils = readonly [number, number];
type Served = {
  /** [m3] */
  readonly drawn: number;
  readonly soils: Soils;
  /** [-] */
  readonly cost: number;
};

/** Which of the beds that ask are served; the first is served first. */
const CHOICES: readonly (readonly [boolean, boolean])[] = [
  [true, true],
  [true, false],
  [false, true],
  [false, false],
];

const at = (series: Float64Array, day: number): number => series[day] as number;

const asks = (bed: ProgramBed, day: number, lack: number): boolean =>
  at(bed.total, day) > 0 && lack >= at(bed.trigger, day) && lack > 0;

/** A day of a bed: water first, then use by FAO-56 Eq. 84. */
function dayOf(bed: ProgramBed, day: number, lack: number, given: number): { lack: number; cost: number } {
  const wet = Math.max(0, lack - given / bed.perDepth);
  const [total, readily] = [at(bed.total, day), at(bed.readily, day)];
  const share = wet <= readily ? 1 : Math.max(0, (total - wet) / (total - readily));
  const full = at(bed.potential, day);
  const use = Math.min(total - wet, full * share);
  return { lack: Math.min(total, wet + use), cost: (full - use) * at(bed.cost, day) };
}

/** A day under a choice, before its rain. */
function served(
  { beds }: Program,
  day: number,
  held: number,
  soils: Soils,
  choice: readonly boolean[],
): Served {
  let [drawn, cost] = [0, 0];
  const after = beds.map((bed, place) => {
    const lack = soils[place] as number;
    const wants = choice[place] && asks(bed, day, lack) ? lack * bed.perDepth : 0;
    const given = Math.min(wants, held - drawn);
    drawn += given;
    const next = dayOf(bed, day, lack, given);
    cost += next.cost;
    return next.lack;
  });
  return { drawn, soils: [after[0] as number, after[1] as number], cost };
}

/** The least losses still to come from a morning on, on a grid of level and soils. */
type Losses = Float64Array;

/** The largest root zone of a bed, which its grid spans. */
const span = ({ total }: ProgramBed): number => total.reduce((most, depth) => Math.max(most, depth), 1e-9);

type Place = { readonly low: number; readonly part: number };

function placeOf(value: number, most: number, steps: number): Place {
  const place = Math.min(steps - 1, Math.max(0, (value / most) * (steps - 1)));
  const low = Math.min(steps - 2, Math.floor(place));
  return { low, part: place - low };
}

/** Straight lines between the points of the grid of both soils, at one level. */
function betweenSoils(losses: Losses, level: number, one: Place, other: Place): number {
  const start = (level * SOILS + one.low) * SOILS + other.low;
  const [a, b] = [losses[start] as number, losses[start + 1] as number];
  const [c, d] = [losses[start + SOILS] as number, losses[start + SOILS + 1] as number];
  const near = a + (b - a) * other.part;
  return near + (c + (d - c) * other.part - near) * one.part;
}

/** Losses to come from the next morning on, with the day's rain still to fall. */
function ahead(program: Program, next: Losses, day: number, held: number, { drawn, soils }: Served): number {
  const [one, other] = program.beds.map((bed, place) =>
    placeOf(soils[place] as number, span(bed), SOILS),
  ) as [Place, Place];
  const inflows = program.inflows[day] as readonly number[];
  let sum = 0;
  for (const inflow of inflows) {
    const level = placeOf(Math.min(held + inflow, program.capacity) - drawn, program.capacity, LEVELS);
    const low = betweenSoils(next, level.low, one, other);
    sum += low + (betweenSoils(next, level.low + 1, one, other) - low) * level.part;
  }
  return sum / inflows.length;
}

/**
 * The least losses still to come on each morning of a season, the last one after it: 0.
 *
 * @param program the tank [m3], the beds' depths [m] and the rains [m3]
 * @returns losses by level and by both soils, a share of all worth [-]
 * @throws nothing
 * @validity one tank, two beds; each day's rain as if drawn by itself
 * @source stochastic dynamic programming, Stedinger, Sule and Loucks 1984 (from memory)
 */
export function solved(program: Program): readonly Losses[] {
  const size = LEVELS * SOILS * SOILS;
  const losses: Losses[] = Array.from({ length: program.days + 1 }, () => new Float64Array(size));
  const [first, second] = program.beds.map(span) as [number, number];
  for (let day = program.days - 1; day >= 0; day--) {
    const [now, next] = [losses[day] as Losses, losses[day + 1] as Losses];
    for (let point = 0; point < size; point++) {
      const held = (Math.floor(point / (SOILS * SOILS)) / (LEVELS - 1)) * program.capacity;
      const soils: Soils = [
        ((Math.floor(point / SOILS) % SOILS) / (SOILS - 1)) * first,
        ((point % SOILS) / (SOILS - 1)) * second,
      ];
      now[point] = Math.min(...lossesOf(program, next, day, held, soils));
    }
  }
  return losses;
}

function lossesOf(
  program: Program,
  next: Losses,
  day: number,
  held: number,
  soils: Soils,
): readonly number[] {
  const open = program.beds.map((bed, place) => asks(bed, day, soils[place] as number));
  return CHOICES.map((choice) => {
    // A bed that does not ask is neither served nor refused: one of the two ways is enough.
    if (choice.some((isServed, place) => !isServed && !open[place])) return Infinity;
    const done = served(program, day, held, soils, choice);
    return done.cost + ahead(program, next, day, held, done);
  });
}

/**
 * The choice that loses least on a morning.
 *
 * @param program as it was solved [-]
 * @param losses what is still lost from each morning on [-]
 * @param day of the season [day]
 * @param held water in the tank [m3]
 * @param soils what each bed's ground lacks [m]
 * @returns whether each bed is served, were it to ask [-]
 * @throws nothing
 * @validity levels and soils between those of the program
 * @source stochastic dynamic programming, Stedinger, Sule and Loucks 1984 (from memory)
 */
export function bestChoice(
  program: Program,
  losses: readonly Losses[],
  day: number,
  held: number,
  soils: Soils,
): readonly [boolean, boolean] {
  const each = lossesOf(program, losses[day + 1] as Losses, day, held, soils);
  return CHOICES[each.indexOf(Math.min(...each))] as readonly [boolean, boolean];
}
