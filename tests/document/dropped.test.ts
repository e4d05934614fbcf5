import { describe, expect, test } from "vitest";
import {
  commit,
  dropped,
  redoLabel,
  startHistory,
  stepEnded,
  undo,
  undoLabel,
} from "../../src/document/history.ts";

describe("a number put back as if it had not been turned", () => {
  const turned = (of = startHistory("275 gal")) =>
    commit(commit(of, "300 gal", { label: "Each holds", merge: "totes.capacity" }), "550 gal", {
      label: "Each holds",
      merge: "totes.capacity",
    });

  test("leaves no step behind, neither to undo nor to redo", () => {
    const back = dropped(turned());
    expect(back.present).toBe("275 gal");
    expect([undoLabel(back), redoLabel(back)]).toEqual([null, null]);
  });

  test("leaves what was done before it", () => {
    const before = stepEnded(commit(startHistory("265 gal"), "275 gal", { label: "Before" }));
    const back = dropped(turned(before));
    expect([back.present, undoLabel(back)]).toEqual(["275 gal", "Before"]);
    expect(undo(back).present).toBe("265 gal");
  });

  test("does nothing once it was put down", () => {
    const down = stepEnded(turned());
    expect(dropped(down)).toBe(down);
    expect(dropped(startHistory("275 gal")).present).toBe("275 gal");
  });
});
