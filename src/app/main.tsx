// Starts the page: what was open last, or the demo.

import "@fontsource-variable/atkinson-hyperlegible-next/wght.css";
import "../ui/style.css";
import { createSignal, Show } from "solid-js";
import { render } from "solid-js/web";
import { setWorksheet } from "../document/edits.ts";
import { recordNames } from "../document/record-names.ts";
import type { Worksheet } from "../document/worksheet.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { recordKey, textKey } from "../rainfall/record-key.ts";
import { browserStore } from "../storage/browser-store.ts";
import type { Bundle } from "../storage/bundle.ts";
import { instantStore } from "../storage/instant-store.ts";
import { dropNote, makeJournal, type Note } from "../storage/journal.ts";
import { isWorksheetLink } from "../storage/link-mark.ts";
import { makeRecordShelf } from "../storage/record-shelf.ts";
import { chanceId, makeShelf } from "../storage/shelf.ts";
import { makeTypedTexts } from "../storage/typed-texts.ts";
import { firstPaint } from "../ui/after-paint.ts";
import { fetchInSeason } from "../ui/field/fetch-in-season.ts";
import { fieldPageIn } from "../ui/field/pages.ts";
import { markBorrowed } from "./borrowed.ts";
import { workAhead } from "./engine.ts";
import { freeTitle } from "./free-title.ts";
import { keepForOffline } from "./offline.ts";
import { openOtherTabs } from "./other-tabs.ts";
import { worksheetInPage } from "./page-in-one-file.ts";
import type { Laid, PageShared, Thrown } from "./page-shared.ts";
import { createReadOnce } from "./read-once.ts";
import { fetchReading, NOT_FETCHED } from "./reading.ts";
import { takeUp } from "./taking-up.ts";
import { firstWorksheet } from "./templates.ts";
import { openTab } from "./this-tab.ts";
import { adoptTyped } from "./typed-left.ts";
import { Workbench } from "./Workbench.tsx";
import { fetchWords } from "./words.ts";
import { makeWorkerHub } from "./worker-hub.ts";

// At the bed nobody waits for the sheet: its page is fetched while the store is asked what is open.
if (fieldPageIn(location.hash)) fetchInSeason().catch(() => undefined);

const store = browserStore();
const shelf = makeShelf(store, chanceId);
const notes = instantStore(() => localStorage);
const recordShelf = makeRecordShelf(store, notes);
const tab = openTab(notes);
const typed = makeTypedTexts(notes, tab.writer, () => Date.now());
const [laid, setLaid] = createSignal<Laid | null>(null);
const [said, setSaid] = createSignal("");
const [thrown, setThrown] = createSignal<Thrown | null>(null);

const first = firstWorksheet();
/** The first worksheet has one id in every tab: two fresh tabs show one sheet, not two. */
const FIRST = "first";

let flushOpen: () => Promise<void> = async () => undefined;

const shared: PageShared = {
  words: fetchWords(() => setSaid("Cautions and explanations could not be fetched yet; trying again.")),
  shelf,
  recordShelf,
  device: notes,
  readOnce: createReadOnce(notes),
  journal: makeJournal(notes, tab.writer),
  typed,
  otherTabs: openOtherTabs(),
  shows: tab.shows,
  leaves: tab.leaves,
  returns: tab.returns,
  setFlush: (flush) => {
    flushOpen = flush;
  },
  recordsOf,
  hub: makeWorkerHub(),
  lay: (worksheet, records = [], notice = "", begun) =>
    setLaid({ id: chanceId(), revision: 0, worksheet, records, notice, readOnly: false, begun }),
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
    // Nobody waits for the disk to see it.
    void shelf.setCurrent(null);
    await workedAhead;
    layFirst("");
  },
};

function layFirst(notice: string): void {
  setLaid({
    id: FIRST,
    revision: 0,
    worksheet: first,
    records: [],
    notice,
    readOnly: false,
    first: notice === "",
  });
}

async function titlesKept(): Promise<ReadonlySet<string>> {
  const listed = await shelf.list();
  return new Set(listed.ok ? listed.value.map(({ title }) => title) : []);
}

/** What somebody sent opens as a worksheet of its own. */
async function receive(bundle: Bundle, id: string = chanceId()): Promise<void> {
  for (const record of bundle.records) void recordShelf.keep(record, Date.now());
  const { made_by, title } = bundle.worksheet;
  const sent = setWorksheet(bundle.worksheet, { title: freeTitle(title, await titlesKept(), made_by) });
  setLaid({
    id,
    revision: 0,
    worksheet: bundle.readOnly ? bundle.worksheet : markBorrowed(sent),
    records: bundle.records,
    notice: bundle.notes.join(" "),
    readOnly: bundle.readOnly,
    received: bundle.worksheet,
  });
}

