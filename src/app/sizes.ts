// Tries one tank in other sizes, and again when the place has changed; the curve of before stays until the new one is whole.

import { createEffect, createMemo, createSignal, on, onCleanup } from "solid-js";
import type { SizePoint } from "../scene/size-curve.ts";
import type { SeasonInput } from "../season/input.ts";
import { kneeOf } from "../studies/knee.ts";
import { SIZE_MULTIPLES } from "../studies/tank-sizes.ts";
import type { SizeStudy, Sizes } from "../ui/charts/sizes.ts";
import type { WorkerClient } from "../worker/client.ts";
import type { Engine } from "./engine.ts";

/** A number being typed or dragged goes on changing; the sizes wait until it rests [ms]. */
const REST = 400;

const NOTHING = { points: [], knee: null };

/** Sizes of one tank at a time. */
export function createSizes(engine: Engine, client: WorkerClient): Sizes {
  const [study, setStudy] = createSignal<SizeStudy | null>(null);
  const [card, setCard] = createSignal<string | null>(null);
  // The same result object stands for the same plan and record, so that other edits do not begin anything.
  const plan = createMemo(() => engine.view().results.get("season.plan"));
  const record = createMemo(() => engine.view().results.get("weather.record_in_use"));
  let timer: ReturnType<typeof setTimeout> | undefined;

  const fail = (id: string, reason: string): void => {
    setStudy({ card: id, curve: NOTHING, done: 0, of: SIZE_MULTIPLES.length, state: "failed", reason });
  };
  const begin = (id: string): void => {
    const [planned, key] = [plan(), record()];
    if (planned?.state === "pending" || key?.state === "pending") return;
    const held = key?.state === "ready" ? engine.records.get(String(key.value)) : undefined;
    if (planned?.state !== "ready" || !held) {
      fail(id, "The season cannot be run yet: its card says why.");
      return;
    }
    const points: SizePoint[] = [];
    const shown = (): SizeStudy["curve"] => {
      const before = study();
      return before?.state === "old" ? before.curve : { points: [...points], knee: null };
    };
    const report = (state: "working" | "old"): void => {
      setStudy({
        card: id,
        curve: shown(),
        done: points.length,
        of: SIZE_MULTIPLES.length,
        state,
        reason: "",
      });
    };
    const question = { plan: planned.value as SeasonInput, tank: id, multiples: SIZE_MULTIPLES };
    client.study(question, held, {
      onPart: (point) => {
        points.push(point);
        report(study()?.state === "old" ? "old" : "working");
      },
      onEnd: (failure) => {
        if (failure !== null) return fail(id, failure);
        const curve = { points: [...points], knee: kneeOf(points) };
        setStudy({ card: id, curve, done: points.length, of: points.length, state: "ready", reason: "" });
      },
    });
  };
  const stop = (): void => {
    clearTimeout(timer);
    client.cancelStudy();
  };
  createEffect(
    on(
      [plan, record],
      () => {
        const id = card();
        if (id === null) return;
        stop();
        setStudy((now) => now && { ...now, done: 0, state: now.state === "failed" ? "working" : "old" });
        timer = setTimeout(() => begin(id), REST);
      },
      { defer: true },
    ),
  );
  onCleanup(stop);
  return {
    study,
    ask: (id) => {
      stop();
      setCard(id);
      setStudy({
        card: id,
        curve: NOTHING,
        done: 0,
        of: SIZE_MULTIPLES.length,
        state: "working",
        reason: "",
      });
      begin(id);
    },
    close: () => {
      stop();
      setCard(null);
      setStudy(null);
    },
  };
}
