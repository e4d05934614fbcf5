// The rain file on its way in: reading in the worker, questions the file leaves open, and the report in sentences.

import { createSignal } from "solid-js";
import type { Choices, ImportReport, ImportResult } from "../rainfall/import-result.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { RainImport } from "../ui/sheet.ts";
import { isoDate } from "../units/calendar.ts";
import { type ShowOptions, showQuantity } from "../units/show.ts";
import type { WorkerClient } from "../worker/client.ts";

const UNITS: Readonly<Record<string, string>> = {
  mm: "millimetres",
  in: "inches",
  cm: "centimetres",
  tenth_mm: "tenths of a millimetre",
  hundredth_in: "hundredths of an inch",
};

const TOLD: Readonly<Record<string, string>> = {
  header: "as its header says",
  format: "as this kind of file always has it",
  choice: "as you said",
};

/** What a report says, in sentences. */
function factsOf(report: ImportReport, options: ShowOptions): readonly string[] {
  const facts = [`${report.format.name}: ${report.days} days in ${report.rows} rows.`];
  if (report.firstDay !== null && report.lastDay !== null)
    facts.push(`From ${isoDate(report.firstDay)} to ${isoDate(report.lastDay)}.`);
  if (report.unit.value && report.unit.told)
    facts.push(`Rain in ${UNITS[report.unit.value]}, ${TOLD[report.unit.told]}.`);
  facts.push(`Columns: ${report.columns.map((column) => `${column.name} (${column.use})`).join(", ")}.`);
  if (report.missingDays > 0) {
    const first = report.gaps[0];
    facts.push(
      `${report.missingDays} days are missing${first ? `, the first ${isoDate(first.first)}` : ""}.`,
    );
  } else facts.push("No day is missing.");
  if (report.duplicates) facts.push(`${report.duplicates.days} days stood twice: ${report.duplicates.done}.`);
  for (const year of report.years) {
    const rain = year.rain === null ? "not whole" : showQuantity(year.rain, "rain", options);
    facts.push(`${year.year}: ${rain}.`);
  }
  return [...facts, ...report.notes];
}

export type RainEvents = {
  readonly onRecord: (record: DailyRecord) => void;
  readonly showOptions: () => ShowOptions;
};

/** Import of one file at a time. */
export function createRain(events: RainEvents) {
  const [state, setState] = createSignal<RainImport>({ state: "idle" });
  let client: WorkerClient | null = null;
  let file: File | null = null;
  let choices: Choices = {};
  const read = () => {
    if (!client || !file) return;
    setState({ state: "reading", share: 0 });
    client.importRain(file, file.name, choices);
  };
  return {
    state,
    connect: (worker: WorkerClient): void => {
      client = worker;
    },
    take: (next: File): void => {
      file = next;
      choices = {};
      read();
    },
    choose: (question: string, value: string): void => {
      choices = { ...choices, [question]: value };
      read();
    },
    progress: (share: number): void => {
      if (state().state === "reading") setState({ state: "reading", share });
    },
    imported: (result: ImportResult): void => {
      if (result.state === "refused") {
        setState({
          state: "refused",
          reason: result.line === null ? result.reason : `Line ${result.line}: ${result.reason}`,
        });
      } else if (result.state === "ask") {
        setState({
          state: "asking",
          questions: result.questions,
          facts: factsOf(result.report, events.showOptions()),
        });
      } else {
        setState({
          state: "shown",
          title: `${result.record.title} came in`,
          facts: factsOf(result.report, events.showOptions()),
        });
        events.onRecord(result.record);
      }
    },
    failed: (reason: string): void => {
      setState({ state: "refused", reason });
    },
    forget: (): void => {
      setState({ state: "idle" });
    },
  };
}
