// Where what a number was stands in its sentence: behind the phrase, never in the middle of it.

import fc from "fast-check";
import { expect, test } from "vitest";
import { type Piece, phraseAfter } from "../../src/telling/asked.ts";

const number = (quantity: string): Piece => ({ quantity, tone: "plain" });

test.each([
  [" made-up seasons; in the worst, ", " made-up seasons", ";"],
  [" without rain.", " without rain", "."],
  [". Full tanks last ", "", "."],
  [", on ", "", ","],
])("%j behind a number", (text, words, stop) => {
  const phrase = phraseAfter([number("a"), text, number("b")], 0);
  expect([phrase.words, phrase.stop]).toEqual([words, stop]);
  expect(phrase.lead + phrase.last).toBe(words);
  expect(phrase.last).not.toMatch(/\s/);
});

test("words between two numbers of one phrase are none of it; the last words of all are", () => {
  expect(phraseAfter([number("a"), " of ", number("b")], 0).words).toBe("");
  expect(phraseAfter(["In a usual season ", number("a"), " spills"], 1).words).toBe(" spills");
  expect(phraseAfter([number("a")], 0).words).toBe("");
  // What is said of them may come in two pieces.
  expect(phraseAfter([number("a"), " seasons", "; in the worst on ", number("b")], 0).words).toBe(" seasons");
});

test("nothing of a sentence is lost or said twice", () => {
  const text = fc.string({ unit: fc.constantFrom(..."ab ,.;:"), maxLength: 12 });
  fc.assert(
    fc.property(text, fc.boolean(), (behind, isLast) => {
      const pieces = [number("a"), behind, ...(isLast ? [] : [number("b")])];
      const { words, stop } = phraseAfter(pieces, 0);
      expect(behind.startsWith(words + stop)).toBe(true);
    }),
  );
});
