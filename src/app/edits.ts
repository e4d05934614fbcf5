// What the components may do, each as an edit with a label that undo can name.

import { emptyWorksheet } from "../document/blank.ts";
import { copyCard, moveCard, removeCard, renameCard } from "../document/card-edits.ts";
import { setGiven, setLife, setMeasured, setPrice, setWorksheet } from "../document/edits.ts";
import { editLabel } from "../document/history.ts";
import { NOTED_GIVENS, noted, united, withNotes } from "../document/notes.ts";
import { swapped } from "../document/swap.ts";
import type { Entry, Worksheet } from "../document/worksheet.ts";
import { keepConditions } from "../graph/keep-conditions.ts";
import { rolesOf } from "../graph/roles.ts";
import type { Row } from "../graph/types.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import { worksheetToFileText } from "../storage/file-text.ts";
import type { Looking } from "../ui/looking.ts";
import { measuredField } from "../ui/rows/measured-field.ts";
import type { Edits } from "../ui/sheet.ts";
import { today } from "./clock.ts";
import { download, fileStem } from "./download.ts";
import { freeTitle } from "./free-title.ts";
import { addJoined } from "./joining.ts";
import { noteNow, onItsDay, todayIsNow, withTyped } from "./noting.ts";
import type { PageShared } from "./page-shared.ts";
import type { createRain } from "./rain.ts";
import { rainEdits } from "./rain-edits.ts";
import type { Session } from "./session.ts";
import { template } from "./templates.ts";
import type { Typing } from "./typing.ts";

type Tools = {
  readonly session: Session;
  readonly typing: Typing;
  readonly shared: PageShared;
  readonly rain: ReturnType<typeof createRain>;
  readonly looking: Looking;
  readonly setRecord: (key: string, label: string) => void;
};

/** "Bed 2" where a bed is called so already: parts of one name could not be told apart. */
const numberedApart = (label: string, { cards }: Worksheet): string =>
  freeTitle(label, new Set(cards.map(({ title }) => title)));

const roles = rolesOf(CARD_KINDS);

/** What kind of row a quantity stands on. */
function rowKind(worksheet: Worksheet, id: string): Row["row"] | undefined {
  const [cardId, name] = id.split(".");
  const card = worksheet.cards.find((candidate) => candidate.id === cardId);
  return CARD_KINDS[card?.kind ?? ""]?.rows.find((candidate) => candidate.name === name)?.row;
}

function setNumber(
  worksheet: Worksheet,
  cardId: string,
  row: { readonly name: string; readonly stored?: "card" },
  entry: Entry | null,
): Worksheet {
  if (row.stored !== "card") return setGiven(worksheet, cardId, row.name, entry);
  return row.name === "price" ? setPrice(worksheet, cardId, entry) : setLife(worksheet, cardId, entry);
}

/** Frames that what is looked for may take to come: a part's script is fetched with the first that is opened. */
const FRAMES = 60;

/** Opens the part of what stands under an id, brings it into view and gives it the focus. */
function reveal(looking: Looking, id: string): void {
  looking.seek(measuredField.quantityOf(id) ?? id);
  const find = (frames: number): void => {
    const element = document.getElementById(id) ?? document.getElementById(id.split(".")[0] ?? "");
    if (!element && frames > 0) return void requestAnimationFrame(() => find(frames - 1));
    for (let around = element; around; around = around.parentElement)
      if (around instanceof HTMLDetailsElement) around.open = true;
    const field = element instanceof HTMLDetailsElement ? element.querySelector("input") : null;
    const target = field ?? element;
    target?.focus({ preventScroll: true });
    // The open part's own scroll, never the page's: the answers and the place stay where they are.
    if (id.includes(".")) target?.scrollIntoView({ block: "nearest" });
  };
  requestAnimationFrame(() => find(FRAMES));
}

/** The part of its group that stands behind a card, else the one before it; null where it is alone there. */
function besideIn({ cards }: Worksheet, id: string): string | null {
  const groupOf = (kind: string | undefined) => CARD_KINDS[kind ?? ""]?.group;
  const group = groupOf(cards.find((card) => card.id === id)?.kind);
  const kin = cards.filter(({ kind }) => groupOf(kind) === group);
  const at = kin.findIndex((card) => card.id === id);
  return (kin[at + 1] ?? kin[at - 1])?.id ?? null;
}

