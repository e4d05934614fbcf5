// The answers: the sentence that leads, what gives out first, and three more in a row.

import { createMemo, Index, lazy, Show } from "solid-js";
import { numberIn } from "../../graph/readers.ts";
import type { Sentence } from "../../telling/asked.ts";
import { WORST_YEAR } from "../../telling/lead.ts";
import { lazyAfterAnswers } from "../after-answers.ts";
import { createElementWidth } from "../charts/element-width.ts";
import { useSheet } from "../sheet.ts";
import { type OnPress, Pieces } from "./Sentence.tsx";
import { Wrong } from "./Wrong.tsx";

const NotSure = lazy(async () => ({ default: (await import("../hand/NotSure.tsx")).NotSure }));
const Acts = lazy(async () => ({ default: (await import("./Acts.tsx")).Acts }));
const AnswerWorking = lazy(async () => ({ default: (await import("./AnswerWorking.tsx")).AnswerWorking }));
const Spoken = lazyAfterAnswers(async () => (await import("./Spoken.tsx")).Spoken);

/** Widths of the lead's letters over their size, and of what a number was, in smaller type; of its typeface, by measuring. */
const LETTER = 0.49;
const SMALL_LETTER = 0.62 * LETTER;
/** Lines that the lead may take: two, on a phone three. */
const LINES = { phone: 3, other: 2 };

/** Letters of what gives out first that stand in one line of a phone beside its days. */
const ONE_LINE = 40;

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
  /** In smaller type, where it would take a line too many even so. */
  readonly tight: boolean;
  readonly steady: string | undefined;
};
const NOTHING_SAID: Said = { sentences: [], short: false, brief: false, tight: false, steady: undefined };

/** The sentences, the first as long as there is room for it. */
function createSaid(width: () => number) {
  const sheet = useSheet();
  const moved = ({ pieces }: Sentence): readonly string[] =>
    pieces.flatMap((piece) =>
      typeof piece === "string" || piece.was === null ? [] : (sheet.moved(piece.quantity)?.was ?? []),
    );
  const isPhone = () => sheet.looking.width() === "phone";
  const size = () => (width() >= 1600 ? 30 : width() >= 800 && !isPhone() ? 25 : 20);
  const fits = (lead: Sentence, was: readonly string[]): boolean => {
    const letters = lead.pieces.reduce(
      (sum, piece) =>
        sum +
        (typeof piece === "string"
          ? piece.length
          : (piece.text ?? sheet.shown(piece.quantity)).length + (piece.after ?? "").length),
      0,
    );
    const small = was.reduce((sum, text) => sum + " was ".length + text.length, 0);
    const lines = ((letters * LETTER + small * SMALL_LETTER) * size()) / Math.max(1, width());
    // A line ends with a word, so that some of it stays empty.
    return lines < (isPhone() ? LINES.phone : LINES.other) - 0.25;
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
    const brief = before?.brief || !fits(lead, was);
    const first = brief ? (sheet.answers({ ...room, short, brief })[0] ?? lead) : lead;
    const tight = before?.tight || (brief && !fits(first, was));
    return { sentences: isAlone() ? [first] : [first, ...rest], short, brief, tight, steady: yearOf(first) };
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
  const lead = () => said().sentences[0] ?? NOTHING;
  const first = () => {
    const sentence = sheet.givesOutFirst()?.sentence ?? NOTHING;
    return sheet.doubting()?.said() ? withoutDays(sentence) : sentence;
  };
  /** Beside a lead in smaller type there is room for a second line of it. */
  const isLong = () => sheet.looking.part() !== null && String(first().pieces[0]).length > ONE_LINE;
  return (
    <section class="answers" aria-label="Answers" aria-busy={sheet.working()} ref={watch}>
      <h1 class="lead" classList={{ tight: said().tight || isLong() }}>
        <Pieces sentence={lead()} onPress={onPress} />
      </h1>
      <Show when={(lead().acts?.length ?? 0) > 0}>
        <Acts acts={lead().acts ?? []} />
      </Show>
      <ul>
        <Show when={lead().id === "lead" && sheet.givesOutFirst() !== null}>
          <li class="gives-out" classList={{ old: sheet.givesOutFirst()?.old }}>
            <Pieces sentence={first()} onPress={onPress} />
          </li>
        </Show>
        <Show when={sheet.doubting()?.said()}>{(said) => <NotSure said={said()} />}</Show>
        <Further sentences={said().sentences.slice(1)} onPress={onPress} />
      </ul>
      <Wrong />
      <Spoken />
      <Show when={sheet.looking.openedAt() === "answers" && sheet.looking.opened()}>
        <AnswerWorking onPress={onPress} onClose={onClose} pressed={pressed} />
      </Show>
    </section>
  );
}
