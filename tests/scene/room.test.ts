import fc from "fast-check";
import { expect, test } from "vitest";
import { deepest, groundAt } from "../../src/scene/ground.ts";
import type { Box } from "../../src/scene/place.ts";
import { newRoom } from "../../src/scene/room.ts";
import { tries } from "../tries.ts";

const PAPER = { width: 200, height: 120 };
const anyBox: fc.Arbitrary<Box> = fc.record({
  x: fc.double({ min: -20, max: PAPER.width, noNaN: true }),
  y: fc.double({ min: -20, max: PAPER.height, noNaN: true }),
  width: fc.double({ min: 1, max: 60, noNaN: true }),
  height: fc.double({ min: 1, max: 40, noNaN: true }),
});

test("a box short of the edge that stands in its way is not free, up and down", () => {
  fc.assert(
    fc.property(
      fc.array(anyBox, { maxLength: 6 }),
      anyBox,
      fc.boolean(),
      fc.double({ min: 0, max: 150, noNaN: true }),
      (taken, box, isDown, by) => {
        const room = newRoom(PAPER.width, PAPER.height);
        for (const one of taken) room.take(one);
        const edge = room.edge(box, isDown);
        expect(edge === null).toBe(room.edge(box, !isDown) === null);
        if (edge === null) return;
        const moved = { ...box, y: box.y + (isDown ? by : -by) };
        const isShort = isDown ? moved.y < edge : moved.y + moved.height >= edge;
        if (isShort) expect(room.edge(moved, isDown)).not.toBeNull();
      },
    ),
    { numRuns: tries(2000) },
  );
});

test("what was taken is not free, and what was taken back is", () => {
  const room = newRoom(PAPER.width, PAPER.height);
  const takeBack = room.kept();
  const box = { x: 40, y: 40, width: 20, height: 10 };
  expect(room.edge(box, true)).toBeNull();
  room.take(box);
  expect(room.edge(box, true)).toBe(52);
  expect(room.edge(box, false)).toBe(40);
  takeBack();
  expect(room.edge(box, true)).toBeNull();
});

test("the deepest ground between two places is the lowest of its ends and of the corners between them", () => {
  const anyGround = fc
    .array(
      fc.tuple(fc.double({ min: 0, max: 300, noNaN: true }), fc.double({ min: 0, max: 100, noNaN: true })),
      {
        minLength: 1,
        maxLength: 12,
      },
    )
    .map((corners) => corners.sort((a, b) => a[0] - b[0]));
  const anyX = fc.double({ min: -10, max: 310, noNaN: true });
  fc.assert(
    fc.property(anyGround, anyX, anyX, (ground, a, b) => {
      const [from, to] = a < b ? [a, b] : [b, a];
      const inside = ground.filter(([x]) => x >= from && x < to).map(([, y]) => y);
      expect(deepest(ground, from, to)).toBe(
        Math.max(groundAt(ground, from), groundAt(ground, to), ...inside),
      );
    }),
    { numRuns: tries(1000) },
  );
});