/** What the step changes of which parts there are is seen: the one that comes stands open, and where the open one goes the next does. */
function stepSeen({ session, looking }: Pick<Tools, "session" | "looking">, step: () => void): void {
  const [before, open] = [session.worksheet(), looking.part()];
  step();
  const { cards } = session.worksheet();
  if (cards === before.cards) return;
  const known = new Set(before.cards.map(({ id }) => id));
  const [came, ...others] = cards.filter(({ id }) => !known.has(id));
  if (came && others.length === 0) looking.openPart(came.id);
  else if (open !== null && !cards.some(({ id }) => id === open)) looking.openPart(besideIn(before, open));
}

/** Takes a number in hand, ready for typing, its row in view. */
function takeInHand(looking: Looking, id: string): void {
  looking.take(id);
  requestAnimationFrame(() => {
    document.getElementById(id)?.scrollIntoView({ block: "nearest" });
    const field = document.querySelector<HTMLInputElement>(".in-hand-value");
    field?.focus({ preventScroll: true });
    field?.select();
  });
}

function valueEdits({ session }: Tools): Pick<Edits, "given" | "measured" | "keepLesson" | "settle"> {
  return {
    given: (card, row, entry, merge = false) => {
      if (NOTED_GIVENS.has(row.name))
        return void session.note((worksheet) => withTyped(worksheet, card.id, row.name, entry));
      const stored = row.row === "given" && row.stored === "card" ? { stored: "card" as const } : {};
      const change = (worksheet: Worksheet) => {
        const set = setNumber(worksheet, card.id, { name: row.name, ...stored }, entry);
        return keepConditions(set, CARD_KINDS, card.id, row, entry !== null);
      };
      session.edit(editLabel(row.label, card.title), change, merge ? `${card.id}.${row.name}` : undefined);
    },
    measured: (card, row, entry, merge = false) => {
      const change = (worksheet: Worksheet) => {
        const set = setMeasured(worksheet, card.id, row.name, entry);
        return keepConditions(set, CARD_KINDS, card.id, row, entry !== null);
      };
      const key = merge ? `${card.id}.${row.name}` : undefined;
      session.edit(editLabel(`Measured ${row.label}`, card.title), change, key);
    },
    keepLesson: (card, row, lesson, entry) =>
      session.edit(editLabel(`Keep ${lesson.label}`, card.title), (worksheet) =>
        setMeasured(setMeasured(worksheet, card.id, lesson.name, entry), card.id, row.name, null),
      ),
    settle: session.settle,
  };
}

function cardEdits({
  session,
  looking,
}: Tools): Pick<Edits, "addCard" | "swapLink" | "removeCard" | "copyCard" | "renameCard" | "moveCard"> {
  /** Opens the part that an edit brings. */
  const bringing = (edit: () => void): void => {
    const known = new Set(session.worksheet().cards.map((card) => card.id));
    edit();
    const fresh = session.worksheet().cards.find((card) => !known.has(card.id));
    if (fresh) reveal(looking, fresh.id);
  };
  return {
    addCard: (kind) =>
      bringing(() =>
        session.edit(`Add ${kind.label}`, (worksheet) =>
          addJoined(CARD_KINDS, worksheet, kind.kind, numberedApart(kind.label, worksheet)),
        ),
      ),
    swapLink: (card, row, swap) => {
      session.edit(swap.ask, (worksheet) =>
        swapped(worksheet, card.id, row.name, { ...swap, title: CARD_KINDS[swap.to]?.label ?? swap.to }),
      );
    },
    removeCard: (card) => {
      looking.openWorking(null);
      stepSeen({ session, looking }, () =>
        session.edit(`Take out ${card.title}`, (worksheet) => removeCard(worksheet, card.id, roles)),
      );
    },
    copyCard: (card) =>
      bringing(() => session.edit(`Copy ${card.title}`, (worksheet) => copyCard(worksheet, card.id))),
    renameCard: (card, title) =>
      session.edit(`Rename ${card.title}`, (worksheet) => renameCard(worksheet, card.id, title)),
    moveCard: (card, by) => {
      const kin = session.worksheet().cards.filter((other) => other.kind === card.kind);
      const neighbour = kin[kin.findIndex((other) => other.id === card.id) + by];
      if (!neighbour) return;
      const to = session.worksheet().cards.findIndex((other) => other.id === neighbour.id);
      // Where nobody chose a part the first stands open: it stays so when another comes to be the first.
      looking.seek(card.id);
      session.edit(`Move ${card.title}`, (worksheet) => moveCard(worksheet, card.id, to));
    },
  };
}

