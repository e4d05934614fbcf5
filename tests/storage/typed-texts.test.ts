import { describe, expect, test } from "vitest";
import { makeTypedTexts, typedLeft } from "../../src/storage/typed-texts.ts";
import { instantMemory } from "./made-up.ts";

describe("what stands typed in fields", () => {
  test("is in the instant store with every letter, and gone once it is entered", () => {
    const store = instantMemory();
    const texts = makeTypedTexts(store, "a", () => 7);
    texts.say("mine", "tank.height", "3 f");
    texts.say("mine", "tank.height", "3 ft");
    texts.say("mine", "site.name", "By the pond");
    expect(typedLeft(store)).toEqual([
      { writer: "a", sheet: "mine", at: 7, texts: { "tank.height": "3 ft", "site.name": "By the pond" } },
    ]);
    texts.say("mine", "tank.height", null);
    texts.say("mine", "site.name", null);
    expect([...store.kept.keys()]).toEqual([]);
  });

  test("each page and each worksheet has its own; a page that is gone is taken over, what is typed here stays", () => {
    const store = instantMemory();
    makeTypedTexts(store, "gone", () => 1).say("mine", "tank.height", "three");
    makeTypedTexts(store, "gone", () => 2).say("other", "tank.height", "four");
    const here = makeTypedTexts(store, "here", () => 3);
    here.say("mine", "tank.height", "five");
    here.say("mine", "site.name", "x");
    for (const note of typedLeft(store)) if (note.writer === "gone") here.adopt(note);
    expect(here.of("mine")).toEqual({ "tank.height": "five", "site.name": "x" });
    expect(here.of("other")).toEqual({ "tank.height": "four" });
    expect(typedLeft(store).map(({ writer }) => writer)).toEqual(["here", "here"]);
  });

  test("what is no such note is nothing; where there is no room, no older text outlives a newer one", () => {
    const store = instantMemory();
    store.set("eavesdrip:typed:x:mine", '{"texts":{"a":1}}');
    store.set("eavesdrip:typed:y:mine", "{");
    expect(typedLeft(store)).toEqual([]);
    const texts = makeTypedTexts(store, "a", () => 0);
    texts.say("mine", "tank.height", "3 ft");
    store.refuse = true;
    texts.say("mine", "tank.height", "4 ft");
    expect(typedLeft(store)).toEqual([]);
    expect(texts.of("mine")).toEqual({ "tank.height": "4 ft" });
  });

  test("ids like __proto__ are fields like any other", () => {
    const store = instantMemory();
    const texts = makeTypedTexts(store, "a", () => 0);
    texts.say("mine", "__proto__", "x");
    expect(Object.keys(texts.of("mine"))).toEqual(["__proto__"]);
    expect(({} as Record<string, unknown>)["x"]).toBeUndefined();
  });
});
