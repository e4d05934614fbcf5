// A page goes on from what another tab kept of the same worksheet, as long as nothing was changed here since.

import type { Worksheet } from "../document/worksheet.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { Saver } from "../storage/saver.ts";
import type { PageShared } from "./page-shared.ts";

type Follower = {
  readonly shared: Pick<PageShared, "shelf" | "otherTabs" | "recordsOf">;
  readonly saver: Pick<Saver, "isIdle" | "place" | "follow">;
  readonly records: Map<string, DailyRecord>;
  readonly takeOver: (worksheet: Worksheet) => void;
};

/** @returns ends the following */
export function followOtherTabs({ shared, saver, records, takeOver }: Follower): () => void {
  const isBehind = (id: string, revision: number): boolean =>
    saver.isIdle() && id === saver.place().id && revision > saver.place().revision;
  const follow = async (id: string, told: number): Promise<void> => {
    if (!isBehind(id, told)) return;
    const opened = await shared.shelf.open(id, Date.now());
    if (!opened.ok || opened.value.state !== "opened" || opened.value.sheet.readOnly) return;
    const { worksheet, revision } = opened.value.sheet;
    const named = await shared.recordsOf(worksheet);
    // Something may have been changed here while that was read.
    if (!isBehind(id, revision)) return;
    for (const record of named) records.set(record.key, record);
    saver.follow(revision);
    takeOver(worksheet);
  };
  return shared.otherTabs.listen(({ id, revision }) => void follow(id, revision));
}
