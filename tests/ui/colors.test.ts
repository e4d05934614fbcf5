// The colors of the page stand in one sheet of style, and what is written in them can be read on whatever it is written on.

import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const HOME = "src/ui/page/base.css";

const textOf = (name: string): string => readFileSync(ROOT + name, "utf8");
const filesOf = (folder: string, ending: RegExp): readonly string[] =>
  readdirSync(ROOT + folder, { recursive: true, encoding: "utf8" })
    .filter((name) => ending.test(name))
    .map((name) => `${folder}/${name}`);

type Colors = ReadonlyMap<string, string>;

/** The colors by day and by night, by name. */
const [DAY, NIGHT] = ([1, 2] as const).map(
  (at): Colors =>
    new Map(
      [...textOf(HOME).matchAll(/--([\w-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/g)].map((found) => [
        found[1] ?? "",
        found[at + 1] ?? "",
      ]),
    ),
) as [Colors, Colors];

/** Relative luminance of "#rrggbb" (WCAG 2.2). */
function luminance(color: string): number {
  const [red, green, blue] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(color.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Contrast ratio of two colors (WCAG 2.2). */
function contrast(one: string, other: string): number {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

const TONES = ["water", "power", "growth", "trouble"];
const WASHES = TONES.map((tone) => `${tone}-wash`);

/** Pairs under the ratio, each with what it comes to. */
function under(ratio: number, colors: Colors, tones: readonly string[], grounds: readonly string[]) {
  return tones.flatMap((tone) =>
    grounds.flatMap((ground) => {
      const [front, back] = [colors.get(tone), colors.get(ground)];
      if (!front || !back) return [`${tone} or ${ground} is missing`];
      const found = contrast(front, back);
      return found < ratio ? [`${tone} on ${ground}: ${found.toFixed(2)}`] : [];
    }),
  );
}

describe.each([
  ["day", DAY],
  ["night", NIGHT],
])("by %s", (_, colors) => {
  test("an answer stands out seven times on the page and on a sheet", () => {
    expect(under(7, colors, ["ink", ...TONES], ["paper", "sheet"])).toEqual([]);
  });

  test("whatever is written stands out four and a half times on each ground and wash", () => {
    expect(under(4.5, colors, ["ink", "soft", ...TONES], ["paper", "sheet", "soil", ...WASHES])).toEqual([]);
  });

  test("on standing water only ink is written, and on what is filled only its ground's color", () => {
    expect(under(4.5, colors, ["ink"], ["standing"])).toEqual([]);
    expect(under(4.5, colors, ["paper", "sheet"], ["ink", "trouble"])).toEqual([]);
  });
});

test("black on white comes to 21, and a color on itself to one", () => {
  expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 9);
  expect(contrast("#11528a", "#11528a")).toBe(1);
});

test("no other file of the page names a color", () => {
  const COLOR = /#(?:[0-9a-f]{8}|[0-9a-f]{6}|[0-9a-f]{3,4})\b(?!")|\b(?:rgb|hsl|oklch|light-dark)a?\(/i;
  const named = filesOf("src", /\.(css|tsx)$/)
    .filter((name) => name !== HOME)
    .flatMap((name) =>
      textOf(name)
        .split("\n")
        .filter((line) => COLOR.test(line))
        .map((line) => `${name}: ${line.trim()}`),
    );
  // A camera reads a code in black on white, whatever the page looks like.
  expect(named.filter((line) => !line.includes("PictureCode.tsx"))).toEqual([]);
});

test("the icon and what a phone's home screen is told repeat colors of the page by day", () => {
  const known = new Set(DAY.values());
  const repeated = ["public/icon.svg", "vite.config.ts"].flatMap((name) => [
    ...(textOf(name).match(/#[0-9a-f]{6}\b/gi) ?? []),
  ]);
  expect(repeated.length).toBeGreaterThan(3);
  expect(repeated.filter((color) => !known.has(color))).toEqual([]);
});

test("nothing that is written is made faint: it would fall under what its color was measured by", () => {
  const RULE = /([^{};]+)\{([^{}]*)\}/g;
  const faint = filesOf("src/ui", /\.css$/).flatMap((name) =>
    [
      ...textOf(name)
        .replaceAll(/\/\*[\s\S]*?\*\//g, "")
        .matchAll(RULE),
    ].flatMap(([, selector = "", body = ""]) => {
      const opacity = /(?:^|[\s;])opacity: ([\d.]+)/.exec(body)?.[1];
      return opacity !== undefined && Number(opacity) > 0 && Number(opacity) < 1
        ? [selector.trim().replaceAll(/\s+/g, " ")]
        : [];
    }),
  );
  // Lines of a drawing or a curve that is old; what cannot be pressed.
  expect(
    faint.filter((one) => !/(svg path|:disabled|aria-disabled="true"\])$|^\.plot \.old$/.test(one)),
  ).toEqual([]);
});
