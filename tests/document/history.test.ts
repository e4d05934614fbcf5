import { expect, test } from "vitest";
import {
  canRedo,
  canUndo,
  commit,
  editLabel,
  type History,
  redo,
  redoLabel,
  startHistory,
  stepEnded,
  undo,
  undoLabel,
} from "../../src/document/history.ts";

const done = (before: History<string>, document: string, merge?: string) =>
  commit(before, document, { label: `to ${document}`, ...(merge === undefined ? {} : { merge }) });

test("an edit is called by what it changed", () => {
  expect(editLabel("Capacity", "Main tank")).toBe("Capacity of Main tank");
});

test("thirty edits are undone one by one and redone, each with its name", () => {
  let history = startHistory("0");
  for (let count = 1; count <= 30; count += 1) history = done(history, String(count));
  for (let count = 30; count >= 1; count -= 1) {
    expect([history.present, undoLabel(history)]).toEqual([String(count), `to ${count}`]);
    history = undo(history);
  }
  expect([history.present, canUndo(history), canRedo(history)]).toEqual(["0", false, true]);
  for (let count = 1; count <= 30; count += 1) {
    expect(redoLabel(history)).toBe(`to ${count}`);
    history = redo(history);
  }
  expect([history.present, canRedo(history), redoLabel(history)]).toEqual(["30", false, null]);
});

test("edits with one key are undone together, until sealed, undone, or another comes between", () => {
  let history = startHistory("a");
  for (const document of ["b", "c", "d"]) history = done(history, document, "slider");
  expect(undo(history).present).toBe("a");
  expect(undoLabel(history)).toBe("to d");
  history = done(stepEnded(history), "e", "slider");
  expect(undo(history).present).toBe("d");
  history = done(done(history, "f", "other"), "g", "slider");
  expect(undo(history).present).toBe("f");
  history = done(redo(undo(history)), "h", "slider");
  expect(undo(history).present).toBe("g");
});

test("the same document is no edit, and a new edit forgets what could be redone", () => {
  const first = done(startHistory("a"), "b");
  expect(done(first, "b")).toBe(first);
  expect(canRedo(done(undo(first), "c"))).toBe(false);
  expect(undo(startHistory("a")).present).toBe("a");
  expect(redo(first)).toBe(first);
});

test("the oldest steps are forgotten beyond the cap", () => {
  let history = startHistory("0");
  for (let count = 1; count <= 10; count += 1) history = commit(history, String(count), { label: "x" }, 4);
  while (canUndo(history)) history = undo(history);
  expect(history.present).toBe("6");
});

test("every document that can come back is listed, and a history cannot be altered", () => {
  const history = undo(done(done(startHistory("a"), "b"), "c"));
  const { past, present, future } = history;
  const all = [...past, { document: present }, ...future].map(({ document }) => document);
  expect(all).toEqual(["a", "b", "c"]);
  expect(Object.isFrozen(history) && Object.isFrozen(history.past) && Object.isFrozen(history.future)).toBe(
    true,
  );
});
