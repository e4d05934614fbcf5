// What a bed's card says in words: how long its crops stand, what they are taken from, and how practice compares.

import { numberOf, numberOrNull } from "../../graph/readers.ts";
import type { Model, ModelInput, Outputs } from "../../graph/types.ts";
import { calendarDate, dayInYear } from "../../units/calendar.ts";
import { SHORT_MONTHS } from "../../units/calendar-names.ts";
import { cropAnalogy, cropLabel, cropPart, type Planted } from "./crops.ts";
import { crowding } from "./crowding.ts";

const SOME_YEAR = 2001;

const dayText = (day: number): string => {
  const date = calendarDate(day);
  return `${SHORT_MONTHS[date.month - 1]} ${date.day}`;
};

const contentsOf = (input: ModelInput): readonly Planted[] => {
  const list = input.values["contents"];
  return Array.isArray(list) ? (list as readonly Planted[]) : [];
};

/** "Tomato: May 15 to Oct 6, in stages of 30, 40, 45 and 30 days". */
function standing(content: Planted): string {
  const label = `${cropLabel(content.crop)}${content.trained ? ", on a trellis" : ""}`;
  const part = cropPart(content, "none", { start: 0, end: 0 });
  const first = dayInYear(content.planted, SOME_YEAR);
  if ("reason" in part) return `${label}: ${part.reason}`;
  if (first === null) return label;
  const [initial, development, middle, late] = part.stages;
  const last = first + initial + development + middle + late - 1;
  return `${label}: ${dayText(first)} to ${dayText(last)}, in stages of ${initial}, ${development}, ${middle} and ${late} days`;
}

function analogies(contents: readonly Planted[]): readonly string[] {
  return [...new Set(contents.map(({ crop }) => crop))].flatMap((crop) => {
    const analogy = cropAnalogy(crop);
    return analogy === null ? [] : [`${cropLabel(crop)}: ${analogy.replace(/\.$/, "")}`];
  });
}

/** The most of the bed that is taken at once, and since when. */
function crowdOf(contents: readonly Planted[]): Outputs {
  const crowd = crowding(contents);
  if (!crowd) return { most_share: { value: 0 }, crowded_from: { none: "nothing grows in it" } };
  return { most_share: { value: crowd.share }, crowded_from: { value: dayText(crowd.day) } };
}

/** How long each crop stands, what is taken from another, and whether they have room beside each other. */
export const cropsSaid: Model = {
  name: "crops_said",
  takes: ["contents"],
  outputs: ["growing", "taken_from", "most_share", "crowded_from"],
  run: (input) => {
    const contents = contentsOf(input);
    const taken = analogies(contents);
    return {
      ...crowdOf(contents),
      growing:
        contents.length > 0 ? { value: contents.map(standing).join("; ") } : { none: "nothing grows in it" },
      taken_from:
        taken.length > 0 ? { value: taken.join("; ") } : { none: "all its crops are in the tables" },
    };
  },
};

/** Within a tenth either way counts as about the same. */
const ABOUT = 0.1;

function words(given: number, good: number): string {
  const ratio = given / good;
  if (Math.abs(ratio - 1) <= ABOUT) return "about a good watering";
  return ratio < 1
    ? "less than a good watering of {watering_volume}"
    : "more than a good watering of {watering_volume}: unless the soil is drier than that, the rest sinks away";
}

function comparison(input: ModelInput): Outputs {
  const good = numberOrNull(input, "watering_volume");
  const need = numberOrNull(input, "peak_day_need");
  if (good === null || need === null || !(good > 0) || !(need > 0))
    return { usual_compared: { none: "it needs nothing on a peak day" } };
  const given = numberOf(input, "usual_volume");
  return {
    usual_compared: {
      value: `{usual_volume} is ${words(given, good)}; on peak days it lasts {usual_lasts}.`,
    },
  };
}

/** What is usually given, beside what is worked out. */
export const compare: Model = {
  name: "compare",
  takes: ["usual_volume", "watering_volume", "peak_day_need", "usual_lasts"],
  optional: ["watering_volume", "peak_day_need", "usual_lasts"],
  outputs: ["usual_compared"],
  run: comparison,
};
