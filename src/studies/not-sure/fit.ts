// An answer as a sum of few terms over an orthogonal basis: products of Legendre polynomials over the places of one doubt or
// two, fitted to the runs that are there anyway, and taken one by one while they foretell runs that they have not seen.

/** Degrees of a term of one doubt alone. */
const MOST_ALONE = 8;
/** Degrees of a term of two doubts, together. */
const MOST_TOGETHER = 5;
/** A fit has a term for so many runs at the most. */
const RUNS_A_TERM = 3;
const MOST_TERMS = 48;
/** A column of whose square less than this is left says nothing that the terms before it did not. */
const NOTHING_LEFT = 1e-6;

/** Its degree in each doubt that it has. */
type Term = readonly (readonly [doubt: number, degree: number])[];

/** What is fitted is the sum of its terms and a constant. */
export type Fit = {
  readonly terms: readonly { readonly term: Term; readonly factor: number }[];
  /** Variance of the answer: of the runs, or of all terms where these come to more. */
  readonly variance: number;
};

/**
 * Legendre polynomials over places from 0 to 1, so scaled that their mean square is 1.
 *
 * @returns by degree, 0 first
 * @source Abramowitz & Stegun (1964), 22.7.10 (recurrence), 22.2.11 (norm), from memory
 */
export function legendre(place: number, most: number): Float64Array {
  const x = 2 * place - 1;
  const plain = new Float64Array(most + 1);
  plain[0] = 1;
  if (most > 0) plain[1] = x;
  for (let n = 1; n < most; n++) {
    plain[n + 1] = ((2 * n + 1) * x * (plain[n] as number) - n * (plain[n - 1] as number)) / (n + 1);
  }
  return plain.map((value, degree) => value * Math.sqrt(2 * degree + 1));
}

function pairTerms(one: number, other: number): readonly Term[] {
  const terms: Term[] = [];
  for (let a = 1; a < MOST_TOGETHER; a++) {
    for (let b = 1; a + b <= MOST_TOGETHER; b++)
      terms.push([
        [one, a],
        [other, b],
      ]);
  }
  return terms;
}

function allTerms(doubts: number): readonly Term[] {
  const terms: Term[] = [];
  for (let one = 0; one < doubts; one++) {
    for (let degree = 1; degree <= MOST_ALONE; degree++) terms.push([[one, degree]]);
    for (let other = one + 1; other < doubts; other++) terms.push(...pairTerms(one, other));
  }
  return terms;
}

type Columns = readonly Float64Array[];

const dot = (a: Float64Array, b: Float64Array): number => {
  let sum = 0;
  for (let at = 0; at < a.length; at++) sum += (a[at] as number) * (b[at] as number);
  return sum;
};

/** Takes a direction of length 1 out of a column; how much of it there was. */
function takeAway(from: Float64Array, unit: Float64Array): number {
  const along = dot(from, unit);
  for (let at = 0; at < from.length; at++) from[at] = (from[at] as number) - along * (unit[at] as number);
  return along;
}

const scaled = (column: Float64Array, by: number): Float64Array => column.map((value) => value * by);

function columnsOf(terms: readonly Term[], places: Columns): Columns {
  const runs = places[0]?.length ?? 0;
  const bases = places.map((axis) => Array.from(axis, (place) => legendre(place, MOST_ALONE)));
  return terms.map((term) => {
    const column = new Float64Array(runs).fill(1);
    for (const [doubt, degree] of term) {
      const basis = bases[doubt] ?? [];
      for (let at = 0; at < runs; at++) column[at] = (column[at] as number) * (basis[at]?.[degree] as number);
    }
    return column;
  });
}

/** A column freed of the terms taken so far: its square, and what it has in common with what is left of the answer. */
type Open = { readonly column: Float64Array; square: number; common: number };

/** The column that takes most of what is left along with it; -1 where none takes anything. */
function bestOf(open: readonly Open[], runs: number): number {
  let [best, most] = [-1, 0];
  for (const [at, { square, common }] of open.entries()) {
    if (square < NOTHING_LEFT * runs) continue;
    const taken = common ** 2 / square;
    if (taken > most) [best, most] = [at, taken];
  }
  return best;
}

/** Takes a direction out of every open column and out of what is left of the answer. */
function takeTerm(open: readonly Open[], rest: Float64Array, unit: Float64Array): void {
  const restAlong = takeAway(rest, unit);
  for (const one of open) {
    const along = takeAway(one.column, unit);
    one.square -= along ** 2;
    one.common -= along * restAlong;
  }
}

/**
 * Mean square of what a fit of so many terms gets wrong of a run that was left out of it, told from the fit to all runs, and
 * raised for how few runs there are to a term.
 *
 * @source Allen (1974), Technometrics 16(1), 125-127 (left out one by one); Chapelle, Vapnik & Bengio (2002), Machine
 * Learning 48, 9-23 (the raise), both from memory
 */
