// The answers: the sentence that leads, what gives out first, and three more in a row.

import { createMemo, Index, lazy, Show } from "solid-js";
import { numberIn } from "../../graph/readers.ts";
import type { Sentence } from "../../telling/asked.ts";
import { WORST_YEAR } from "../../telling/lead.ts";
import { lazyAfterAnswers } from "../after-answers.ts";
import { createElementWidth } from "../charts/element-width.ts";
import { useSheet } from "../sheet.ts";
import { type OnPress, Pieces } from "./Sentence.tsx";

const NotSure = lazy(async () => ({ default: (await import("../hand/NotSure.tsx")).NotSure }));
const Acts = lazy(async () => ({ default: (await import("./Acts.tsx")).Acts }));
const Wrong = lazy(async () => ({ default: (await import("./Wrong.tsx")).Wrong }));
const AnswerWorking = lazy(async () => ({ default: (await import("./AnswerWorking.tsx")).AnswerWorking }));
const Spoken = lazyAfterAnswers(async () => (await import("./Spoken.tsx")).Spoken);

/** Widths of the lead's letters over their size, and of what a number was, in smaller type; of its typeface, by measuring. */
const LETTER = 0.49;
const SMALL_LETTER = 0.62 * LETTER;
/** Lines that the lead may take: two, on a phone and in a low window three. */
const LINES = { narrow: 3, other: 2 };
/** A line ends with a word, so that some of the last one stays empty. */
const SPARE = 0.2;

/** Letters of what gives out first that stand in one line of a phone beside its days. */
const ONE_LINE = 40;

/** What gives out first keeps its line while it is asked for the first time. */
const STILL_OUT = "What gives out first: …";

const NOTHING: Sentence = { id: "", lead: true, pieces: [] };

/** Opens the working of a pressed number where it stands, and lets the curve show that number. */
function createPressing() {
  const sheet = useSheet();
  let pressed: HTMLElement | null = null;
  const onPress: OnPress = (quantity, button) => {
    const { looking } = sheet;
    const isOpen = looking.openedAt() === "answers" && looking.opened() === quantity;
    if (!button.closest(".answer-working")) pressed = button;
    if (button.dataset["tone"] !== "plain" && numberIn(sheet.result(quantity)) !== null)
      looking.chooseAnswer(quantity);
    looking.openWorking(isOpen ? null : quantity, "answers");
  };
  const onClose = (): void => {
    sheet.looking.openWorking(null);
    pressed?.focus({ preventScroll: true });
  };
  return { onPress, onClose, pressed: () => pressed };
}

/** The sentences, in which form the first is told, and the season that it names. */
type Said = {
  readonly sentences: readonly Sentence[];
  readonly short: boolean;
  readonly brief: boolean;
  /** Of its letters [px]: smaller, where it would take a line too many even so. */
  readonly size: number;
  readonly steady: string | undefined;
};
const NOTHING_SAID: Said = {
  sentences: [],
  short: false,
  brief: false,
  size: Number.POSITIVE_INFINITY,
  steady: undefined,
};

/** How the lead may be set in this window: its letters as in answers.css and low.css and then smaller [px], and its lines. */
function leadSet(isPhone: boolean): { readonly sizes: readonly number[]; readonly lines: number } {
  if (isPhone) return { sizes: [20, 17, 15], lines: LINES.narrow };
  if (innerHeight < 500 && innerHeight >= 360) return { sizes: [15, 14, 13], lines: LINES.narrow };
  const sizes = [30, 25, 21, 20, 17].slice(innerWidth >= 1600 ? 0 : innerWidth >= 1180 ? 1 : 3);
  return { sizes, lines: LINES.other };
}

