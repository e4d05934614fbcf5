// Starts the page: what was open last, or the demo.

import "@fontsource-variable/atkinson-hyperlegible-next/wght.css";
import "../ui/style.css";
import { createSignal, Show } from "solid-js";
import { render } from "solid-js/web";
import { setWorksheet } from "../document/edits.ts";
import { recordNames } from "../document/record-names.ts";
import type { Worksheet } from "../document/worksheet.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { recordKey } from "../rainfall/record-key.ts";
import { browserStore } from "../storage/browser-store.ts";
import type { Bundle } from "../storage/bundle.ts";
import { isWorksheetLink, worksheetFromLink } from "../storage/link.ts";
import { makeRecordShelf } from "../storage/record-shelf.ts";
import { chanceId, makeShelf } from "../storage/shelf.ts";
import { markBorrowed } from "./borrowed.ts";
import { freeTitle } from "./free-title.ts";
import { keepForOffline } from "./offline.ts";
import type { Laid, PageShared, Thrown } from "./page-shared.ts";
import { firstWorksheet } from "./templates.ts";
import { Workbench } from "./Workbench.tsx";
import { fetchWords } from "./words.ts";
import { makeWorkerHub } from "./worker-hub.ts";

const store = browserStore();
const shelf = makeShelf(store, chanceId);
const recordShelf = makeRecordShelf(store);
const [laid, setLaid] = createSignal<Laid | null>(null);
const [said, setSaid] = createSignal("");
const [thrown, setThrown] = createSignal<Thrown | null>(null);

const shared: PageShared = {
  words: fetchWords(() => setSaid("Cautions and explanations could not be fetched yet; trying again.")),
  shelf,
  recordShelf,
  hub: makeWorkerHub(),
  lay: (worksheet, records = [], notice = "") =>
    setLaid({ id: chanceId(), revision: 0, worksheet, records, notice, readOnly: false }),
  open: (id) => openKept(id),
  receive: (bundle) => void receive(bundle),
  titlesKept,
  said,
  setSaid,
  thrown,
  setThrown,
  openAnother: async () => {
    const listed = await shelf.list();
    for (const { id } of listed.ok ? listed.value : []) if (await openKept(id)) return;
    await shelf.setCurrent(null);
    shared.lay(firstWorksheet());
  },
};

async function titlesKept(): Promise<ReadonlySet<string>> {
  const listed = await shelf.list();
  return new Set(listed.ok ? listed.value.map(({ title }) => title) : []);
}

/** What somebody sent opens as a worksheet of its own. */
async function receive(bundle: Bundle): Promise<void> {
  for (const record of bundle.records) void recordShelf.keep(record, Date.now());
  const { made_by, made_on, title } = bundle.worksheet;
  const sent = setWorksheet(bundle.worksheet, { title: freeTitle(title, await titlesKept(), made_by) });
  const from = `"${title}" was made by ${made_by || "somebody who gave no name"}${made_on ? ` on ${made_on}` : ""}. It is kept as a worksheet of its own, beside any other.`;
  setLaid({
    id: chanceId(),
    revision: 0,
    worksheet: bundle.readOnly ? bundle.worksheet : markBorrowed(sent),
    records: bundle.records,
    notice: [from, ...bundle.notes].join(" "),
    readOnly: bundle.readOnly,
    received: bundle.worksheet,
  });
}

/** Opens the worksheet in the address, if there is one; the address is then bare again. */
async function fromAddress(): Promise<boolean> {
  const { hash } = location;
  if (!isWorksheetLink(hash)) return false;
  history.replaceState(null, "", location.pathname);
  const read = await worksheetFromLink(hash, recordKey);
  if (read.ok) await receive(read);
  else {
    setSaid(read.problems[0]?.message ?? "This link could not be read.");
    if (!laid()) await openUsual();
  }
  return true;
}

async function recordsOf(worksheet: Worksheet): Promise<readonly DailyRecord[]> {
  const loaded = await Promise.all(recordNames(worksheet).map((key) => recordShelf.load(key)));
  return loaded.flatMap((kept) => (kept.ok && kept.value ? [kept.value] : []));
}

/** Opens a kept sheet; a broken one is set aside and said, and the demo opens instead. */
async function openKept(id: string): Promise<boolean> {
  const opened = await shelf.open(id, Date.now());
  if (!opened.ok || opened.value.state === "absent") return false;
  if (opened.value.state === "set_aside") {
    shared.lay(
      firstWorksheet(),
      [],
      "The worksheet kept here could not be read. It was set aside whole: save it as a file under Worksheets. The demo was opened instead.",
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

async function openUsual(): Promise<void> {
  const current = await shelf.current();
  const id = current.ok ? current.value : null;
  if (id !== null && (await openKept(id))) return;
  shared.lay(firstWorksheet(), [], current.ok ? "" : current.failure.text);
}

async function begin(): Promise<void> {
  if (!(await fromAddress())) await openUsual();
  void recordShelf.prune(new Set(), Date.now());
  void keepForOffline();
}

const page = document.getElementById("page");
if (page) {
  render(
    () => (
      <Show when={laid()} keyed>
        {(sheet) => <Workbench laid={sheet} shared={shared} />}
      </Show>
    ),
    page,
  );
}
addEventListener("hashchange", () => void fromAddress());
void begin();
