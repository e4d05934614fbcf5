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
  /**
   * Whether its workers answer what is asked about a whole worksheet: curves, what gives out, how long it lasts. Who looks at
   * none of it does without, but for LONG=1: for one number in hand the season is run dozens of times.
   */
  readonly asks?: boolean;
};

export type Opened = {
  /** Closing it gives the page back. */
  readonly context: BrowserContext;
  readonly page: Page;
  /** What the page complained of: errors and reports of the policy. */
  readonly complaints: string[];
};

/**
 * What leaves something behind that no wiping takes away: a page to which it was done is not lent again. Other pages of the same
 * context are closed with it.
 */
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
  "route",
  "setGeolocation",
  "setOffline",
] as const;

const LASTING_ON_CLOCK = ["install", "pauseAt", "setFixedTime", "setSystemTime"] as const;

/** Milliseconds that a gesture may take on a machine with much else to do. */
export const PATIENCE = 60_000;

type Lent = Opened & {
  /** Takes away all that was kept, and leaves it on no address. */
  readonly wipe: () => Promise<void>;
  wiped: boolean;
};

const waitingIn = new WeakMap<Browser, Map<string, Lent[]>>();

function waitingOf(browser: Browser): Map<string, Lent[]> {
  const known = waitingIn.get(browser) ?? new Map<string, Lent[]>();
  waitingIn.set(browser, known);
  return known;
}

/** A worker that never answers, in place of those that are asked about a whole worksheet. */
export function askNothing(): void {
  globalThis.Worker = new Proxy(globalThis.Worker, {
    construct: (real, [url, options]: [string | URL, WorkerOptions?]) =>
      String(url).includes("asking")
        ? Object.assign(new EventTarget(), { postMessage: () => undefined, terminate: () => undefined })
        : new real(url, options),
  });
}

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

/** A page of its own, with all that it complains of: errors, reports of the policy, what it could not fetch. */
export async function listened(context: BrowserContext): Promise<{ page: Page; complaints: string[] }> {
  context.setDefaultTimeout(PATIENCE);
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
  return { page, complaints };
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
  if (!wish.asks) await context.addInitScript(askNothing);
  return { context, ...(await listened(context)) };
}

async function made(browser: Browser, wish: PageWish, key: string): Promise<Opened> {
  const { context, page, complaints } = await fresh(browser, wish);
  if (wish.clock !== undefined) await page.clock.setSystemTime(wish.clock);
  const close = context.close.bind(context);
  const session = context.newCDPSession.bind(context);
  const lent: Lent = {
    context,
    page,
    complaints,
    wipe: async () => {
      await wipe(page, session, wish);
      lent.wiped = true;
    },
    wiped: false,
  };
  let spent = false;
  const spend = (): void => {
    spent = true;
  };
  watch(page, LASTING_ON_PAGE, spend);
  watch(context, LASTING_ON_CONTEXT, spend);
  watch(page.clock, LASTING_ON_CLOCK, spend);
  context.close = async () => {
    if (spent || page.isClosed()) return close();
    for (const other of context.pages()) if (other !== page) await other.close();
    const waiting = waitingOf(browser);
    waiting.set(key, [...(waiting.get(key) ?? []), lent]);
  };
  return lent;
}

/** The one that waits for such a wish: rather one that is as wished. */
function taken(browser: Browser, key: string, wiped: boolean): Lent | undefined {
  const waiting = waitingOf(browser);
  const all = waiting.get(key) ?? [];
  const one = all.find((lent) => lent.wiped === wiped) ?? all[0];
  waiting.set(
    key,
    all.filter((lent) => lent !== one),
  );
  if (one) one.complaints.length = 0;
  return one;
}

/** A page with nothing kept in it, on no address yet. */
export async function lend(browser: Browser, wish: PageWish): Promise<Opened> {
  const key = JSON.stringify(wish);
  const known = taken(browser, key, true);
  if (!known) return made(browser, wish, key);
  if (!known.wiped) await known.wipe();
  known.wiped = false;
  return known;
}

/** A page as the last journey left it, where it can be put back to how it opened; else null. */
export async function lendUsed(
  browser: Browser,
  wish: PageWish,
  putBack: (page: Page) => Promise<boolean>,
): Promise<Opened | null> {
  const key = JSON.stringify(wish);
  const known = taken(browser, key, false);
  if (!known) return null;
  const isBack = !known.wiped && (await putBack(known.page));
  if (isBack) return known;
  if (!known.wiped) await known.wipe();
  const waiting = waitingOf(browser);
  waiting.set(key, [...(waiting.get(key) ?? []), known]);
  return null;
}
