// What else could be done at a hose: the same watering with the next hose or a bigger pump, and the curves that say why.

import bores from "../../../shared/pipe-bores.json";
import pumps from "../../../shared/pumps.json";
import type { Figure, FigureCurve } from "../../graph/figure.ts";
import { outcomes } from "../../graph/outcomes.ts";
import { numberOf, numberOrNull } from "../../graph/readers.ts";
import type { Model, ModelInput } from "../../graph/types.ts";
import { gravityHead } from "../../physics/gravity-line.ts";
import { believedCurve, curveFromRatings, type Pump } from "../../physics/pump-curve.ts";
import { headUnder } from "../../physics/pump-run.ts";
import { si } from "../tabled.ts";
import { HOSE_MAY_LACK, HOSE_TAKES, type Rig, rigOf, runUnder } from "./rig.ts";
import { TANK_TAKES, timeOf } from "./time.ts";

type Way = { readonly label: string; readonly rig: Rig };

const HOSES = [bores.bores.hose_1_2, bores.bores.hose_5_8, bores.bores.hose_3_4, bores.bores.hose_1].map(
  ({ label, bore }) => ({ label, bore: si(bore) }),
);
/** Disagreement of the integrals that is accepted where nothing but a comparison hangs on them [-]. */
const ROUGHLY = 1e-3;
/** How many bigger pumps are tried. */
const BIGGER = 2;
/** Hoses and pumps are sold in sizes: one that differs by less is the same one [-]. */
const NEXT = 1.05;

const nextHose = (rig: Rig) => HOSES.find(({ bore }) => bore > rig.line.bore * NEXT) ?? null;

/** Its watering head keeps its holes; as a loss on the hose's speed it grows with the fourth power of the bore. */
function withHose(rig: Rig, bore: number): Rig {
  const wider = (bore / rig.line.bore) ** 4;
  const headK = rig.headK * wider;
  const fittingsK = rig.line.fittingsK - rig.headK + headK;
  return { ...rig, headK, line: { ...rig.line, bore, fittingsK } };
}

/** Pumps of the table that are bigger by their label, as good for their label as this one and lifting as high. */
function biggerPumps(
  input: ModelInput,
  rig: Rig,
): readonly { readonly label: string; readonly pump: Pump }[] {
  const own = numberOf(input, "pump.open_flow");
  const listed = pumps.pumps.filter(({ open_flow }) => si(open_flow) > own * NEXT).slice(0, BIGGER);
  return listed.map(({ label, open_flow, rated_current }) => {
    const rated = curveFromRatings(si(open_flow), rig.pump.shutoffHead, rig.pump.ratedVoltage);
    const current = si(rated_current);
    return {
      label,
      pump: {
        ...believedCurve(rated, numberOf(input, "pump.believed_share")),
        openFlowCurrent: current,
        noFlowCurrent: current * pumps.no_flow_share.value,
      },
    };
  });
}

function waysOf(input: ModelInput, rig: Rig): readonly Way[] {
  const hose = nextHose(rig);
  const wider = hose ? [{ label: hose.label, rig: withHose(rig, hose.bore) }] : [];
  const bigger = biggerPumps(input, rig).map(({ label, pump }) => ({
    label: `${label} pump`,
    rig: { ...rig, pump },
  }));
  const last = bigger[bigger.length - 1];
  const both =
    hose && last ? [{ label: `${last.label}, ${hose.label}`, rig: withHose(last.rig, hose.bore) }] : [];
  const isOpen = rig.headK === 0 && rig.line.opening === null;
  const bare = { ...rig.line, opening: null, fittingsK: rig.line.fittingsK - rig.headK };
  return [
    { label: "As it is", rig },
    ...wider,
    ...bigger,
    ...both,
    { label: "Half the hose", rig: { ...rig, line: { ...rig.line, length: rig.line.length / 2 } } },
    ...(isOpen ? [] : [{ label: "Without wand or rose", rig: { ...rig, headK: 0, line: bare } }]),
  ];
}

