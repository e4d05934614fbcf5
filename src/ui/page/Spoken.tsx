// What a change came to, said once to whoever hears the page: when it stands still, never while it is worked out.

import { createEffect, createSignal, on } from "solid-js";
import { type Sheet, useSheet } from "../sheet.ts";

/** Lines of the answers that are said where the lead is as it was. */
const FEW = 2;

const words = (element: Element | null | undefined): string =>
  element?.textContent?.replaceAll(/\s+/g, " ").trim() ?? "";

type Line = { readonly text: string; readonly numbers: string };

/** What a number was is said with it, and is no news by itself; words may be fewer or more by the room there is. */
function lineOf(element: Element): Line {
  const numbers = [...element.querySelectorAll(".number")].map(words).join("; ");
  return { text: words(element), numbers: numbers || words(element) };
}

/** The lead and what stands under it; what first gives out and what is not sure come later, and are found where they stand. */
const linesOf = (answers: Element): readonly Line[] =>
  [...answers.querySelectorAll(".lead, :scope > ul > li:not(.gives-out, .not-sure, .doing)")].map(lineOf);

/** A field does not say what it was stepped to; a slider does. */
function stepped(sheet: Sheet): string {
  const id = sheet.looking.inHand();
  const here = document.activeElement;
  return id !== null && here?.matches(".hand :is(input.in-hand-value, .step)") ? `${sheet.shown(id)}. ` : "";
}

export function Spoken() {
  const sheet = useSheet();
  const [said, setSaid] = createSignal("");
  let here: HTMLParagraphElement | undefined;
  let before: readonly string[] = [];
  const isStill = () => !sheet.moving() && !sheet.working();
  createEffect(
    on([isStill, sheet.worksheet], ([still]) => {
      const answers = here?.closest(".answers");
      if (!still || !answers) return;
      const lines = linesOf(answers);
      const [lead, ...moved] = lines.map((line, at) => (line.numbers === before[at] ? "" : line.text));
      const few = moved.filter((text) => text !== "").slice(0, FEW);
      const text = lead || few.join(". ");
      before = lines.map(({ numbers }) => numbers);
      if (text !== "") setSaid(stepped(sheet) + text);
    }),
  );
  return (
    <p class="unseen" role="status" ref={here}>
      {said()}
    </p>
  );
}
