// A chart's table for those who cannot look: its numbers are those of the drawn points.

import { describe, expect, test } from "vitest";
import type { Figure } from "../../src/graph/figure.ts";
import { valueIn } from "../../src/graph/readers.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { figurePlot, figureTable } from "../../src/scene/figure-chart.ts";
import type { Plot, Point } from "../../src/scene/plot.ts";
import { yearAround } from "../../src/scene/stored-water.ts";
import { seasonsPlot, seasonsTable, yearPlotOf, yearWaterTable } from "../../src/scene/time-plots.ts";
import { workOut } from "../../src/studies/work-out.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { showQuantity } from "../../src/units/show.ts";
import { starter } from "../starter.ts";

const METRIC = { units: "metric", locale: "en-GB", currency: "EUR" } as const;
const FIRST = dayNumber(2001, 1, 1);
const DAYS = 3 * 365;

const SHORT = new Set([10, 31, 32, 58, 59, 400].map((day) => FIRST + day));
const seriesOf = (shift: number) => ({
  stored: Float64Array.from({ length: DAYS }, (_, day) => 1 + Math.sin(day / 58 + shift)),
  short: Uint8Array.from({ length: DAYS }, (_, day) => (SHORT.has(FIRST + day) ? 1 : 0)),
  firstDay: FIRST,
});
const [NOW, HELD] = [seriesOf(0), seriesOf(1)];

const lineIn = (plot: Plot, held: boolean): readonly Point[] => {
  const layer = plot.layers.find((one) => one.as === "line" && (one.held ?? false) === held);
  return layer?.as === "line" ? layer.points.flatMap((point) => (point ? [point] : [])) : [];
};

describe("the record's tables", () => {
  const year = yearAround(NOW, 2002, "05-01", "09-30");
  const series = { now: NOW, held: HELD };
  const plot = yearPlotOf({ series, year }, 800, METRIC);
  const water = (points: readonly Point[], day: number): string =>
    showQuantity(points.find(([at]) => at === day)?.[1] ?? Number.NaN, "volume", METRIC);

  test("a year's water, month by month, now and as held, with the lowest evening that is drawn in each", () => {
    const { head, rows } = yearWaterTable({ series, year }, METRIC);
    expect(head).toEqual(["From", "Water then", "As held", "Lowest evening", "Short days"]);
    expect(rows).toHaveLength(12);
    for (const [month, [from, now, held, lowest]] of rows.entries()) {
      const [first, next] = [dayNumber(2002, month + 1, 1), dayNumber(2002, month + 2, 1)];
      expect(from).toContain("1");
      expect([now, held]).toEqual([water(lineIn(plot, false), first), water(lineIn(plot, true), first)]);
      const drawn = lineIn(plot, false).filter(([day]) => day >= first && day < next);
      expect(drawn).toHaveLength(next - first);
      expect(lowest).toBe(showQuantity(Math.min(...drawn.map(([, up]) => up)), "volume", METRIC));
    }
  });

  test("its short days are as many as are drawn along the foot", () => {
    const first = yearAround(NOW, 2001, "05-01", "09-30");
    const { rows } = yearWaterTable({ series: { now: NOW, held: null }, year: first }, METRIC);
    expect(rows.map((row) => Number(row.at(-1))).slice(0, 3)).toEqual([1, 3, 1]);
    const drawn = yearPlotOf({ series: { now: NOW, held: null }, year: first }, 800, METRIC).layers.flatMap(
      (layer) => (layer.as === "bars" ? layer.bars.map(({ from, to }) => to - from) : []),
    );
    const all = rows.reduce((sum, row) => sum + Number(row.at(-1)), 0);
    expect(all).toBe(drawn.reduce((sum, days) => sum + days, 0));
  });

  test("seasons have a row each with the height of their bar, now and as held", () => {
    const season = (at: number, daysShort: number) => ({ year: at, daysShort, shareMet: 1 });
    const both = {
      now: [season(2001, 0), season(2002, 8), season(2003, 34)],
      held: [season(2001, 5), season(2002, 0), season(2003, 9)],
    };
    const around = (at: number) => yearAround(NOW, at, "05-01", "09-30");
    const { rows } = seasonsTable(both, NOW, around, METRIC);
    const bars = seasonsPlot(both).layers.map((layer) =>
      layer.as === "bars" ? new Map(layer.bars.map(({ from, up }) => [Math.floor(from), up])) : new Map(),
    );
    for (const [place, row] of rows.entries())
      expect([row[1], row[2]]).toEqual(bars.map((drawn) => String(drawn.get(place) ?? 0)));
  });
});

/** Figures with a chart that the templates' cards show, by the names of their rows. */
const charted = (name: string): readonly (readonly [string, Figure])[] => {
  const { worksheet, results } = workOut(starter(name, 3), CARD_KINDS);
  return worksheet.cards.flatMap(({ id, kind }) =>
    (CARD_KINDS[kind]?.figures ?? []).flatMap(({ row }) => {
      const figure = valueIn(results.get(`${id}.${row}`)) as Figure | null;
      return figure?.chart ? [[`${id}.${row}`, figure] as const] : [];
    }),
  );
};

describe("a figure's table", () => {
  test.each(["pump-battery-panel.json", "panel-alone-metric.json"])(
    "has the drawn height of each of its curves: %s",
    (name) => {
      const figures = charted(name);
      expect(figures.length).toBeGreaterThan(0);
      for (const [id, figure] of figures) {
        const { rows } = figureTable(figure, id, METRIC);
        const { layers } = figurePlot(figure.chart as NonNullable<Figure["chart"]>, 600, METRIC);
        let met = 0;
        for (const [at, row] of figure.rows.entries())
          for (const [column, { measure }] of figure.columns.slice(1).entries()) {
            const layer = layers[column];
            const drawn = layer?.as === "line" ? layer.points.find((point) => point?.[0] === row[0]) : null;
            if (!drawn) continue;
            met++;
            expect(rows[at]?.[column + 1], `${id} ${row[0]}`).toBe(
              showQuantity(drawn[1], measure === "text" ? "count" : measure, METRIC),
            );
          }
        // What lies over the paper's top is not drawn.
        expect(met, id).toBeGreaterThan(figure.rows.length / 2);
      }
    },
  );
});
