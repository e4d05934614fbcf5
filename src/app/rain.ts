// The import of rain as the page knows it from the start; what reads, lays open and joins a record comes with the first of it.

import { createSignal } from "solid-js";
import type { ImportResult } from "../rainfall/import-result.ts";
import type { GaugeResult } from "../rainfall/own-gauge.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { RainImport } from "../ui/dialogs/rain-import.ts";
import type { WorkerClient } from "../worker/client.ts";
import type { Bringing, RainTools } from "./rain-bringing.ts";

export type RainEvents = Omit<RainTools, "state" | "setState" | "client">;

export function createRain(events: RainEvents) {
  const [state, setState] = createSignal<RainImport>({ state: "idle" });
  let client: WorkerClient | null = null;
  let fetched: Promise<Bringing> | null = null;
  const fetchAll = async (): Promise<Bringing> => {
    const { createBringing } = await import("./rain-bringing.ts");
    return createBringing({ ...events, state, setState, client: () => client });
  };
  const failed = (): void => {
    fetched = null;
    setState({
      state: "refused",
      reason: "What reads rain could not be fetched. Are you online? Try again.",
    });
  };
  /** In the order in which they were asked for, each once all of it is here. */
  const bringing = (act: (bringing: Bringing) => void): void => {
    fetched ??= fetchAll();
    void fetched.then(act, failed);
  };
  return {
    state,
    connect: (worker: WorkerClient): void => {
      client = worker;
    },
    take: (file: File): void => bringing((rain) => rain.take(file)),
    paste: (text: string): void => bringing((rain) => rain.paste(text)),
    choose: (question: string, value: string): void => bringing((rain) => rain.choose(question, value)),
    again: (record: DailyRecord): void => bringing((rain) => rain.again(record)),
    fill: (fill: string): void => bringing((rain) => rain.fill(fill)),
    warm: (warm: string): void => bringing((rain) => rain.warm(warm)),
    join: (join: string): void => bringing((rain) => rain.join(join)),
    keep: (): void => bringing((rain) => rain.keep()),
    progress: (share: number): void => bringing((rain) => rain.progress(share)),
    imported: (result: ImportResult | GaugeResult): void => bringing((rain) => rain.imported(result)),
    failed: (reason: string): void => bringing((rain) => rain.failed(reason)),
    forget: (): void => {
      if (fetched) bringing((rain) => rain.forget());
      else setState({ state: "idle" });
    },
  };
}
