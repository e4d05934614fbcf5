// Starts the page: what was open last, or the demo.

import "@fontsource-variable/atkinson-hyperlegible-next/wght.css";
import "../ui/style.css";
import { createSignal, Show } from "solid-js";
import { render } from "solid-js/web";
import { recordNames } from "../document/record-names.ts";
import type { Worksheet } from "../document/worksheet.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { browserStore } from "../storage/browser-store.ts";
import { makeRecordShelf } from "../storage/record-shelf.ts";
import { chanceId, makeShelf } from "../storage/shelf.ts";
import type { Desk, Laid } from "./desk.ts";
import { firstWorksheet } from "./templates.ts";
import { Workbench } from "./Workbench.tsx";
import { makeWorkerHub } from "./worker-hub.ts";

const store = browserStore();
const shelf = makeShelf(store, chanceId);
const recordShelf = makeRecordShelf(store);
const [laid, setLaid] = createSignal<Laid | null>(null);

const desk: Desk = {
  shelf,
  recordShelf,
  hub: makeWorkerHub(),
  lay: (worksheet, records = [], notice = "") =>
    setLaid({ id: chanceId(), revision: 0, worksheet, records, notice, readOnly: false }),
  open: (id) => openKept(id),
};

async function recordsOf(worksheet: Worksheet): Promise<readonly DailyRecord[]> {
  const loaded = await Promise.all(recordNames(worksheet).map((key) => recordShelf.load(key)));
  return loaded.flatMap((kept) => (kept.ok && kept.value ? [kept.value] : []));
}

/** Opens a kept sheet; a broken one is set aside and said, and the demo opens instead. */
async function openKept(id: string): Promise<boolean> {
  const opened = await shelf.open(id, Date.now());
  if (!opened.ok || opened.value.state === "absent") return false;
  if (opened.value.state === "set_aside") {
    desk.lay(
      firstWorksheet(),
      [],
      "The worksheet kept here could not be read. It was set aside whole, nothing of it is lost, and the demo was opened instead.",
    );
    return true;
  }
  const { sheet } = opened.value;
  const { worksheet } = sheet;
  setLaid({
    id,
    revision: sheet.revision,
    worksheet,
    records: await recordsOf(worksheet),
    notice: "",
    readOnly: sheet.readOnly,
  });
  return true;
}

async function begin(): Promise<void> {
  const current = await shelf.current();
  const id = current.ok ? current.value : null;
  if (id !== null && (await openKept(id))) return;
  desk.lay(firstWorksheet());
}

const page = document.getElementById("page");
if (page) {
  render(
    () => (
      <Show when={laid()} keyed>
        {(sheet) => <Workbench laid={sheet} desk={desk} />}
      </Show>
    ),
    page,
  );
}
void begin();