function leftOut(rest: Float64Array, leverage: Float64Array, terms: number): number {
  const runs = rest.length;
  let sum = 0;
  for (let at = 0; at < runs; at++) {
    sum += ((rest[at] as number) / Math.max(1e-9, 1 - (leverage[at] as number))) ** 2;
  }
  return (sum / runs) * ((runs + terms) / (runs - terms));
}

function opened(columns: Columns, rest: Float64Array): readonly Open[] {
  const one = new Float64Array(rest.length).fill(1 / Math.sqrt(rest.length));
  return columns.map((whole) => {
    const column = whole.slice();
    takeAway(column, one);
    return { column, square: dot(column, column), common: dot(column, rest) };
  });
}

/** Places of the terms in the order in which they are taken, as many as foretell best. */
function chosen(columns: Columns, centred: Float64Array): readonly number[] {
  const runs = centred.length;
  const rest = centred.slice();
  const open = opened(columns, rest);
  const leverage = new Float64Array(runs).fill(1 / runs);
  const taken: number[] = [];
  let [count, least] = [0, leftOut(rest, leverage, 0)];
  const most = Math.min(MOST_TERMS, Math.floor(runs / RUNS_A_TERM));
  while (taken.length < most) {
    const at = bestOf(open, runs);
    const column = open[at]?.column;
    if (!column) break;
    const unit = scaled(column, 1 / Math.sqrt(dot(column, column)));
    takeTerm(open, rest, unit);
    for (let run = 0; run < runs; run++)
      leverage[run] = (leverage[run] as number) + (unit[run] as number) ** 2;
    taken.push(at);
    const wrong = leftOut(rest, leverage, taken.length);
    if (wrong < least) [count, least] = [taken.length, wrong];
  }
  return taken.slice(0, count);
}

/** Factors of columns by least squares. */
function factorsOf(columns: Columns, centred: Float64Array): readonly number[] {
  const units: Float64Array[] = [];
  const upper: number[][] = columns.map(() => []);
  for (const [at, column] of columns.entries()) {
    const left = column.slice();
    for (const [before, unit] of units.entries()) {
      (upper[before] as number[])[at] = dot(left, unit);
      takeAway(left, unit);
    }
    const size = Math.sqrt(dot(left, left));
    (upper[at] as number[])[at] = size;
    units.push(scaled(left, 1 / size));
  }
  const factors = units.map((unit) => dot(unit, centred));
  for (let at = factors.length - 1; at >= 0; at--) {
    const row = upper[at] as number[];
    for (let later = at + 1; later < factors.length; later++) {
      factors[at] = (factors[at] as number) - (row[later] as number) * (factors[later] as number);
    }
    factors[at] = (factors[at] as number) / (row[at] as number);
  }
  return factors;
}

/**
 * Fits an answer over the places of the doubts.
 *
 * @param places an axis a doubt, each of one place a run, from 0 to 1
 * @param answers one a run
 */
export function fitOf(places: Columns, answers: Float64Array): Fit {
  const runs = answers.length;
  const mean = answers.reduce((sum, value) => sum + value, 0) / Math.max(1, runs);
  const centred = answers.map((value) => value - mean);
  const variance = dot(centred, centred) / Math.max(1, runs);
  if (variance === 0) return { terms: [], variance };
  const terms = allTerms(places.length);
  const columns = columnsOf(terms, places);
  const taken = chosen(columns, centred);
  const one = new Float64Array(runs).fill(1);
  const factors = factorsOf([one, ...taken.map((at) => columns[at] as Float64Array)], centred).slice(1);
  const told = factors.reduce((sum, factor) => sum + factor ** 2, 0);
  const fitted = taken.map((at, place) => ({ term: terms[at] as Term, factor: factors[place] as number }));
  return { variance: Math.max(variance, told), terms: fitted };
}

/** What the terms come to at places, one a doubt; the constant is left out. */
export function fitAt({ terms }: Fit, places: readonly number[]): number {
  const bases = new Map<number, Float64Array>();
  const factorOf = (doubt: number, degree: number): number => {
    const basis = bases.get(doubt) ?? legendre(places[doubt] ?? 0, MOST_ALONE);
    bases.set(doubt, basis);
    return basis[degree] as number;
  };
  return terms.reduce(
    (sum, { term, factor }) =>
      sum + term.reduce((product, [doubt, degree]) => product * factorOf(doubt, degree), factor),
    0,
  );
}

/** The part of the answer's variance that comes from a doubt alone: its share of the first order, 0 to 1. */
export function shareOf({ terms, variance }: Fit, doubt: number): number {
  if (variance === 0) return 0;
  const own = terms.filter(({ term }) => term.length === 1 && term[0]?.[0] === doubt);
  return Math.min(1, own.reduce((sum, { factor }) => sum + factor ** 2, 0) / variance);
}