const OPENED_BEFORE = {
  link: "This link was opened here before. The worksheet it brought is shown as you left it; no second one was made.",
  page: "This page was opened here before. The worksheet in it is shown as you left it; no second one was made.",
};

/** What came by link, or in the page's own file, has an id by its content: the same again finds the worksheet that it brought. */
async function receiveAgain(bundle: Bundle, by: keyof typeof OPENED_BEFORE): Promise<void> {
  await flushOpen();
  const id = `${by}-${textKey(JSON.stringify(bundle.worksheet))}`;
  if (await openKept(id, OPENED_BEFORE[by])) return;
  const { refused } = await takenUp;
  if (refused?.id === id) await openRefused(refused);
  else await receive(bundle, id);
}

/** Opens the worksheet in the address, if there is one; the address is then bare again. */
async function fromAddress(): Promise<boolean> {
  const { hash } = location;
  if (!isWorksheetLink(hash)) return false;
  history.replaceState(null, "", location.pathname);
  const { worksheetFromLink } = await import("../storage/link.ts");
  const read = await worksheetFromLink(hash, recordKey);
  if (read.ok) await receiveAgain(read, "link");
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
async function openKept(id: string, notice = ""): Promise<boolean> {
  if ((await fetchReading()) === null) {
    layFirst(NOT_FETCHED);
    return true;
  }
  const opened = await shelf.open(id, Date.now());
  if (!opened.ok || opened.value.state === "absent") return false;
  if (opened.value.state === "set_aside") {
    layFirst(
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
    notice,
    readOnly: sheet.readOnly,
  });
  return true;
}

/** Opens what the slow store refused as it was noted; it is noted again by this page, and the old note goes. */
async function openRefused(note: Note): Promise<void> {
  const { id, basedOn, worksheet } = note;
  const records = await recordsOf(worksheet);
  setLaid({ id, revision: basedOn, worksheet, records, notice: "", readOnly: false, unkept: true });
  dropNote(notes, note);
}

/** What pages that are gone left here is taken up once, before anything is opened. */
const takenUp = Promise.all([takeUp({ notes, shelf, tab }), adoptTyped(notes, typed, tab)]).then(
  ([sheets]) => sheets,
);

/** What was worked on last: what a page that is gone left here, what this tab showed, what any tab kept last. */
async function openLast(asked = shelf.current()): Promise<boolean> {
  const { sheet, refused } = await takenUp;
  if (refused) {
    await openRefused(refused);
    return true;
  }
  const current = await asked;
  const kept = current.ok ? current.value : null;
  for (const id of [sheet, tab.before?.sheet, kept]) if (id && (await openKept(id))) return true;
  return false;
}

/** What was worked on last, else the demo. */
async function openUsual(): Promise<void> {
  const asked = shelf.current();
  if (await openLast(asked)) return;
  const current = await asked;
  if (current.ok) await shared.openAnother();
  else layFirst(current.failure.text);
}

const isReload = (): boolean =>
  performance
    .getEntriesByType("navigation")
    .some((entry) => entry instanceof PerformanceNavigationTiming && entry.type === "reload");

/** Opens the worksheet in the page's own file, if there is one; a reload goes on with what was open. */
async function fromOwnPage(): Promise<boolean> {
  const text = worksheetInPage();
  if (text === "") return false;
  if (isReload() && (await openLast())) return true;
  const { worksheetFromFileText } = await import("../storage/file.ts");
  const read = worksheetFromFileText(text, recordKey);
  if (read.ok) await receiveAgain(read, "page");
  else setSaid(`The worksheet in this page cannot be read: ${read.problems[0]?.message ?? "it is broken"}`);
  return read.ok;
}

async function begin(): Promise<void> {
  setSaid((await takenUp).notice);
  tab.forgetLeft();
  if (!(await fromAddress()) && !(await fromOwnPage())) await openUsual();
  await recordShelf.takeUp(Date.now());
  void recordShelf.prune(new Set(), Date.now());
  await firstPaint;
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
// The browser asks before it lets a page go whose record is longer than the instant store has room for, until it is kept.
addEventListener("beforeunload", (event) => {
  if (recordShelf.isWaiting()) event.preventDefault();
});
addEventListener("hashchange", () => void fromAddress());
const workedAhead = workAhead(first, () => laid() === null);
void begin();
