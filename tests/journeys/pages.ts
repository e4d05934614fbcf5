// Pages that journeys use one after the other. A page in a process that has the program compiled already opens in about
// half the work of one in a fresh profile, so a page is wiped and lent again instead of being thrown away.

import type { Browser, BrowserContext, Page } from "playwright-core";
import { inject } from "vitest";

export type PageWish = {
  readonly viewport: { readonly width: number; readonly height: number };
  readonly colorScheme: "light" | "dark";
  /** Device pixels to each of the page's, along a side. */
  readonly glass: number;
  /** A moment at which the page's clock begins, as ISO text; none for what the machine's says. */
  readonly clock?: string;
};

export type Opened = {
  /** Closing it gives the page back. */
  readonly context: BrowserContext;
  readonly page: Page;
  /** What the page complained of: errors and reports of the policy. */
  readonly complaints: string[];
};

/** What leaves something behind that no wiping takes away: a page to which it was done is not lent again. */
const LASTING_ON_PAGE = [
  "addInitScript",
  "exposeBinding",
  "exposeFunction",
  "on",
  "route",
  "setExtraHTTPHeaders",
] as const;
const LASTING_ON_CONTEXT = [
  "addCookies",
  "addInitScript",
  "grantPermissions",
  "newCDPSession",
  "newPage",
  "route",
  "setGeolocation",
  "setOffline",
] as const;

const LASTING_ON_CLOCK = ["install", "pauseAt", "setFixedTime", "setSystemTime"] as const;

/** Milliseconds that a gesture may take on a machine with much else to do. */
export const PATIENCE = 60_000;

const waiting = new Map<string, Opened[]>();

/** Calls `told` before any of these methods runs. */
function watch(thing: object, methods: readonly string[], told: () => void): void {
  const open = thing as Record<string, (...given: unknown[]) => unknown>;
  for (const name of methods) {
    const usual = open[name];
    if (!usual) throw new Error(`No method ${name} is there to be watched.`);
    open[name] = (...given) => {
      told();
      return usual.apply(thing, given);
    };
  }
}

/** Leaves what is open, so that nothing writes any more, takes away all that was kept, and has size and colors as wished. */
async function wipe(page: Page, session: BrowserContext["newCDPSession"], wish: PageWish): Promise<void> {
  await page.goto("about:blank");
  const { width, height } = page.viewportSize() ?? { width: 0, height: 0 };
  if (width !== wish.viewport.width || height !== wish.viewport.height)
    await page.setViewportSize(wish.viewport);
  await page.emulateMedia({ media: null, colorScheme: wish.colorScheme });
  const devtools = await session(page);
  for (const address of [inject("url"), inject("brief")])
    await devtools.send("Storage.clearDataForOrigin", {
      origin: new URL(address).origin,
      storageTypes: "all",
    });
  await devtools.detach();
}

async function fresh(browser: Browser, wish: PageWish): Promise<Opened> {
  const { viewport, colorScheme, glass } = wish;
  const context = await browser.newContext({ viewport, colorScheme, deviceScaleFactor: glass });
  await context.addInitScript(() => {
    // A wiped page would keep all the program's files anew at each opening, which is a third of its work. It does without,
    // as in a private window; what is kept for times without a network is tried in pages of its own (offline.test.ts).
    if (navigator.serviceWorker)
      navigator.serviceWorker.register = () => Promise.reject(new Error("not on a page that is lent"));
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
  });
  await page.addInitScript(() => {
    document.addEventListener("securitypolicyviolation", (event) => {
      console.error(`policy: ${event.violatedDirective} ${event.blockedURI}`);
    });
  });
  return { context, page, complaints };
}

/** A page with nothing kept in it, on no address yet. */
export async function lend(browser: Browser, wish: PageWish): Promise<Opened> {
  const key = JSON.stringify(wish);
  const known = waiting.get(key)?.pop();
  if (known) {
    known.complaints.length = 0;
    return known;
  }
  const lent = await fresh(browser, wish);
  const { context, page } = lent;
  if (wish.clock !== undefined) await page.clock.setSystemTime(wish.clock);
  const close = context.close.bind(context);
  const session = context.newCDPSession.bind(context);
  let spent = false;
  const spend = (): void => {
    spent = true;
  };
  watch(page, LASTING_ON_PAGE, spend);
  watch(context, LASTING_ON_CONTEXT, spend);
  watch(page.clock, LASTING_ON_CLOCK, spend);
  context.close = async () => {
    if (spent || page.isClosed()) return close();
    await wipe(page, session, wish);
    waiting.set(key, [...(waiting.get(key) ?? []), lent]);
  };
  return lent;
}
