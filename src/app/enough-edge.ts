// Between two values that were tried along an axis, the one from which on it is enough; loaded once a curve stands.

import { numberIn } from "../graph/readers.ts";
import { edgeOf, enoughRung } from "../studies/enough-edge.ts";
import { valueTrials } from "../studies/try.ts";
import { type Axis, placeOnAxis, type Turn } from "../studies/turn.ts";
import { fromSi } from "../units/unit.ts";
import { type AskFor, type Raw, triedOf } from "./tried.ts";

/** Where enough begins or ends along the axis, at a step of the hand that is enough; null where it does neither. */
export async function edgeFound(
  { turn, axis }: { readonly turn: Turn; readonly axis: Axis },
  answer: string,
  points: readonly Raw[],
  askFor: AskFor,
): Promise<Raw | null> {
  const edge = axis.form === "number" ? edgeOf(answer, triedOf(points, answer)) : null;
  if (!edge || axis.form !== "number") return null;
  const { scale } = axis;
  const looks = new Map(
    points.flatMap((raw) =>
      typeof raw.value === "number" ? [[fromSi(raw.value, scale.unit), raw] as const] : [],
    ),
  );
  const at = (place: number): number => [...looks].find(([, raw]) => raw.place === place)?.[0] ?? Number.NaN;
  const answerAt = async (values: readonly number[]): Promise<readonly (number | null)[]> => {
    const open = values.filter((value) => !looks.has(value));
    const trials = valueTrials(turn.target, open, scale.unit).map((trial) => ({
      ...trial,
      place: placeOnAxis(axis, trial.value) ?? 0,
    }));
    await askFor(trials, (raw) => {
      const value = open[trials.findIndex((trial) => trial.value === raw.value)];
      if (value !== undefined) looks.set(value, raw);
    });
    return values.map((value) => numberIn(looks.get(value)?.answers[answer]));
  };
  const found = await enoughRung(answerAt, scale, edge.wish, { met: at(edge.met), unmet: at(edge.unmet) });
  return looks.get(found) ?? null;
}