/** 1 where the next hose gives more than any of the bigger pumps. */
function hoseWins(input: ModelInput, rig: Rig): number {
  const hose = nextHose(rig);
  if (!hose) return 0;
  const flow = (at: Rig) => runUnder(at, at.lift).flow;
  const wider = flow(withHose(rig, hose.bore));
  return biggerPumps(input, rig).every(({ pump }) => flow({ ...rig, pump }) < wider) ? 1 : 0;
}

function comparison(input: ModelInput, rig: Rig): Figure {
  const computed = runUnder(rig, rig.lift).flow;
  const measured = numberOrNull(input, "measured.flow");
  const gain = measured !== null && computed > 0 ? measured / computed : 1;
  const rows = waysOf(input, rig).map((way) => {
    const run = runUnder(way.rig, way.rig.lift);
    const time =
      way.rig === rig ? numberOrNull(input, "watering_time") : timeOf(input, way.rig, gain, ROUGHLY);
    return [way.label, run.flow * gain, time, run.current];
  });
  return {
    says: "The same watering with one thing changed at a time.",
    note: "Bigger pumps are taken to lift as high as this one and to keep the same share of their label.",
    columns: [
      { label: "With", measure: "text" },
      { label: "Comes out", measure: "flow", bar: true },
      { label: "Longest watering", measure: "duration" },
      { label: "Draws", measure: "current" },
    ],
    rows,
  };
}

/** Points along a curve, and rows of the table. */
const POINTS = 24;
const TABLED = 6;

function meeting(input: ModelInput, rig: Rig): Figure {
  const label = numberOf(input, "pump.open_flow");
  const run = runUnder(rig, rig.lift);
  const most = Math.max(label, run.flow * 1.1);
  const flows = Array.from({ length: POINTS + 1 }, (_, step) => (most * step) / POINTS);
  const made = (flow: number) => headUnder(rig.pump, rig.supply, flow);
  const used = (at: Rig, flow: number) => at.lift + gravityHead(at.line, flow);
  const top = Math.max(made(0), rig.lift) * 1.15;
  const curve = (
    name: string,
    part: FigureCurve["part"],
    of: (flow: number) => number | null,
  ): FigureCurve => ({
    label: name,
    part,
    points: flows.flatMap((flow): (readonly [number, number])[] => {
      const head = of(flow);
      return head !== null && head >= 0 && head <= top ? [[flow, head]] : [];
    }),
  });
  const hose = nextHose(rig);
  const tabled = flows.filter((_, step) => step % (POINTS / TABLED) === 0);
  return {
    says: "What the pump makes falls as more comes out; what lift and hose use up rises. Where the two meet it runs.",
    columns: [
      { label: "At a flow of", measure: "flow" },
      { label: "The pump makes", measure: "head" },
      { label: "Lift and hose use up", measure: "head" },
    ],
    rows: tabled.map((flow) => [flow, made(flow), used(rig, flow)]),
    chart: {
      across: { label: "comes out", measure: "flow" },
      up: { label: "head", measure: "head" },
      curves: [
        curve("the pump makes", "first", made),
        curve("lift and hose use up", "second", (flow) => used(rig, flow)),
        ...(hose
          ? [curve(`with ${hose.label}`, "other", (flow) => used(withHose(rig, hose.bore), flow))]
          : []),
      ],
      marks: [
        ...(run.flow > 0 ? [{ label: "it runs here", across: run.flow, up: run.head }] : []),
        { label: "its label", across: label, up: 0 },
      ],
    },
  };
}

/** The same watering otherwise, and the curves. */
export const comparing: Model = {
  name: "comparing",
  takes: [
    ...HOSE_TAKES,
    ...TANK_TAKES,
    "pump.open_flow",
    "pump.believed_share",
    "largest_watering",
    "watering_time",
    "measured.flow",
  ],
  optional: [
    ...HOSE_MAY_LACK,
    "pump.open_flow",
    "pump.believed_share",
    "largest_watering",
    "watering_time",
    "measured.flow",
  ],
  outputs: ["what_if", "curves", "hose_wins"],
  run: (input) => {
    const rig = rigOf(input);
    return outcomes(
      {
        hose_wins: rig && !rig.panel ? hoseWins(input, rig) : 0,
        what_if: rig && !rig.panel ? comparison(input, rig) : null,
        curves: rig ? meeting(input, rig) : null,
      },
      "its pump's figures do not explain what comes out",
    );
  },
};
