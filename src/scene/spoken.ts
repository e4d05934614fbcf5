// The drawing in words, for those who cannot see it: a sentence a part, in the order in which water and power flow.

import { showQuantity } from "../units/show.ts";
import { type Water, waterWords } from "./day-water.ts";
import { humpOf } from "./draw-hoses.ts";
import type { DrawnLine, DrawnTank, Part, Place } from "./place.ts";
import type { SceneInput } from "./read-place.ts";

export type Spoken = { readonly id: string; readonly text: string };

type Tell = {
  readonly asked: SceneInput;
  readonly place: Place;
  readonly waters: ReadonlyMap<string, Water>;
  /** What height zero is, in the user's words. */
  readonly datum: string;
};

const height = (tell: Tell, metres: number): string => showQuantity(metres, "height", tell.asked.options);

const titleOf = (tell: Tell, id: string | null, nothing: string): string =>
  tell.asked.cards.find((card) => card.id === id)?.title ?? nothing;

/** The words beside a part, without its name and without those that change with the day. */
function facts(part: Part): string {
  const words = part.words.filter((one) => !one.bold && one.live === undefined && one.tone !== "trouble");
  const short = part.words.filter((one) => one.tone === "trouble" && one.text !== part.trouble);
  const said = [...words, ...short].map((one) => one.text);
  const trouble = part.trouble === null ? "" : ` Trouble: ${part.trouble.replace(/[.]$/, "")}.`;
  return `${["", ...said].join("; ")}.${trouble}`;
}

function tankText(tell: Tell, tank: DrawnTank): string {
  const floor = `${height(tell, Math.abs(tank.ground + tank.stand))} ${tank.ground + tank.stand < 0 ? "below" : "above"} ${tell.datum}`;
  const stand = tank.stand > 0 ? `, on a stand of ${height(tell, tank.stand)}` : "";
  const water = tell.waters.get(tank.id);
  const held =
    water && tank.vessel
      ? `, holds ${waterWords(water.volume, tank.vessel.volume, tell.asked.options).long}`
      : "";
  const overflow =
    tank.overflowsTo === null ? "" : `, overflows to ${titleOf(tell, tank.overflowsTo, "the ground")}`;
  return `${tank.title}, its floor ${floor}${stand}${held}${overflow}${facts(tank)}`;
}

function lineText(tell: Tell, line: DrawnLine): string {
  const ends = `from ${titleOf(tell, line.from, "no tank")} to ${titleOf(tell, line.to, "no tank")}`;
  const drop =
    line.startHeight !== null && line.endHeight !== null
      ? `, from ${height(tell, line.startHeight)} to ${height(tell, line.endHeight)}`
      : "";
  const hump = humpOf(line);
  const over = hump
    ? `, over a hump of ${height(tell, hump[1])} at ${showQuantity(hump[0], "distance", tell.asked.options)}`
    : "";
  return `${line.title} runs ${ends}${drop}${over}${facts(line)}`;
}

/** Every part in a sentence. */
export function spoken(tell: Tell): readonly Spoken[] {
  const { place } = tell;
  const say = <Each extends Part>(parts: readonly Each[], text: (part: Each) => string): readonly Spoken[] =>
    parts.map((part) => ({ id: part.id, text: text(part) }));
  const at = (id: string | null): string => titleOf(tell, id, "no tank");
  return [
    ...say(place.roofs, (roof) => `${roof.title} drains to ${at(roof.drainsTo)}${facts(roof)}`),
    ...say(place.tanks, (tank) => tankText(tell, tank)),
    ...say(place.tees, (tee) => `${tee.title}, a joint at ${height(tell, tee.height)}${facts(tee)}`),
    ...say(place.lines, (line) => lineText(tell, line)),
    ...say(place.draws, (draw) => `${draw.title} from ${at(draw.from)}${facts(draw)}`),
    ...say(place.deliveries, (delivery) => {
      const beds = delivery.waters.map((id) => titleOf(tell, id, "a bed")).join(", ");
      return `${delivery.title} in ${at(delivery.from)} waters ${beds || "no bed"}${facts(delivery)}`;
    }),
    ...say(place.carries, (carry) => `${carry.title}, filled at ${at(carry.from)}${facts(carry)}`),
    ...say(place.batteries, (battery) => `${battery.title}${facts(battery)}`),
    ...say(
      place.panels,
      (panel) => `${panel.title} charges ${titleOf(tell, panel.charges, "no battery")}${facts(panel)}`,
    ),
    ...say(
      place.beds,
      (bed) => `${bed.title}, ${bed.covered ? "under cover" : "under open sky"}${facts(bed)}`,
    ),
  ];
}
