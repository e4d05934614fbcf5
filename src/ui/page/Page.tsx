// The frame: one line at the head, then answers, place, time and the one open part, laid out by the width of the window.

import { type Component, createSignal, Match, onCleanup, onMount, Show, Switch } from "solid-js";
import { Dynamic } from "solid-js/web";
import { isBare } from "../../kinds/kind.ts";
import { lazyAfterAnswers } from "../after-answers.ts";
import { answersStand, firstPaint } from "../after-paint.ts";
import { createMatching } from "../matching.ts";
import { type Sheet, SheetContext, useSheet } from "../sheet.ts";
import { Answers } from "./Answers.tsx";
import { Header } from "./Header.tsx";
import { KeepingBar } from "./KeepingBar.tsx";
import { PartList } from "./PartList.tsx";
import { fetchPrintedPage } from "./paper.ts";
import { createParts, type Parts } from "./parts.ts";
import { type Listing, Strip } from "./Strip.tsx";
import { createSeasonInAddress, type InAddress } from "./season-in-address.ts";

// The answers come first and are painted by themselves; whatever else is seen follows at once.
const Drawing = lazyAfterAnswers(async () => (await import("../charts/Drawing.tsx")).Drawing);
const NextMoney = lazyAfterAnswers(async () => (await import("../money/NextMoney.tsx")).NextMoney);
const PlansBeside = lazyAfterAnswers(async () => (await import("../beside/PlansBeside.tsx")).PlansBeside);
const Time = lazyAfterAnswers(async () => (await import("../charts/Time.tsx")).Time);
const Begin = lazyAfterAnswers(async () => (await import("../begin/Begin.tsx")).Begin);
const Foot = lazyAfterAnswers(async () => (await import("./Foot.tsx")).Foot);
const Hand = lazyAfterAnswers(async () => (await import("../hand/Hand.tsx")).Hand);
const NextNumber = lazyAfterAnswers(async () => (await import("./NextNumber.tsx")).NextNumber);
const Third = lazyAfterAnswers(async () => (await import("./Third.tsx")).Third);
const Part = lazyAfterAnswers(async () => (await import("./Part.tsx")).Part);

/** What answers to keys wherever nothing is being typed: the part before and the part after. */
function listenToKeys(parts: Parts, goTo: (id: string) => void): void {
  const onKey = (event: KeyboardEvent): void => {
    const by = event.key === "[" ? -1 : event.key === "]" ? 1 : 0;
    const isTyping =
      event.target instanceof Element && event.target.matches("input, textarea, select, dialog *");
    if (by === 0 || isTyping || event.ctrlKey || event.metaKey || event.altKey) return;
    const id = parts.along(by);
    if (id !== null) goTo(id);
  };
  onMount(() => document.addEventListener("keydown", onKey));
  onCleanup(() => document.removeEventListener("keydown", onKey));
}

/** From the first paint on; until then nothing goes. */
function keepTheFocus(): void {
  let end = (): void => undefined;
  let isGone = false;
  void firstPaint.then(async () => {
    const { keepFocus } = await import("../keep-focus.ts");
    if (!isGone) end = keepFocus();
  });
  onCleanup(() => {
    isGone = true;
    end();
  });
}

function createListing(): Listing {
  const sheet = useSheet();
  const [group, setGroup] = createSignal<string | null>(null);
  return {
    group: () => (sheet.looking.inHand() === null ? group() : null),
    show: (title) => {
      if (title !== null) sheet.looking.take(null);
      setGroup(title);
    },
  };
}

function OpenPart(props: { readonly parts: Parts; readonly listing: Listing }) {
  const sheet = useSheet();
  const card = (id: string) => sheet.worksheet().cards.find((one) => one.id === id);
  return (
    <Switch>
      <Match when={props.listing.group()}>
        {(group) => <PartList parts={props.parts} from={group()} onOpen={() => props.listing.show(null)} />}
      </Match>
      <Match when={sheet.looking.part()} keyed>
        {(id) => <Show when={card(id)}>{(open) => <Part card={open()} parts={props.parts} />}</Show>}
      </Match>
    </Switch>
  );
}

/** What only paper shows, fetched once the page stands and made when it is printed. */
function OnPaper() {
  const [Printed, setPrinted] = createSignal<Component | null>(null);
  const [printing, setPrinting] = createSignal(false);
  void firstPaint.then(fetchPrintedPage).then((printed) => setPrinted(() => printed));
  const onPaper = () => {
    setPrinting(true);
  };
  const onScreen = () => {
    setPrinting(false);
  };
  addEventListener("beforeprint", onPaper);
  addEventListener("afterprint", onScreen);
  onCleanup(() => {
    removeEventListener("beforeprint", onPaper);
    removeEventListener("afterprint", onScreen);
  });
  return <Show when={printing() && Printed()}>{(printed) => <Dynamic component={printed()} />}</Show>;
}

