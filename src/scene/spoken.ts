// The drawing in words, for those who cannot see it: a sentence a part, in the order in which water and power flow.

import { wordIn } from "../graph/readers.ts";
import { showQuantity } from "../units/show.ts";
import { type Water, waterWords } from "./day-water.ts";
import type { DrawnLine, DrawnTank, Part, Place } from "./place.ts";
import type { SceneInput } from "./read-place.ts";
import { humpOf } from "./route.ts";

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

/** What its kind says of it: its title, and the titles of what it is linked to. */
function toldOf(tell: Tell, part: Part): string {
  const card = tell.asked.cards.find(({ id }) => id === part.id);
  const said = tell.asked.kinds[card?.kind ?? ""]?.drawn?.spoken ?? "{title}";
  const filled = said.replace(/\{([a-z_]+)(?:\|([^}]*))?\}/g, (_, row: string, nothing = "") =>
    row === "title" ? part.title : titleOf(tell, wordIn(tell.asked.result(`${part.id}.${row}`)), nothing),
  );
  return `${filled}${facts(part)}`;
}

/** Every part in a sentence. */
export function spoken(tell: Tell): readonly Spoken[] {
  const { place } = tell;
  const say = <Each extends Part>(parts: readonly Each[], text: (part: Each) => string): readonly Spoken[] =>
    parts.map((part) => ({ id: part.id, text: text(part) }));
  const told = (part: Part): string => toldOf(tell, part);
  return [
    ...say(place.roofs, told),
    ...say(place.tanks, (tank) => tankText(tell, tank)),
    ...say(place.tees, (tee) => `${tee.title}, a joint at ${height(tell, tee.height)}${facts(tee)}`),
    ...say(place.lines, (line) => lineText(tell, line)),
    ...say(place.draws, told),
    ...say(place.deliveries, (delivery) => {
      const beds = delivery.waters.map((id) => titleOf(tell, id, "a bed")).join(", ");
      const from = titleOf(tell, delivery.from, "no tank");
      return `${delivery.title} in ${from} waters ${beds || "no bed"}${facts(delivery)}`;
    }),
    ...say(place.carries, told),
    ...say(place.batteries, told),
    ...say(place.panels, told),
    ...say(place.things, told),
    ...say(
      place.beds,
      (bed) => `${bed.title}, ${bed.covered ? "under cover" : "under open sky"}${facts(bed)}`,
    ),
  ];
}
