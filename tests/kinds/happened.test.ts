// What the document hands on of its notes is what the season reads: the same words, as far back.
import { expect, test } from "vitest";
import { happenedText, NOTED_FOR, TAKEN_IN } from "../../src/document/happened.ts";
import { NOTE_KINDS } from "../../src/document/note-kinds.ts";
import { readHappened, TELLS_FOR } from "../../src/season/happened.ts";

const read = (what: string) =>
  readHappened(happenedText([{ id: "0".repeat(32), day: "2026-07-20", what, where: "tank" }])).length === 1;

test("the season reads each word that is handed on, and of the other notes none", () => {
  for (const what of Object.keys(NOTE_KINDS)) expect([what, read(what)]).toEqual([what, TAKEN_IN.has(what)]);
  for (const what of TAKEN_IN) expect(Object.keys(NOTE_KINDS)).toContain(what);
});

test("and looks as far back as notes are handed on", () => {
  expect(TELLS_FOR).toBe(NOTED_FOR);
});