function sheetEdits({
  session,
  shared,
  looking,
  rain,
}: Tools): Pick<Edits, "openSheet" | "start" | "openFile" | "saveFile"> {
  return {
    openSheet: (id) => void session.saver.flush().then(() => shared.open(id)),
    start: (id) => {
      const { units, locale, currency } = session.worksheet();
      const fresh =
        id === null
          ? Promise.resolve(emptyWorksheet({ units, locale, currency, made_on: today() }))
          : template(id);
      const laid = Promise.all([fresh, session.saver.flush().then(shared.titlesKept)]);
      laid.then(
        ([worksheet, taken]) =>
          shared.lay(setWorksheet(worksheet, { title: freeTitle(worksheet.title, taken) })),
        () => session.say("This place could not be fetched. Look whether there is a network, and try again."),
      );
    },
    openFile: (file) =>
      void import("./opening.ts").then(
        ({ openFile }) =>
          openFile(file, {
            here: session.worksheet(),
            note: (notes) =>
              void session.note((worksheet) => withNotes(worksheet, united(worksheet.notes ?? [], notes))),
            say: session.say,
            receive: (bundle) => void session.saver.flush().then(() => shared.receive(bundle)),
            takeRain: (table) => {
              reveal(looking, "weather.record");
              rain.take(table);
            },
          }),
        () =>
          session.say(
            "What opens files could not be fetched. Look whether there is a network, and try again.",
          ),
      ),
    saveFile: () => {
      const worksheet = session.identified();
      download(`${fileStem(worksheet.title)}.json`, worksheetToFileText(worksheet, session.engine.records));
    },
  };
}

/** Every edit and act of the page. */
export function makeEdits(tools: Tools): Edits {
  const { session, shared, typing, looking } = tools;
  return {
    ...valueEdits(tools),
    ...cardEdits(tools),
    ...sheetEdits(tools),
    ...rainEdits(tools),
    page: (change) =>
      session.edit("Change the worksheet's head", (worksheet) => setWorksheet(worksheet, change)),
    currency: (currency) =>
      void import("../graph/in-currency.ts").then(({ inCurrency }) => {
        session.settle();
        session.edit(`Money in ${currency}`, (worksheet) => inCurrency(worksheet, CARD_KINDS, currency));
      }),
    units: (units) => session.edit("Units", (worksheet) => setWorksheet(worksheet, { units })),
    note: (said, instead) => {
      // What is noted now is of this day: the page is told before, if it is a new one.
      session.lookAtClock();
      const before = session.worksheet().notes ?? [];
      const note = noteNow(onItsDay(said, before, instead), before);
      const undone =
        instead === undefined ? [] : [noteNow({ what: "undid", where: said.where, undoes: instead }, before)];
      const stored = session.note((worksheet) => [...undone, note].reduce(noted, todayIsNow(worksheet)));
      // What was timed has its home on the part's card; taken back, it leaves it again.
      if (["bucket", "timed", "undid"].includes(said.what))
        void import("./noted-tests.ts").then(({ withTest }) =>
          session.edit("What was timed", (worksheet) => withTest(worksheet, note)),
        );
      return { id: note.id, stored };
    },
    today: () =>
      session.edit("Today", (worksheet) =>
        setGiven(worksheet, "site", "today", { value: today(), unit: "" }),
      ),
    // Not every browser takes the focus off a field when a button is pressed: what is typed there is an edit before.
    undo: () => {
      typing.enter();
      stepSeen(tools, session.undo);
    },
    redo: () => {
      typing.enter();
      stepSeen(tools, session.redo);
    },
    typed: (field, text) => shared.typed.say(session.saver.place().id, field, text),
    hold: session.hold,
    openWorking: (id) => {
      looking.openWorking(id);
      if (id !== null) reveal(looking, id);
    },
    goTo: (id) => reveal(looking, id),
    askFor: (id) => {
      if (rowKind(session.worksheet(), id) === "given") return takeInHand(looking, id);
      if (rowKind(session.worksheet(), id) === "list") return reveal(looking, id);
      looking.openWorking(id);
      reveal(looking, measuredField.of(id));
    },
  };
}
