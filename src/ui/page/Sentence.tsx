// A sentence with numbers in it: each is pressed for its working, and carries what it was beside itself.

import { createMemo, createRenderEffect, Index, Show } from "solid-js";
import { shownIn } from "../../graph/readers.ts";
import {
  type NumberPiece,
  type Phrase,
  type Piece,
  phraseAfter,
  type Sentence,
} from "../../telling/asked.ts";
import { toneShown } from "../../telling/state-tone.ts";
import { wasOf } from "../../telling/was.ts";
import { useSheet } from "../sheet.ts";

function afterNumber(pieces: readonly Piece[], index: number, text: string): string {
  if (index === 0 || typeof pieces[index - 1] === "string") return text;
  const { words, stop } = phraseAfter(pieces, index - 1);
  return text.slice(words.length + stop.length);
}

/** What a number was before the last change, or as held; nothing where a reader would see no difference. */
function Was(props: { readonly piece: NumberPiece }) {
  const sheet = useSheet();
  const was = () => {
    if (props.piece.before !== undefined) return ["was", props.piece.before];
    const was = wasOf(props.piece, sheet);
    return was === null ? null : ["was", props.piece.was ?? "", was].filter((text) => text !== "");
  };
  return <Show when={was()}>{(words) => <span class="was"> {words().join(" ")}</span>}</Show>;
}

/** What a number in a sentence does when it is pressed. */
export type OnPress = (quantity: string, button: HTMLElement) => void;

type NumberProps = { readonly piece: NumberPiece; readonly phrase: Phrase; readonly onPress: OnPress };

function NumberButton(props: NumberProps) {
  const sheet = useSheet();
  const span = () => sheet.doubting()?.spanOf(props.piece.quantity) ?? null;
  const isOld = () =>
    props.piece.soft ||
    sheet.result(props.piece.quantity)?.state === "pending" ||
    (span() !== null && sheet.doubting()?.isOld());
  // What it comes to may be another while the sentence keeps its words.
  const tone = () => toneShown(props.piece, shownIn(sheet.result(props.piece.quantity)));
  const isOpen = () =>
    sheet.looking.openedAt() === "answers" && sheet.looking.opened() === props.piece.quantity;
  return (
    <button
      type="button"
      class="number"
      classList={{ old: isOld() }}
      data-tone={tone()}
      aria-expanded={isOpen()}
      onClick={(event) => props.onPress(props.piece.quantity, event.currentTarget)}
    >
      {props.piece.text ??
        sheet.doubting()?.spanOf(props.piece.quantity) ??
        sheet.shown(props.piece.quantity)}
      {props.piece.after}
    </button>
  );
}

/** A number, the words of its phrase, what it was, and the stop behind it: a line never begins with the last two of them. */
function NumberOf(props: NumberProps) {
  const hasWords = () => props.phrase.words !== "";
  return (
    <span class="together" classList={{ phrase: hasWords() }}>
      <NumberButton {...props} />
      <Show when={hasWords()}>
        <Words text={props.phrase.lead} />
      </Show>
      <span class="last">
        <Show when={hasWords()}>
          <Words text={props.phrase.last} />
        </Show>
        <Was piece={props.piece} />
        {props.phrase.stop}
      </span>
    </span>
  );
}

const NO_NUMBER: NumberPiece = { quantity: "", tone: "plain" };

const wordsOf = (piece: Piece): string => (typeof piece === "string" ? piece : "");

/** Words between numbers. One node for good: a bare text would have the whole sentence put in anew with every number. */
function Words(props: { readonly text: string }) {
  const node = document.createTextNode("");
  createRenderEffect(() => {
    node.data = props.text;
  });
  return node;
}

/** The pieces of a sentence; they change in place, so that a number keeps the focus while it changes. */
export function Pieces(props: { readonly sentence: Sentence; readonly onPress: OnPress }) {
  const pieces = () => props.sentence.pieces;
  return (
    <Index each={pieces()}>
      {(piece, index) => {
        // Where words come in the place of a number, what still reads it before it goes must find the last one.
        const number = createMemo((last: NumberPiece) => {
          const now = piece();
          return typeof now === "string" ? last : now;
        }, NO_NUMBER);
        const isNumber = () => typeof piece() !== "string";
        return (
          <Show when={isNumber()} fallback={<Words text={afterNumber(pieces(), index, wordsOf(piece()))} />}>
            <NumberOf piece={number()} phrase={phraseAfter(pieces(), index)} onPress={props.onPress} />
          </Show>
        );
      }}
    </Index>
  );
}
