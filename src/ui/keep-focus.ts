// Whoever goes by keys never loses the place: where what had the focus goes, or cannot be pressed any more, the nearest that
// is left has it.

const STOPS =
  'a[href], button, input:not([type="hidden"]), select, textarea, summary, [tabindex]:not([tabindex="-1"])';

/** What has the focus, what is around it and what could have it, as they stood when it came there. */
type Place = {
  readonly here: HTMLElement | SVGElement;
  readonly around: readonly Element[];
  readonly stops: readonly Element[];
};

const isElement = (target: unknown): target is HTMLElement | SVGElement =>
  target instanceof HTMLElement || target instanceof SVGElement;

const canHave = (element: Element): element is HTMLElement | SVGElement =>
  isElement(element) &&
  element.isConnected &&
  element.checkVisibility({ visibilityProperty: true }) &&
  !element.matches(":disabled");

function placeOf(here: HTMLElement | SVGElement): Place {
  const around: Element[] = [];
  for (let one = here.parentElement; one; one = one.parentElement) around.push(one);
  return { here, around, stops: [...document.querySelectorAll(STOPS)] };
}

/** The first stop of what came in the place of what went, but never that of the whole page. */
function freshIn(around: Element): HTMLElement | SVGElement | null {
  if (!around.closest("main > *, dialog, .top")) return null;
  return [...around.querySelectorAll(STOPS)].find(canHave) ?? null;
}

/** Where the focus goes on: after a part that went the one that is open now; else the next in what is left around it. */
function nearest({ here, around, stops }: Place): HTMLElement | SVGElement | null {
  if ([here, ...around].some((one) => one.matches("article.card") && !one.isConnected)) {
    const open = document.querySelector<HTMLElement>("article.card") ?? document.getElementById("parts");
    if (open) return open;
  }
  const at = stops.indexOf(here);
  const inOrder = [...stops.slice(at + 1), ...stops.slice(0, Math.max(0, at)).reverse()];
  for (const one of around.filter(({ isConnected }) => isConnected)) {
    const next = inOrder.find((stop) => one.contains(stop) && canHave(stop));
    if (next && canHave(next)) return next;
    const fresh = freshIn(one);
    if (fresh) return fresh;
    if (one.hasAttribute("tabindex") && canHave(one)) return one;
  }
  return null;
}

/** Keeps the focus for as long as the page stands; a finger or a mouse needs none, and no keyboard comes up under it. */
export function keepFocus(): () => void {
  let place: Place | null = null;
  let byKeys = false;
  /** What had the focus before a dialog was opened. */
  const openers = new WeakMap<Element, HTMLElement | SVGElement>();
  const isLost = (): boolean =>
    byKeys && place !== null && document.activeElement === document.body && !canHave(place.here);
  const onFocus = ({ target }: FocusEvent): void => {
    if (!isElement(target)) return;
    const dialog = target.closest("dialog");
    if (dialog && place && !dialog.contains(place.here) && !openers.has(dialog))
      openers.set(dialog, place.here);
    place = placeOf(target);
  };
  const look = (): void => {
    if (!isLost() || !place) return;
    const dialog = place.here.closest("dialog");
    const opener = dialog && !dialog.isConnected ? openers.get(dialog) : undefined;
    const next = opener && canHave(opener) ? opener : nearest(place);
    next?.focus({ preventScroll: true });
    next?.scrollIntoView({ block: "nearest" });
  };
  const onKey = (): void => {
    byKeys = true;
  };
  const onPress = (): void => {
    byKeys = false;
  };
  const changes = new MutationObserver(look);
  changes.observe(document.body, { subtree: true, childList: true, attributeFilter: ["disabled", "open"] });
  document.addEventListener("focusin", onFocus);
  document.addEventListener("keydown", onKey, true);
  document.addEventListener("pointerdown", onPress, true);
  if (isElement(document.activeElement) && document.activeElement !== document.body)
    place = placeOf(document.activeElement);
  return () => {
    changes.disconnect();
    document.removeEventListener("focusin", onFocus);
    document.removeEventListener("keydown", onKey, true);
    document.removeEventListener("pointerdown", onPress, true);
  };
}
