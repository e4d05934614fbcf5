// Keeping, handing on and taking along: what the page can do with whole worksheets.

import { createSignal } from "solid-js";
import { copyTitle } from "../document/copy-title.ts";
import { setWorksheet } from "../document/edits.ts";
import { recordNames } from "../document/record-names.ts";
import { apart } from "../document/title-apart.ts";
import type { Worksheet } from "../document/worksheet.ts";
import { textOrDate } from "../graph/shown.ts";
import { chanceId } from "../storage/shelf.ts";
import type { Keeping, TableName } from "../ui/dialogs/keeping.ts";
import { borrowedIn, unmarkBorrowed } from "./borrowed.ts";
import { download, fileStem } from "./download.ts";
import { recordsInUse } from "./engine.ts";
import { freeTitle } from "./free-title.ts";
import { handingOn } from "./handing-on.ts";
import { offline, VERSION } from "./offline.ts";
import type { Laid, PageShared } from "./page-shared.ts";
import type { makeReader } from "./reader.ts";
import type { Session } from "./session.ts";

type Tools = {
  readonly laid: Laid;
  readonly session: Session;
  readonly shared: PageShared;
  readonly reader: ReturnType<typeof makeReader>;
  readonly refreshSheets: () => Promise<void>;
};

/** Holds the records of a worksheet thrown away for another day, in case it is brought back. */
async function holdRecords(shared: PageShared, worksheet: Worksheet | null): Promise<void> {
  for (const key of worksheet ? recordNames(worksheet) : []) {
    const kept = await shared.recordShelf.load(key);
    if (kept.ok && kept.value) await shared.recordShelf.keep(kept.value, Date.now());
  }
}

function sheetActs({ session, shared, refreshSheets }: Tools) {
  const isOpen = (id: string): boolean => id === session.saver.place().id;
  const reopen = async (id: string): Promise<Worksheet | null> => {
    const opened = await shared.shelf.open(id, Date.now());
    return opened.ok && opened.value.state === "opened" ? opened.value.sheet.worksheet : null;
  };
  const rename = async (id: string, title: string): Promise<void> => {
    if (isOpen(id)) {
      session.edit("Rename the worksheet", (worksheet) => setWorksheet(worksheet, { title }));
      await session.saver.flush();
    } else {
      const opened = await shared.shelf.open(id, Date.now());
      if (opened.ok && opened.value.state === "opened") {
        const { worksheet, revision } = opened.value.sheet;
        await shared.shelf.save({
          id,
          basedOn: revision,
          worksheet: setWorksheet(worksheet, { title }),
          at: Date.now(),
        });
      }
    }
    await refreshSheets();
  };
  const copy = async (id: string): Promise<void> => {
    await session.saver.flush();
    const worksheet = isOpen(id) ? session.worksheet() : await reopen(id);
    if (!worksheet) return;
    const title = freeTitle(copyTitle(worksheet.title), await shared.titlesKept());
    const copied = setWorksheet(worksheet, { title });
    const kept = await shared.shelf.save({ id: chanceId(), basedOn: 0, worksheet: copied, at: Date.now() });
    if (!kept.ok) session.say(kept.failure.text);
    await refreshSheets();
  };
  const remove = async (id: string): Promise<void> => {
    await session.saver.flush();
    const worksheet = isOpen(id) ? session.worksheet() : await reopen(id);
    if (worksheet) shared.setThrown({ id, worksheet });
    await holdRecords(shared, worksheet);
    await shared.shelf.remove(id);
    if (isOpen(id)) await shared.openAnother();
    else await refreshSheets();
  };
  const bringBack = async (): Promise<void> => {
    const thrown = shared.thrown();
    if (!thrown) return;
    const back = await shared.shelf.save({ ...thrown, basedOn: 0, at: Date.now() });
    // Refused, it stays at hand to be brought back once there is room.
    if (back.ok) shared.setThrown(null);
    else session.say(back.failure.text);
    await refreshSheets();
  };
  return { rename, copy, remove, bringBack };
}

