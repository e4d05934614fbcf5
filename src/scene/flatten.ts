// A stroke as points a few px apart, to know where it runs. It reads the commands that the drawing writes, no others.

export type Spot2 = readonly [x: number, y: number];

const STEPS = 8;

type Pen = { at: Spot2; start: Spot2; points: Spot2[] };

/** How many numbers a command takes. */
const TAKES: Readonly<Record<string, number>> = { M: 2, L: 2, H: 1, V: 1, Q: 4, C: 6, A: 7, Z: 0 };

function curve(pen: Pen, corners: readonly Spot2[]): void {
  const all = [pen.at, ...corners];
  for (let step = 1; step <= STEPS; step++) {
    const share = step / STEPS;
    const [xs, ys] = [all.map(([x]) => x), all.map(([, y]) => y)];
    // From a line of corners to the line of points between them, until one is left.
    for (let last = all.length - 1; last > 0; last--)
      for (let index = 0; index < last; index++) {
        xs[index] = between(xs, index, share);
        ys[index] = between(ys, index, share);
      }
    pen.points.push([xs[0] ?? 0, ys[0] ?? 0]);
  }
}

function between(values: readonly number[], index: number, share: number): number {
  const [from = 0, to = 0] = [values[index], values[index + 1]];
  return from + (to - from) * share;
}

/** Corners of a command, the last of them its end; an arc counts as the box around both ways. */
function corners(pen: Pen, letter: string, numbers: readonly number[]): readonly Spot2[] {
  const isRelative = letter !== letter.toUpperCase();
  const [dx, dy] = isRelative ? pen.at : [0, 0];
  const command = letter.toUpperCase();
  if (command === "H") return [[(numbers[0] ?? 0) + dx, pen.at[1]]];
  if (command === "V") return [[pen.at[0], (numbers[0] ?? 0) + dy]];
  const pairs = command === "A" ? numbers.slice(5) : numbers;
  return Array.from({ length: pairs.length / 2 }, (_, index) => [
    (pairs[2 * index] ?? 0) + dx,
    (pairs[2 * index + 1] ?? 0) + dy,
  ]);
}

function run(pen: Pen, letter: string, numbers: readonly number[], lines: Spot2[][]): void {
  const command = letter.toUpperCase();
  if (command === "Z") {
    pen.points.push(pen.start);
    pen.at = pen.start;
    return;
  }
  const ends = corners(pen, letter, numbers);
  const end = ends[ends.length - 1] ?? pen.at;
  if (command === "M") {
    pen.points = [];
    pen.start = end;
    lines.push(pen.points);
  }
  if (command === "Q" || command === "C") curve(pen, ends);
  else pen.points.push(end);
  pen.at = end;
}

/** The lines of a path, each as its points in order. */
export function flatten(d: string): readonly (readonly Spot2[])[] {
  const lines: Spot2[][] = [];
  const pen: Pen = { at: [0, 0], start: [0, 0], points: [] };
  for (const [, letter = "", text = ""] of d.matchAll(/([a-zA-Z])([^a-zA-Z]*)/g)) {
    const numbers = (text.match(/-?[\d.]+/g) ?? []).map(Number);
    const takes = TAKES[letter.toUpperCase()] ?? 2;
    const times = Math.max(1, takes === 0 ? 1 : Math.floor(numbers.length / takes));
    for (let turn = 0; turn < times; turn++) {
      // After a first move further pairs are lines.
      const each = turn > 0 && letter === "M" ? "L" : letter;
      run(pen, each, numbers.slice(turn * takes, (turn + 1) * takes), lines);
    }
  }
  return lines;
}
