// Puts together what the components may know and do, out of the session, the graph and the shelves.

import { type Accessor, createMemo, createSignal } from "solid-js";
import { setGiven } from "../document/edits.ts";
import { sameData } from "../document/same.ts";
import { apart } from "../document/title-apart.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import { answers } from "../telling/answers.ts";
import type { Room } from "../telling/lead.ts";
import type { SavedSheet, Sheet } from "../ui/sheet.ts";
import type { ShowOptions } from "../units/show.ts";
import { createCautions } from "./cautions.ts";
import { dayHere, timeOfDay } from "./clock.ts";
import { makeEdits } from "./edits.ts";
import { createKeeping } from "./keeping.ts";
import { createLate } from "./late-sheet.ts";
import { createLooking } from "./looking.ts";
import type { Laid, PageShared } from "./page-shared.ts";
import { createQuestions } from "./questions.ts";
import { createRain } from "./rain.ts";
import { makeReader, type Reader } from "./reader.ts";
import { createSession, type Session } from "./session.ts";
import { TEMPLATES } from "./templates.ts";
import { listenToTyping } from "./typing.ts";
import { fetchWorkings, type Workings } from "./words.ts";

/** A memo that wakes nobody as long as it says the same. */
const createSame = <Value>(read: () => Value): Accessor<Value> =>
  createMemo(read, undefined, { equals: sameData });

/** The sentences on top, and what their workings say beside them. */
function createTelling(
  session: Session,
  { result }: Pick<Reader, "result">,
  workings: Accessor<Workings | null>,
  isSpan: (id: string) => boolean,
) {
  const asked = () => {
    const baseline = session.baseline();
    const before = baseline && { before: (id: string) => baseline.get(id) };
    return { result, cards: session.worksheet().cards, isSpan, ...before };
  };
  return {
    // What stands under the lead asks for all of the worksheet.
    answers: (room?: Room) =>
      answers(asked(), { ...room, alone: session.engine.view().graph.whole !== null }),
    beside: (id: string) => workings()?.besideAnswer(asked(), id) ?? [],
  };
}

/** The worksheets that are kept on this device. */
function createShelved(session: Session, { shelf }: PageShared) {
  const [sheets, setSheets] = createSignal<readonly SavedSheet[]>([]);
  const refreshSheets = async (): Promise<void> => {
    const listed = await shelf.list();
    if (listed.ok)
      setSheets(
        listed.value.map(({ id, title, savedAt }) => ({
          id,
          title: apart(title) || "a broken one",
          when: dayHere(savedAt),
          open: id === session.saver.place().id,
        })),
      );
  };
  return { sheets, refreshSheets };
}

/** The rain that the sheet runs on: what is brought, kept and taken up. */
function createRainOf(
  { engine, edit }: Session,
  { hub, recordShelf }: PageShared,
  showOptions: () => ShowOptions,
) {
  const setRecord = (key: string, label: string): void => {
    edit(label, (worksheet) =>
      setGiven(worksheet, "weather", "record", key ? { value: key, unit: "" } : null),
    );
  };
  const rain = createRain({
    showOptions,
    others: () => [...engine.records.values()].filter((record) => !record.madeUp),
    onRecord: (record) => {
      engine.records.set(record.key, record);
      void recordShelf.keep(record, Date.now());
      setRecord(record.key, "Rain record");
    },
  });
  rain.connect(hub.client);
  hub.listen({
    onRan: engine.accept,
    onMadeUp: engine.showMadeUp,
    onProgress: rain.progress,
    onImported: rain.imported,
    onImportFailed: rain.failed,
  });
  engine.connect(hub.client);
  return { rain, setRecord };
}

/** The sheet and the session behind it. */
export function createSheet(laid: Laid, shared: PageShared) {
  const session = createSession(laid, shared);
  const typing = listenToTyping();
  const { engine } = session;
  const looking = createLooking(CARD_KINDS, () => session.worksheet().cards, laid.begun);
  const { sheets, refreshSheets } = createShelved(session, shared);
  // Every number on the page is shown by these: they must stay the same through an edit of anything else.
  const showOptions = createSame<ShowOptions>(() => {
    const { units, locale, currency } = session.worksheet();
    return { units, locale, currency, rounded: true };
  });
  const { rain, setRecord } = createRainOf(session, shared, showOptions);
  void refreshSheets();
  const workings = fetchWorkings();
  const reader = makeReader(session, showOptions, { words: shared.words, workings });
  const cautions = createCautions(engine, showOptions, shared);
  const working = () => {
    const { graph, results } = engine.view();
    return graph.whole?.waits === true || results.requests.length > 0;
  };
  const sheet: Sheet = {
    kinds: CARD_KINDS,
    worksheet: createMemo(() => engine.view().worksheet),
    showOptions,
    readOptions: createSame(() => ({
      locale: session.worksheet().locale,
      currency: session.worksheet().currency,
    })),
    ...reader,
    ...cautions,
    failure: (id) => reader.failure(id) ?? cautions.amissAt(id),
    ...createTelling(session, reader, workings, (id) => typeof sheet.doubting()?.spanOf(id) === "string"),
    beginning: async () => (await import("./beginning.ts")).makeBeginning(session, shared),
    working,
    moving: createMemo((is: boolean) => looking.stirred() || (is && working()), false),
    today: session.day,
    timeOfDay,
    held: () => session.held() !== null,
    saved: session.saved,
    canUndo: session.undoLabel,
    canRedo: session.redoLabel,
    sheets,
    templates: TEMPLATES,
    rain: rain.state,
    opened: looking.opened,
    looking,
    typed: (field) => shared.typed.of(session.saver.place().id)[field] ?? null,
    edit: makeEdits({ session, typing, shared, rain, looking, setRecord }),
    keep: createKeeping({ laid, session, shared, reader, refreshSheets }),
    ...createQuestions(
      { session, looking, edits: () => sheet.edit, options: showOptions },
      shared.hub.asking,
    ),
    late: () => late,
  };
  const late = createLate(sheet, () => [engine.view(), session.held(), sheet.troubles(), sheet.moving()]);
  return { sheet, session, typing };
}