/** The sheet whose reader was asked whether to keep it and has not said so, and who made it: a reload asks again. */
const UNANSWERED = "eavesdrip-received";

type Sent = Pick<Worksheet, "made_by" | "made_on">;

function askedBefore(shared: PageShared, id: string): Sent | null {
  const [asked, made_by = "", made_on = ""] = (shared.device.get(UNANSWERED) ?? "").split("\n");
  return asked === id ? { made_by, made_on } : null;
}

/** What somebody sent, until the reader has said what is to become of it; it is kept from the start. */
function receiving({ laid, session, shared }: Tools) {
  const { id, received } = laid;
  if (received) shared.device.set(UNANSWERED, [id, received.made_by, received.made_on].join("\n"));
  const sent = received ?? askedBefore(shared, id);
  const [met, setMet] = createSignal(false);
  const [others, setOthers] = createSignal<readonly string[]>([]);
  if (sent)
    void shared.shelf.list().then((listed) => {
      if (listed.ok) setOthers(listed.value.map(({ id }) => id).filter((id) => id !== laid.id));
    });
  return {
    received: () => {
      if (!sent || met()) return null;
      return {
        by: apart(sent.made_by),
        on: textOrDate(sent.made_on, session.worksheet().locale),
        hasOwn: others().length > 0,
      };
    },
    keepReceived: () => {
      shared.device.del(UNANSWERED);
      setMet(true);
    },
    backToMine: () => {
      shared.device.del(UNANSWERED);
      const [last] = others();
      if (last !== undefined) void session.saver.flush().then(() => shared.open(last));
    },
    firstVisit: () => laid.first === true && session.undoLabel() === null,
  };
}

/** The part of the sheet that keeps and hands on. */
export function createKeeping(tools: Tools): Keeping {
  const { session, shared, reader } = tools;
  const [aside, setAside] = createSignal<readonly string[]>([]);
  const acts = sheetActs(tools);
  const thrownTitle = (): string | null => {
    const thrown = shared.thrown();
    return thrown ? apart(thrown.worksheet.title) : null;
  };
  const stem = (): string => fileStem(session.worksheet().title);
  void shared.shelf.listAside().then((listed) => {
    if (listed.ok) setAside(listed.value);
  });
  return {
    ...handingOn(session),
    ...receiving(tools),
    notice: () => [shared.said(), session.notice()].filter((text) => text !== "").join(" "),
    refused: session.refused,
    borrowed: () => borrowedIn(session.worksheet()),
    aside,
    thrown: () => thrownTitle(),
    version: VERSION,
    opens: offline.opens,
    waiting: offline.waiting,
    update: () => void session.saver.flush().then(offline.update),
    dismiss: () => {
      shared.setSaid("");
      session.dismiss();
    },
    mine: () =>
      session.edit("The place is mine", (worksheet) =>
        unmarkBorrowed(worksheet, tools.laid.received ?? null),
      ),
    lookAgain: () => void session.saver.flush().then(tools.refreshSheets),
    renameSheet: (id, title) => void acts.rename(id, title),
    copySheet: (id) => void acts.copy(id),
    removeSheet: (id) => void acts.remove(id),
    bringBack: () => void acts.bringBack(),
    saveAside: (key) =>
      void shared.shelf.asideText(key).then((text) => {
        if (text.ok && text.value !== null) download("set-aside.json", text.value);
      }),
    saveTable: async (table: TableName) => {
      const { tableText } = await import("./tables.ts");
      const [record = null] = recordsInUse(session.engine);
      const text = tableText(table, { reader, worksheet: session.worksheet(), record });
      download(`${stem()}-${table}.csv`, text, "text/csv");
    },
    saveCharts: async () => (await import("./save-charts.ts")).saveCharts(stem()),
  };
}
