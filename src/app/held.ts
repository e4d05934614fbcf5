// What is held to compare with: what has moved since, and the way back to it.

import type { Accessor } from "solid-js";
import { withNotes } from "../document/notes.ts";
import { withPlans } from "../document/plan-names.ts";
import type { Worksheet } from "../document/worksheet.ts";
import { type WhatMoved, whatMoved } from "../telling/what-moved.ts";
import type { Since } from "../ui/hand/hand.ts";
import type { ShowOptions } from "../units/show.ts";
import type { Session } from "./session.ts";

const NOTHING: WhatMoved = { answers: [], givens: [], unmoved: 0 };

export function createSince(session: Session, options: Accessor<ShowOptions>): Since {
  return {
    moved: () => {
      const held = session.held();
      return held ? whatMoved(held, session.engine.view(), options()) : NOTHING;
    },
    goBack: () => {
      const held = session.held();
      // Plans that were kept since stay, and so does what was noted.
      const back = (now: Worksheet) =>
        withPlans(withNotes(held?.typed ?? now, now.notes ?? []), now.plans ?? []);
      if (held) session.edit("Go back to what is held", back);
    },
  };
}
