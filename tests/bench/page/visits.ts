// What the benches of the page share.

export const DESK = { width: 1280, height: 800 };

export function middle(times: readonly number[], share = 0.5): number {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
}