function TimeZone() {
  const sheet = useSheet();
  return (
    <div class="zone-time">
      <SheetContext.Provider value={sheet.late().late()}>
        <Switch fallback={<Time />}>
          <Match when={sheet.looking.time() === "beside"}>
            <PlansBeside />
          </Match>
          <Match when={sheet.looking.time() === "money"}>
            <NextMoney />
          </Match>
        </Switch>
      </SheetContext.Provider>
    </div>
  );
}

/** What stands where, by the width of the window and by what is open. */
function createPlan(sheet: Sheet, listing: Listing) {
  const width = sheet.looking.width;
  const isPhone = () => width() === "phone";
  // On its side a window of that width has no room for a list beside the open part.
  const isLow = createMatching("(max-height: 499px)");
  const isOpen = () => !isPhone() || sheet.looking.part() !== null || listing.group() !== null;
  return {
    width,
    isPhone,
    isOpen,
    hasList: () => width() === "list" && !isLow(),
    isAtRest: () => isPhone() && !isOpen(),
  };
}

type Standing = {
  readonly parts: Parts;
  readonly listing: Listing;
  readonly plan: ReturnType<typeof createPlan>;
};

/** All zones, in the order in which they are read. */
function Zones(props: Standing) {
  const sheet = useSheet();
  const { width, isPhone, isOpen, hasList, isAtRest } = props.plan;
  return (
    <>
      <div class="zone-answers">
        <KeepingBar />
        <Answers />
      </div>
      <Show when={!hasList() && !(isPhone() && sheet.looking.inHand())}>
        <Strip parts={props.parts} listing={props.listing} />
      </Show>
      <Show when={isOpen()}>
        <div class="zone-part" id="part" tabindex="-1">
          <OpenPart parts={props.parts} listing={props.listing} />
          <Show when={width() === "list"}>
            <TimeZone />
          </Show>
          <Show when={!isPhone()}>
            <Foot />
          </Show>
        </div>
      </Show>
      {/* After the part that it opened: by its keys one comes to the open numbers first. */}
      <Show when={hasList()}>
        <div class="zone-list">
          <PartList parts={props.parts} />
        </div>
      </Show>
      <div class="zone-place">
        <SheetContext.Provider value={sheet.late()}>
          <Drawing />
        </SheetContext.Provider>
      </div>
      <Show when={isAtRest() || width() === "bench" || width() === "wide"}>
        <TimeZone />
      </Show>
      <Show when={isAtRest()}>
        <PartList parts={props.parts} />
      </Show>
      <Show when={width() === "wide"}>
        <Third />
      </Show>
      <Show when={isPhone() && sheet.looking.inHand()}>
        <div class="zone-hand">
          <Hand />
        </div>
      </Show>
    </>
  );
}

function Bench(props: { readonly season: InAddress }) {
  const sheet = useSheet();
  const parts = createParts(sheet);
  const listing = createListing();
  listenToKeys(parts, sheet.edit.goTo);
  keepTheFocus();
  const plan = createPlan(sheet, listing);
  const { width, isOpen, isAtRest } = plan;
  return (
    <>
      <a class="skip" href={isOpen() ? "#part" : "#parts"}>
        {isOpen() ? "To the open part" : "To the parts"}
      </a>
      <Header season={props.season} />
      <main
        class="bench"
        data-width={width()}
        classList={{
          open: isOpen(),
          holding: sheet.looking.inHand() !== null,
          typing: sheet.looking.typing(),
        }}
      >
        <Zones parts={parts} listing={listing} plan={plan} />
      </main>
      <Show when={!sheet.starter() && !isBare(sheet.kinds, sheet.worksheet().cards)}>
        <NextNumber />
      </Show>
      <Show when={sheet.looking.beginning()}>
        <Begin />
      </Show>
      <Show when={isAtRest()}>
        <Foot />
      </Show>
      <OnPaper />
    </>
  );
}

/** Before the sheet was ever looked at only the line at the head stands, with the season's page that it opens. */
export function Page() {
  const season = createSeasonInAddress();
  onMount(answersStand);
  return (
    <Show when={season.isSheetWanted()} fallback={<Header season={season} />}>
      <Bench season={season} />
    </Show>
  );
}
