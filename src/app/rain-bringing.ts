// Rain on its way in: read in the worker, shown, overridden, joined and filled by the user's word, and only then taken.

import type { ImportResult } from "../rainfall/import-result.ts";
import { type GaugeResult, readOwnGauge } from "../rainfall/own-gauge.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { RainImport } from "../ui/dialogs/rain-import.ts";
import type { ShowOptions } from "../units/show.ts";
import type { WorkerClient } from "../worker/client.ts";
import { type Arriving, AS_IT_IS, fromFile, fromGauge, previewOf, settled } from "./rain-arriving.ts";
import { createChoices } from "./rain-choices.ts";

export type RainTools = {
  readonly onRecord: (record: DailyRecord) => void;
  readonly showOptions: () => ShowOptions;
  /** Records of real weather at hand, to fill from and to join with. */
  readonly others: () => readonly DailyRecord[];
  readonly state: () => RainImport;
  readonly setState: (next: RainImport) => void;
  readonly client: () => WorkerClient | null;
};

type Preview = Extract<RainImport, { readonly state: "shown" }>["preview"];

type Source = { readonly file: File } | { readonly text: string };

/** Readings of a gauge, or a table if a line of the text cannot be such a reading but may be a row. */
function sourceOf(text: string): Source {
  const isTable = readOwnGauge(text).state === "refused" && /[,;\t]/.test(text.split("\n")[0] ?? "");
  return isTable ? { file: new File([text], "Pasted record") } : { text };
}

function openedAgain(record: DailyRecord): Arriving {
  const none = { facts: [], assumptions: [], questions: [], open: [], answers: {}, taken: [] };
  return { record, ...none, table: { header: [], rows: [] } };
}

function laidOpen({ questions }: Arriving, preview: Preview): RainImport {
  return questions.length > 0 ? { state: "asking", questions, preview } : { state: "shown", preview };
}

/** "Line 3: ..." of a refusal whose line is known. */
const refusal = (reason: string, line: number | null): string =>
  line === null ? reason : `Line ${line}: ${reason}`;

/** What is being brought in, and everything said about it so far. */
function createArrival({ setState, ...events }: RainTools) {
  const choices = createChoices();
  let words = AS_IT_IS;
  let arriving: Arriving | null = null;
  const others = (): readonly DailyRecord[] =>
    events.others().filter((other) => other.key !== arriving?.record?.key);
  const show = (wrong = ""): void => {
    if (!arriving) return;
    const preview = { ...previewOf(arriving, words, others(), events.showOptions()), wrong };
    setState(laidOpen(arriving, preview));
  };
  const refuse = (reason: string, line: number | null): void => {
    const text = refusal(reason, line);
    if (arriving) {
      choices.back();
      show(text);
    } else setState({ state: "refused", reason: text });
  };
  return {
    refuse,
    choices: choices.all,
    clear: (): void => {
      choices.clear();
      words = AS_IT_IS;
      arriving = null;
    },
    choose: choices.choose,
    say: (more: Partial<typeof words>): void => {
      words = { ...words, ...more };
      show();
    },
    /** Shows what came, or says that it has to be read again with more answered. */
    accept: (result: ImportResult | GaugeResult): "shown" | "again" => {
      if (result.state === "refused") {
        if (choices.readPlainly()) return "again";
        refuse(result.reason, result.line);
        return "shown";
      }
      const questions = result.state === "ask" ? result.questions : [];
      const asked = choices.askedWith(questions);
      if ("report" in result && choices.presume(questions)) return "again";
      const isFile = "report" in result;
      arriving = isFile ? fromFile(result, choices.all(), asked) : fromGauge(result, choices.chosen(), asked);
      show();
      return "shown";
    },
    /** A record that came in before, laid open again to fill or to join. */
    reopen: (record: DailyRecord): void => {
      arriving = openedAgain(record);
      show();
    },
    keep: (): void => {
      if (!arriving?.record) return;
      const { record, facts } = settled(arriving.record, words, others());
      setState({ state: "taken", title: `${record.title} came in`, facts: [...arriving.facts, ...facts] });
      arriving = null;
      events.onRecord(record);
    },
  };
}

/** Import of one record at a time. */
export function createBringing(tools: RainTools) {
  const { state, setState, client } = tools;
  const arrival = createArrival(tools);
  let source: Source | null = null;
  const accept = (result: ImportResult | GaugeResult): void => {
    if (arrival.accept(result) === "again") read();
  };
  const read = (): void => {
    if (!source) return;
    if ("text" in source) {
      accept(readOwnGauge(source.text, arrival.choices()));
      return;
    }
    setState({ state: "reading", share: 0, name: source.file.name });
    client()?.importRain(source.file, source.file.name, arrival.choices());
  };
  const begin = (next: Source): void => {
    source = next;
    arrival.clear();
    read();
  };
  return {
    take: (file: File): void => begin({ file }),
    paste: (text: string): void => begin(sourceOf(text)),
    choose: (question: string, value: string): void => {
      arrival.choose(question, value);
      read();
    },
    again: (record: DailyRecord): void => {
      source = null;
      arrival.clear();
      arrival.reopen(record);
    },
    fill: (fill: string): void => arrival.say({ fill }),
    warm: (warm: string): void => arrival.say({ warm }),
    join: (join: string): void => arrival.say({ ...AS_IT_IS, join }),
    keep: arrival.keep,
    progress: (share: number): void => {
      const now = state();
      if (now.state === "reading") setState({ ...now, share });
    },
    imported: accept,
    failed: (reason: string): void => arrival.refuse(reason, null),
    forget: (): void => {
      client()?.cancelImport();
      arrival.clear();
      setState({ state: "idle" });
    },
  };
}

export type Bringing = ReturnType<typeof createBringing>;
