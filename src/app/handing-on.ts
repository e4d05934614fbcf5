// Handing the open worksheet on: as a link, as a file, as the page in one file, by the device's own way.

import { setWorksheet } from "../document/edits.ts";
import { recordNames } from "../document/record-names.ts";
import type { Worksheet } from "../document/worksheet.ts";
import { worksheetToFileText } from "../storage/file-text.ts";
import type { Keeping, LinkWish, ShareMade } from "../ui/dialogs/keeping.ts";
import { today } from "./clock.ts";
import { download, fileStem, passOn } from "./download.ts";
import { reachOf } from "./reach.ts";
import type { Session } from "./session.ts";

/** The worksheet as it goes to somebody else, dated today. */
const outgoing = (session: Session): Worksheet => setWorksheet(session.identified(), { made_on: today() });

async function link(
  session: Session,
  { exactPlace, withoutRecord, withNotes }: LinkWish,
): Promise<ShareMade> {
  const worksheet = outgoing(session);
  const own = session.engine.records.get(recordNames(worksheet)[0] ?? "");
  const [{ worksheetToLink }, { normalsOf }] = await Promise.all([
    import("../storage/link.ts"),
    import("./normals-of.ts"),
  ]);
  const made = await worksheetToLink(worksheet, {
    records: session.engine.records,
    normals: own ? normalsOf(own, worksheet.units) : null,
    withoutRecords: withoutRecord,
    exactPlace,
    notes: withNotes,
  });
  if (!made.ok) return made;
  const { fragment, hasRecord, leftOut } = made;
  return { ok: true, address: `${location.href.replace(/[?#].*$/, "")}#${fragment}`, hasRecord, leftOut };
}

const NO_PROGRAM =
  "The page could not be fetched to be put into one file. Look whether there is a network, and try again.";

async function savePage(session: Session): Promise<string> {
  const worksheet = outgoing(session);
  const { pageWith } = await import("./page-in-one-file.ts");
  const page = await pageWith(worksheetToFileText(worksheet, session.engine.records));
  if (page === null) return NO_PROGRAM;
  const name = `${fileStem(worksheet.title)}.html`;
  download(name, page, "text/html");
  return `Saved as ${name} (${(page.length / 1e6).toFixed(1)} MB). A double click opens it.`;
}

type HandingOn = Pick<Keeping, "link" | "reach" | "savePage" | "passOn" | "passFileOn" | "copyText">;

/** What the page can do to hand the open worksheet on. */
export function handingOn(session: Session): HandingOn {
  const canShare = typeof navigator.share === "function";
  const file = (): File => {
    const worksheet = outgoing(session);
    const text = worksheetToFileText(worksheet, session.engine.records);
    return new File([text], `${fileStem(worksheet.title)}.json`, { type: "application/json" });
  };
  const canShareFiles = canShare && navigator.canShare?.({ files: [new File([""], "a.json")] });
  return {
    link: (wish) => link(session, wish),
    reach: reachOf(location),
    savePage: () => savePage(session),
    passOn: canShare ? (address) => passOn({ title: session.worksheet().title, url: address }) : null,
    passFileOn: canShareFiles ? () => passOn({ title: session.worksheet().title, files: [file()] }) : null,
    copyText: async (text) => {
      try {
        await navigator.clipboard.writeText(text);
        return true;
      } catch {
        return false;
      }
    },
  };
}
