// Pages that journeys use one after the other. A page in a process that has the program compiled already opens in about
// half the work of one in a fresh profile, so a page is wiped and lent again instead of being thrown away.

import type { Browser, BrowserContext, CDPSession, Page } from "playwright-core";
import { inject } from "vitest";
import { isLong } from "../tries.ts";

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
  "route",
  "setGeolocation",
  "setOffline",
] as const;

const LASTING_ON_CLOCK = ["install", "pauseAt", "setFixedTime", "setSystemTime"] as const;

/** Milliseconds that a gesture may take on a machine with much else to do. */
export const PATIENCE = 60_000;

/** What glides costs frames: pages move as for whoever wishes less of it, but for LONG=1 and where a journey looks at that. */
const MOTION = isLong ? "no-preference" : "reduce";

type Lent = Opened & {
  /** What it is now: wiped, it can become another. */
  wish: PageWish;
  /** Takes away all that was kept, and leaves it on no address. */
  readonly wipe: (wish: PageWish) => Promise<void>;
  wiped: boolean;
};

const waitingIn = new WeakMap<Browser, Lent[]>();

function waitingOf(browser: Browser): Lent[] {
  const known = waitingIn.get(browser) ?? [];
  waitingIn.set(browser, known);
  return known;
}

const isSame = (a: PageWish, b: PageWish): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Whether a page of one wish is one of the other once it is wiped: size and colors can be changed, the rest is its context's. */
const canBe = (a: PageWish, b: PageWish): boolean =>
  a.glass === b.glass && a.clock === b.clock && a.asks === b.asks;

/** Sizes that many journeys wish for: each has pages of its own, which the next may take as they are. */
export const PHONE = { width: 390, height: 844 };
export const DESK = { width: 1280, height: 800 };
const isUsual = ({ viewport, colorScheme }: PageWish): boolean =>
  colorScheme === "light" &&
  [PHONE, DESK].some(({ width, height }) => width === viewport.width && height === viewport.height);

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
  await page.emulateMedia({ media: null, colorScheme: wish.colorScheme, reducedMotion: MOTION });
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
  const context = await browser.newContext({
    viewport,
    colorScheme,
    deviceScaleFactor: glass,
    reducedMotion: MOTION,
  });
  await context.addInitScript(() => {
    // A wiped page would keep all the program's files anew at each opening, which is a third of its work. It does without,
    // as in a private window; what is kept for times without a network is tried in pages of its own (offline.test.ts).
    if (navigator.serviceWorker)
      navigator.serviceWorker.register = () => Promise.reject(new Error("not on a page that is lent"));
  });
  if (!wish.asks) await context.addInitScript(askNothing);
  return { context, ...(await listened(context)) };
}

async function made(browser: Browser, wish: PageWish): Promise<Opened> {
  const { context, page, complaints } = await fresh(browser, wish);
  if (wish.clock !== undefined) await page.clock.setSystemTime(wish.clock);
  const close = context.close.bind(context);
  const session = context.newCDPSession.bind(context);
  const sessions: CDPSession[] = [];
  context.newCDPSession = async (target) => {
    const one = await session(target);
    sessions.push(one);
    return one;
  };
  const lent: Lent = {
    wish,
    context,
    page,
    complaints,
    wipe: async (next) => {
      await wipe(page, session, next);
      lent.wish = next;
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
    // What a debugger did to the page ends with it.
    for (const one of sessions.splice(0)) await one.detach().catch(() => undefined);
    for (const other of context.pages()) if (other !== page) await other.close();
    // What was asked of its workers would be worked out to the end, for nobody.
    if (lent.wish.asks) await page.goto("about:blank");
    waitingOf(browser).push(lent);
  };
  return lent;
}

/** Takes the first of those that wait which is as asked for, by the first question that one answers to. */
function taken(browser: Browser, ...asked: readonly ((lent: Lent) => boolean)[]): Lent | undefined {
  const waiting = waitingOf(browser);
  for (const isIt of asked) {
    const at = waiting.findIndex(isIt);
    const [one] = at < 0 ? [] : waiting.splice(at, 1);
    if (!one) continue;
    one.complaints.length = 0;
    return one;
  }
  return undefined;
}

/** A page with nothing kept in it, on no address yet. */
export async function lend(browser: Browser, wish: PageWish): Promise<Opened> {
  const known = taken(
    browser,
    (lent) => lent.wiped && isSame(lent.wish, wish),
    (lent) => isSame(lent.wish, wish),
    // The program is compiled there, which is most of what a new one costs.
    (lent) => (lent.wiped || !isUsual(wish)) && canBe(lent.wish, wish),
  );
  if (!known) return made(browser, wish);
  if (!known.wiped || !isSame(known.wish, wish)) await known.wipe(wish);
  known.wiped = false;
  return known;
}

/** A page as the last journey left it, where it can be put back to how it opened; else null. */
export async function lendUsed(
  browser: Browser,
  wish: PageWish,
  putBack: (page: Page) => Promise<boolean>,
): Promise<Opened | null> {
  const known = taken(browser, (lent) => !lent.wiped && isSame(lent.wish, wish));
  if (!known) return null;
  if (await putBack(known.page)) return known;
  await known.wipe(wish);
  waitingOf(browser).push(known);
  return null;
}
