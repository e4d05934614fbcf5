// Questions asked of a whole worksheet: nine points of a curve against single seasons, one worker against two, and an edit
// from the base's results against a cold evaluation.

import { readFileSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import { Worker } from "node:worker_threads";
import { build } from "vite";
import { withChanges } from "../../src/document/changes.ts";
import type { Change, Worksheet } from "../../src/document/worksheet.ts";
import { buildGraph } from "../../src/graph/build.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { recordKey } from "../../src/rainfall/record-key.ts";
import type { SeasonInput } from "../../src/season/input.ts";
import { runSeason } from "../../src/season/run.ts";
import { worksheetFromFileText } from "../../src/storage/file.ts";
import { ask, type Base, baseOf } from "../../src/studies/ask.ts";
import { notSure, RUNS } from "../../src/studies/not-sure/not-sure.ts";
import { numberTrials } from "../../src/studies/try.ts";
import { workOut, workOutLight } from "../../src/studies/work-out.ts";
import { OF_THE_PLACE } from "../../src/telling/answer-names.ts";
import { scaleBetween } from "../../src/units/scale.ts";
import type { AskedWorker } from "../../src/worker/asked-member.ts";
import type { FromAsked, Question } from "../../src/worker/asking-messages.ts";
import { type Asker, askingPool } from "../../src/worker/asking-pool.ts";
import { type Ratio, shownTime } from "./measure.ts";

const ROOT = process.cwd();
const WANTED = ["season.days_short"];
const COARSE = 9;
const ROUNDS = 9;
/** Runs of what is not sure, and rounds of so many. */
const DOUBTFUL = RUNS;
const FEW_ROUNDS = 3;
/** Single runs that are measured together, so that their rounds are about as long: a short one finds a quiet moment sooner. */
const SINGLES = 64;

function demo(): Worksheet {
  const text = readFileSync(`${ROOT}/templates/hillside-totes.json`, "utf8");
  const read = worksheetFromFileText(text, recordKey);
  if (!read.ok) throw new Error("The demo could not be read.");
  return read.worksheet;
}

/** Nine sizes of the demo's tank; another shift makes nine others, so that no answer is kept already. */
const trials = (shift: number) =>
  numberTrials(
    { card: "totes", part: "givens", row: "capacity" },
    scaleBetween(100 + shift, 1000 + shift, "gal"),
    COARSE,
  );

/** Best of some rounds, each doing something else of the same size [ms]. */
async function best(work: (round: number) => void | Promise<void>, rounds = ROUNDS): Promise<number> {
  let least = Number.POSITIVE_INFINITY;
  for (let round = 0; round < rounds; round++) {
    const start = performance.now();
    await work(round);
    least = Math.min(least, performance.now() - start);
  }
  return least;
}

/** One season of the demo alone, with another tank in each round. */
function single(base: Base, round: number): void {
  const plan = base.whole.results.get("season.plan");
  const [record] = base.known.records.values();
  if (plan?.state !== "ready" || !record) throw new Error("The demo has no season.");
  const input = plan.value as SeasonInput;
  const tanks = input.tanks.map((tank) => ({
    ...tank,
    vessel: { ...tank.vessel, volume: tank.vessel.volume * (1 + round / 1000) },
  }));
  runSeason({ ...input, tanks }, record);
}

/** The product's own asking worker, in a thread that speaks as a page's worker does. */
async function workerMaker(made: Worker[]): Promise<() => AskedWorker> {
  const outDir = fileURLToPath(new URL("node_modules/.bench-worker/", pathToFileURL(`${ROOT}/`)));
  await build({
    root: ROOT,
    configFile: false,
    logLevel: "error",
    publicDir: false,
    build: {
      ssr: "src/worker/asking-entry.ts",
      outDir,
      emptyOutDir: true,
      minify: false,
      target: "node20",
      rollupOptions: { output: { entryFileNames: "asking.mjs" } },
    },
  });
  const entry = pathToFileURL(`${outDir}asking.mjs`).href;
  const code = `const { parentPort } = require("node:worker_threads");
    globalThis.postMessage = (message) => parentPort.postMessage(message);
    const early = []; let hear = (data) => early.push(data);
    parentPort.on("message", (data) => hear(data));
    globalThis.addEventListener = (_, listener) => { hear = (data) => listener({ data }); for (const data of early.splice(0)) hear(data); };
    import(${JSON.stringify(entry)});`;
  return () => {
    const worker = new Worker(code, { eval: true });
    made.push(worker);
    return {
      postMessage: (message) => worker.postMessage(message),
      terminate: () => void worker.terminate(),
      addEventListener: (type: "message" | "error", hear: (event: { readonly data: FromAsked }) => void) => {
        worker.on(type, (data) => hear({ data }));
      },
    };
  };
}

/** Asks a question, until all its runs are in. */
function asked(asker: Asker, question: Question): Promise<void> {
  return new Promise<void>((resolve, reject) => {
    asker.ask(question, {
      onAnswers: () => undefined,
      onEnd: (failure) => (failure ? reject(new Error(failure)) : resolve()),
    });
  });
}

/** Runs of what is not sure in the demo, the seed another in each round, so that no answer is kept already. */
function doubtful(base: Base, round: number): Question {
  const of = notSure(base, OF_THE_PLACE, DOUBTFUL, 100 + round);
  return {
    worksheet: of.sheet,
    records: [...base.known.records.values()],
    runs: of.runs,
    wanted: of.reached,
  };
}

/** Some of the same runs, each worked out by itself from nothing but the sheet and its record, as one who types it in would. */
function singles(base: Base, round: number): void {
  const { worksheet, runs } = doubtful(base, 500 + round);
  const records = [...base.known.records.values()];
  for (const changes of runs.slice(0, SINGLES))
    workOut(withChanges(worksheet, changes as readonly Change[]), CARD_KINDS, records);
}

/** So many doubtful runs over a pool of workers that have warmed up. */
async function doubtTime(base: Base, make: () => AskedWorker, size: number): Promise<number> {
  const asker = askingPool(make, size).asker();
  await asked(asker, doubtful(base, size * 10));
  return best((round) => asked(asker, doubtful(base, size * 10 + 1 + round)), FEW_ROUNDS);
}

/** Nine coarse points over a pool of workers that have warmed up. */
async function poolTime(base: Base, make: () => AskedWorker, size: number): Promise<number> {
  const asker = askingPool(make, size).asker();
  const records = [...base.known.records.values()];
  const curve = (round: number) => {
    const runs = trials(round).map(({ change }) => [change]);
    return asked(asker, { worksheet: base.worksheet, records, runs, wanted: WANTED });
  };
  await curve(-1);
  await curve(-2);
  return best(curve);
}

export async function rows(): Promise<readonly Ratio[]> {
  const worksheet = demo();
  const base = baseOf(worksheet, CARD_KINDS);
  await best((round) => single(base, round));
  const alone = await best((round) => single(base, round + 100));
  const nine = await best((round) => {
    for (const { change } of trials(round + 0.5)) ask(base, [change], WANTED);
  });
  const known = { answers: new Map(), records: base.known.records };
  const cold = await best(() => void workOutLight(worksheet, buildGraph(worksheet, CARD_KINDS), known));
  const edit = await best((round) => {
    const [first] = trials(round + 0.25);
    if (first) ask(base, [first.change], ["totes.full_weight"]);
  });
  const whole = (await best((round) => singles(base, round), FEW_ROUNDS)) / SINGLES;
  const made: Worker[] = [];
  const make = await workerMaker(made);
  const [one, two] = [await poolTime(base, make, 1), await poolTime(base, make, 2)];
  const [oneDoubt, twoDoubt] = [await doubtTime(base, make, 1), await doubtTime(base, make, 2)];
  for (const worker of made) await worker.terminate();
  return [
    {
      name: "128 doubtful runs of the demo through one worker, against 128 single runs of the same",
      ratio: oneDoubt / (DOUBTFUL * whole),
      atMost: 1,
      detail: `${shownTime(oneDoubt)} (3 s wanted), one run alone ${shownTime(whole)}, one season ${shownTime(alone)}`,
    },
    {
      name: "the same through two workers against one",
      ratio: twoDoubt / oneDoubt,
      // No slower; a twentieth is what two clocks of one machine differ by.
      atMost: 1.05,
      detail: `${shownTime(twoDoubt)}, one ${shownTime(oneDoubt)}`,
    },
    {
      name: "a curve's nine coarse points through one worker, against single seasons",
      ratio: one / alone,
      atMost: 10,
      detail: `${shownTime(one)} (300 ms wanted), without a worker ${shownTime(nine)}, one season ${shownTime(alone)}`,
    },
    {
      name: "the same through two workers against one",
      ratio: two / one,
      // No slower; a twentieth is what two clocks of one machine differ by.
      atMost: 1.05,
      detail: `${shownTime(two)}, one ${shownTime(one)}`,
    },
    {
      name: "an edit from the base's results, without a season, against a cold evaluation",
      ratio: edit / cold,
      atMost: 0.1,
      detail: `${shownTime(edit)}, cold ${shownTime(cold)}`,
    },
  ];
}
