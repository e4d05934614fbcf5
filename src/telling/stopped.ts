// The lead where there is nothing yet, or where something stops the water: what it is, and the one thing to do about it.

import { causeOf, isReady } from "../graph/readers.ts";
import { idsOf } from "../network/network.ts";
import {
  type Act,
  type Asked,
  isMadeUp,
  networkOfSheet,
  type Piece,
  reasonOf,
  type Sentence,
  titleOf,
  value,
  withRow,
} from "./asked.ts";
import { fullTanks } from "./lead.ts";
import { leftOut, takersOf, whyOut, withoutParts } from "./left-out.ts";

const WORST = "season.worst_season_days_short";

/** Whether nothing stands on the sheet that catches, holds, moves or drinks water, or drives what does. */
const isEmpty = (asked: Asked): boolean =>
  isReady(asked.result("season.network")) &&
  networkOfSheet(asked).nodes.length === 0 &&
  withRow(asked, "refill_time").length === 0;

/** Nothing yet: what the sky brings is all that can be said. */
export function emptySheet(asked: Asked): readonly Sentence[] | null {
  if (!isEmpty(asked)) return null;
  const rain = "weather.mean_yearly_rain";
  const why = reasonOf(asked.result(rain));
  const pieces: readonly Piece[] = why
    ? [`What the sky brings cannot be said: ${why}.`]
    : [
        isMadeUp(asked)
          ? "Until you bring in your own rain, a usual year is taken to bring "
          : "A usual year brings ",
        value(rain, "water"),
        " of rain.",
      ];
  return [
    {
      id: "empty",
      lead: true,
      pieces: ["Nothing is here yet. Say what there is, from the roof down."],
      acts: [{ does: "lay_out" }, { does: "open_file" }],
    },
    { id: "sky", lead: false, pieces },
  ];
}

/** Cards that the whole rests on: what fails in them is mended in the weather. */
const WHOLE = ["season", "weather"];

/** Wrong with what was worked out, not with what was given. */
const WORKED_OUT = ["model", "not_finite", "formula", "cycle"];

/** A number that is missing is asked for, one that was given wrong is to be changed; where neither is to blame the part is shown. */
function actAt(asked: Asked, at: string): Act {
  const [card = ""] = at.split(".");
  if (WHOLE.includes(card)) return { does: "go_to", at: "weather" };
  const result = asked.result(at);
  if (at === card || result?.state === "ready") return { does: "go_to", at };
  if (result?.state !== "failed" || result.problem.code === "missing") return { does: "ask_for", at };
  const { by, code } = result.problem;
  if (by !== undefined) return { does: "change", at: by };
  return { does: WORKED_OUT.includes(code) ? "go_to" : "change", at };
}

/** What is wrong with one number does not say whose it is: the part is named before it. */
function whoseOf(asked: Asked, at: string): string {
  const [card = ""] = at.split(".");
  return WHOLE.includes(card) ? ": " : `. ${titleOf(asked, card)}: `;
}

/** Why nothing at all can be said of beds and other uses. */
function unrun(asked: Asked): Sentence | null {
  for (const id of ["season.plan", "season.seasons"]) {
    const result = asked.result(id);
    const why =
      result?.state === "failed" ? result.problem.text : result?.state === "none" ? result.reason : null;
    if (why === null) continue;
    const at = causeOf(result);
    const acts = at === null ? [] : [actAt(asked, at)];
    const whose = result?.state === "failed" && at !== null ? whoseOf(asked, at) : ": ";
    const said = `What the beds get cannot be said yet${whose}${why.replace(/\.$/, "")}.`;
    return { id: "stopped", lead: true, pieces: [said], acts };
  }
  return null;
}

/** What is left out of a season as the lead, where nothing is left to answer for or nothing else can be said. */
function stoppedBy(asked: Asked): Sentence | null {
  const why = whyOut(asked);
  const { out } = takersOf(asked);
  if (!why || out.length === 0) return null;
  return { id: "stopped", lead: true, pieces: [`${why.said}.`], acts: [actAt(asked, why.at)] };
}

/** What can be done about what an answer is without; nothing where it holds for all. */
export function mending(asked: Asked): readonly Act[] {
  const why = whyOut(asked);
  return why ? [actAt(asked, why.at)] : [];
}

/** The run is there, and says nothing of the beds: no crop, or no bed at all. */
function nothingAsked(asked: Asked): Sentence | null {
  const network = networkOfSheet(asked);
  const hasBeds = idsOf(network, "bed").length > 0;
  if (!hasBeds && idsOf(network, "draw").length > 0) return null;
  if (!hasBeds) {
    const said = "Nothing is watered yet: there is no bed and no other use.";
    return { id: "stopped", lead: true, pieces: [said] };
  }
  const why = reasonOf(asked.result(WORST));
  if (why === null) return null;
  return { id: "stopped", lead: true, pieces: [`Whether beds go short cannot be said: ${why}.`] };
}

/** What stops the water, as the lead; null where some beds, or without them other uses, are in the run and answered for. */
export function stopped(asked: Asked): Sentence | null {
  const { all, out } = takersOf(asked);
  const other = unrun(asked) ?? nothingAsked(asked);
  return out.length === all.length || other ? (stoppedBy(asked) ?? other) : null;
}

/** What can be said in spite of what is missing. */
export function inSpite(asked: Asked): readonly Sentence[] {
  const pieces = fullTanks(asked, {});
  // The lead has said the first of them.
  const without = leftOut(asked) > (whyOut(asked)?.named ?? 0) ? withoutParts(asked) : null;
  return [
    ...(pieces.length > 0 ? [{ id: "storage", lead: false, pieces }] : []),
    ...(without ? [without] : []),
  ];
}

/** What the button says that does it. */
export function actSaid({ does }: Act, label: string): string {
  if (does === "lay_out") return "What is there?";
  if (does === "open_file") return "Open a file";
  const said = { ask_for: "Give", change: "Change", go_to: "Show" }[does];
  return `${said} it: ${label} ›`;
}
