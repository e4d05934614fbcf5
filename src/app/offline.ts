// Working with no network: registers the worker that keeps the page's files, and asks before a new version takes over.

import { createSignal } from "solid-js";
import { isOneFile } from "./page-in-one-file.ts";

/** The page in one file has no script with a name of its own. */
const markInPage = (): string | undefined =>
  globalThis.document?.querySelector<HTMLMetaElement>("meta[name=build]")?.content;

/** Package version, and the mark that the build gave the program: two builds that differ never show the same. */
export const VERSION = `${import.meta.env["VITE_VERSION"]} (${/-([\w-]+)\.js/.exec(import.meta.url)?.[1] ?? markInPage() ?? "unbuilt"})`;

type Offline = {
  /** What is needed for the page to open again, to follow its version; "" while it is not known. */
  readonly opens: () => string;
  /** A new version lies here, waiting for a word. */
  readonly waiting: () => boolean;
  /** Lets the new version take over; the page opens again in it. */
  readonly update: () => void;
};

const [ready, setReady] = createSignal(false);
const [waiting, setWaiting] = createSignal<ServiceWorker | null>(null);

let asked = false;

function opens(): string {
  if (isOneFile()) return ", in one file: it opens with no network";
  if (ready()) return ", kept on this device: it opens with no network";
  return globalThis.isSecureContext === false
    ? ", over plain http and not kept on this device: it opens only while the computer that serves it runs"
    : "";
}

/** What the page may know of it. */
export const offline: Offline = {
  opens,
  waiting: () => waiting() !== null,
  update: () => {
    asked = true;
    waiting()?.postMessage({ type: "SKIP_WAITING" });
  },
};

function follow(registration: ServiceWorkerRegistration): void {
  const look = (): void => {
    setReady(registration.active !== null);
    if (registration.waiting && registration.active) setWaiting(registration.waiting);
  };
  const follows = (): void => registration.installing?.addEventListener("statechange", look);
  look();
  // The first worker may be on its way already when this is reached.
  follows();
  registration.addEventListener("updatefound", follows);
  void navigator.serviceWorker.ready.then(look);
  // A page that stays open for days asks again whenever it comes back into view.
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") registration.update().catch(() => undefined);
  });
}

/** Starts keeping the page for times without a network; a browser that cannot goes on without. */
export async function keepForOffline(): Promise<void> {
  if (!import.meta.env.PROD || isOneFile() || !("serviceWorker" in navigator)) return;
  navigator.serviceWorker.addEventListener("controllerchange", () => {
    if (asked) location.reload();
  });
  try {
    follow(await navigator.serviceWorker.register(new URL("sw.js", document.baseURI)));
  } catch {
    // A private window or a file of its own: the page works, and is not kept.
  }
}
