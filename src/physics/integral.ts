// Area under a smooth curve, refined where the curve bends.

const NODES = [
  0.1488743389816312, 0.4333953941292472, 0.6794095682990244, 0.8650633666889845, 0.9739065285171717,
];
const WEIGHTS = [
  0.2955242247147529, 0.2692667193099963, 0.219086362515982, 0.1494513491505806, 0.0666713443086881,
];
const DEEPEST = 40;

/**
 * Integral of a function over a range: ten-point Gauss-Legendre, halved until two halves agree with their whole.
 *
 * @param curve the function, smooth inside the range
 * @param from start of the range [any unit]
 * @param to end of the range [any unit]
 * @param relative disagreement that is accepted, of the whole [-]
 * @returns the integral [unit of the curve times unit of the range]
 * @source Abramowitz and Stegun, Handbook of Mathematical Functions, table 25.4 (from memory)
 */
export function integral(curve: (at: number) => number, from: number, to: number, relative = 1e-9): number {
  const whole = gauss(curve, from, to);
  return refined(curve, { from, to, whole, accept: relative * Math.abs(whole), depth: 0 });
}

type Piece = {
  readonly from: number;
  readonly to: number;
  readonly whole: number;
  readonly accept: number;
  readonly depth: number;
};

function refined(curve: (at: number) => number, { from, to, whole, accept, depth }: Piece): number {
  const middle = (from + to) / 2;
  const [left, right] = [gauss(curve, from, middle), gauss(curve, middle, to)];
  if (depth >= DEEPEST || Math.abs(left + right - whole) <= accept) return left + right;
  const next = { accept: accept / 2, depth: depth + 1 };
  return (
    refined(curve, { from, to: middle, whole: left, ...next }) +
    refined(curve, { from: middle, to, whole: right, ...next })
  );
}

function gauss(curve: (at: number) => number, from: number, to: number): number {
  const [middle, half] = [(from + to) / 2, (to - from) / 2];
  return NODES.reduce(
    (sum, node, index) =>
      sum + half * (WEIGHTS[index] ?? 0) * (curve(middle - half * node) + curve(middle + half * node)),
    0,
  );
}