/** The sentences, the first as long as there is room for it. */
function createSaid(width: () => number) {
  const sheet = useSheet();
  const moved = ({ pieces }: Sentence): readonly string[] =>
    pieces.flatMap((piece) =>
      typeof piece === "string" || piece.was === null ? [] : (sheet.moved(piece.quantity)?.was ?? []),
    );
  const isPhone = () => sheet.looking.width() === "phone";
  const fits = (lead: Sentence, was: readonly string[], size: number): boolean => {
    const letters = lead.pieces.reduce(
      (sum, piece) =>
        sum +
        (typeof piece === "string"
          ? piece.length
          : (piece.text ?? sheet.shown(piece.quantity)).length + (piece.after ?? "").length),
      0,
    );
    const small = was.reduce((sum, text) => sum + " was ".length + text.length, 0);
    return (
      ((letters * LETTER + small * SMALL_LETTER) * size) / Math.max(1, width()) <
      leadSet(isPhone()).lines - SPARE
    );
  };
  const yearOf = ({ pieces }: Sentence): string | undefined => {
    const piece = pieces.find((one) => typeof one !== "string" && one.quantity === WORST_YEAR);
    return typeof piece === "object" ? (piece.text ?? sheet.shown(WORST_YEAR)) : undefined;
  };
  /** With a number in hand on a phone there is room for no more than the lead. */
  const isAlone = () => isPhone() && sheet.looking.inHand() !== null;
  const tell = (before: Said | null): Said => {
    const room = { steady: before?.steady };
    const [full, ...rest] = sheet.answers(room);
    if (!full) return NOTHING_SAID;
    const was = moved(full);
    const short = before?.short || was.length > 0 || isAlone();
    const lead = sheet.answers({ ...room, short })[0] ?? full;
    const { sizes } = leadSet(isPhone());
    const [usual = 20, ...smaller] = sizes;
    const brief = before?.brief || !fits(lead, was, usual);
    const first = brief ? (sheet.answers({ ...room, short, brief })[0] ?? lead) : lead;
    const fitting = [usual, ...smaller].find((size) => fits(first, was, size)) ?? smaller.at(-1) ?? usual;
    const size = Math.min(before?.size ?? usual, fitting);
    return { sentences: isAlone() ? [first] : [first, ...rest], short, brief, size, steady: yearOf(first) };
  };
  // While a number moves the sentence only ever comes to say less, and settles once when it stands still.
  const said = createMemo<Said>((before) => tell(sheet.moving() ? before : null), NOTHING_SAID);
  return said;
}

/** Where the lead says spans, the days of their middle would stand against it. */
const withoutDays = (sentence: Sentence): Sentence => ({
  ...sentence,
  pieces: sentence.pieces.flatMap((piece) => (typeof piece === "string" ? [piece.replace(/: $/, "")] : [])),
});

function Further(props: { readonly sentences: readonly Sentence[]; readonly onPress: OnPress }) {
  return (
    <Index each={props.sentences}>
      {(sentence) => (
        <li>
          <Pieces sentence={sentence()} onPress={props.onPress} />
        </li>
      )}
    </Index>
  );
}

export function Answers() {
  const sheet = useSheet();
  const { width, watch } = createElementWidth(800);
  const said = createSaid(width);
  const { onPress, onClose, pressed } = createPressing();
  const isPhone = () => sheet.looking.width() === "phone";
  const lead = () => said().sentences[0] ?? NOTHING;
  const first = () => {
    const sentence = sheet.givesOutFirst()?.sentence ?? NOTHING;
    return sheet.doubting()?.said() ? withoutDays(sentence) : sentence;
  };
  /** Beside a lead in smaller type there is room for a second line of it. */
  const isLong = () =>
    isPhone() && sheet.looking.part() !== null && String(first().pieces[0]).length > ONE_LINE;
  /** In smaller type than the window's. */
  const smaller = (): number | null => {
    const [usual = 20, next = usual] = leadSet(isPhone()).sizes;
    const size = Math.min(said().size, isLong() ? next : usual);
    return size < usual ? size : null;
  };
  const acts = () => lead().acts ?? [];
  const reasons = () => said().sentences.filter(({ id }) => id === "left_out");
  const others = () =>
    said()
      .sentences.slice(1)
      .filter(({ id }) => id !== "left_out");
  return (
    <section class="answers" aria-label="Answers" aria-busy={sheet.working()} ref={watch}>
      <h1
        class="lead"
        classList={{ tight: smaller() !== null }}
        style={{ "font-size": smaller() === null ? undefined : `${smaller()}px` }}
      >
        <Pieces sentence={lead()} onPress={onPress} />
      </h1>
      <ul>
        <Show when={acts().length > 0}>
          <li class="doing">
            <Acts acts={acts()} />
          </li>
        </Show>
        <Further sentences={reasons()} onPress={onPress} />
        <Show when={lead().id === "lead"}>
          <li class="gives-out" classList={{ old: sheet.givesOutFirst()?.old ?? true }}>
            <Show when={sheet.givesOutFirst() !== null} fallback={STILL_OUT}>
              <Pieces sentence={first()} onPress={onPress} />
            </Show>
          </li>
        </Show>
        <Show when={sheet.doubting()?.said()}>{(said) => <NotSure said={said()} />}</Show>
        <Further sentences={others()} onPress={onPress} />
        <Show when={sheet.problems().length > 0}>
          <Wrong shown={acts()} />
        </Show>
      </ul>
      <Spoken />
      <Show when={sheet.looking.openedAt() === "answers" && sheet.looking.opened()}>
        <AnswerWorking onPress={onPress} onClose={onClose} pressed={pressed} />
      </Show>
    </section>
  );
}
