// The tools in the line at the head of the page: as many as fit, the others in its menu.

import { createEffect, createMemo, createSignal, For, type JSX, on, onCleanup, Show } from "solid-js";
import { isBare } from "../../kinds/kind.ts";
import { beginAnew } from "../begin/beginning.ts";
import { showBeside, showInTime } from "../beside/show.ts";
import { Moved } from "../hand/Moved.tsx";
import { useSheet } from "../sheet.ts";
import { print } from "./paper.ts";
import { createRoving } from "./roving.ts";

export type Opened = "worksheets" | "share" | "week" | null;

const TURNS = {
  Undo: "M8 4 3 9l5 5M3 9h11a6 6 0 0 1 0 12h-4",
  Redo: "M16 4l5 5-5 5M21 9H10a6 6 0 0 0 0 12h4",
} as const;

/** Where a tool stands: in the line from that width of the window on, else in the menu [px]. */
type Place = { readonly tabindex: 0 | -1; readonly inMenu: boolean };

type Tool = {
  readonly name: string;
  readonly from: number;
  readonly offered?: () => boolean;
  readonly view: (place: Place) => JSX.Element;
};

function Turn(props: { readonly name: keyof typeof TURNS; readonly place: Place }) {
  const sheet = useSheet();
  const what = () => (props.name === "Undo" ? sheet.canUndo() : sheet.canRedo());
  return (
    <button
      type="button"
      class="tool turn"
      aria-label={props.name}
      // Never disabled: the focus would be gone with the last step.
      aria-disabled={!what()}
      title={what() ? `${props.name}: ${what()}` : props.name}
      data-stop={props.name}
      tabindex={props.place.tabindex}
      onClick={() => (props.name === "Undo" ? sheet.edit.undo() : sheet.edit.redo())}
    >
      <svg viewBox="0 0 24 24" aria-hidden="true">
        <path d={TURNS[props.name]} />
      </svg>
      <Show when={props.place.inMenu}>
        <span aria-hidden="true"> {props.name}</span>
      </Show>
    </button>
  );
}

function Plain(props: {
  readonly name: string;
  readonly place: Place;
  readonly strong?: boolean;
  readonly onPress: () => void;
}) {
  return (
    <button
      type="button"
      class="tool"
      classList={{ own: props.strong === true }}
      data-stop={props.name}
      tabindex={props.place.tabindex}
      onClick={() => props.onPress()}
    >
      {props.name}
    </button>
  );
}

const HOLD_OR_MENU = '.tools :is([data-stop="Hold"], [data-stop="Menu"])';

/** What Hold does. */
const HOLDS = "keeps these answers, to see what your changes move";

/** What moved since the answers were held, and the ways out of it: nothing that is held is let go by one press. */
function Held(props: { readonly place: Place }) {
  const says = (
    <>
      Held
      <span class="wordy">
        : <b>what moved</b>
      </span>
    </>
  );
  return (
    <Menu says={says} stop="Hold" kind="held" tabindex={props.place.tabindex}>
      <Moved always />
    </Menu>
  );
}

function Hold(props: { readonly place: Place }) {
  const sheet = useSheet();
  // Where it stood another button stands now, or where that is in the menu, the menu's.
  createEffect(
    on(sheet.held, () => queueMicrotask(() => document.querySelector<HTMLElement>(HOLD_OR_MENU)?.focus()), {
      defer: true,
    }),
  );
  return (
    <Show when={!sheet.held()} fallback={<Held place={props.place} />}>
      <button
        type="button"
        class="tool"
        title={HOLDS}
        data-stop="Hold"
        tabindex={props.place.tabindex}
        onClick={() => sheet.edit.hold()}
      >
        Hold
        <Show when={props.place.inMenu}>
          <small> {HOLDS}</small>
        </Show>
      </button>
    </Show>
  );
}

function Units(props: { readonly place: Place }) {
  const sheet = useSheet();
  return (
    <label class="tool">
      <span class={props.place.inMenu ? "" : "unseen"}>Units</span>
      <select
        data-stop="Units"
        tabindex={props.place.tabindex}
        value={sheet.worksheet().units}
        onChange={(event) => sheet.edit.units(event.currentTarget.value as "us" | "imperial" | "metric")}
      >
        <option value="us">feet and US gallons</option>
        <option value="imperial">feet and imperial gallons</option>
        <option value="metric">meters and liters</option>
      </select>
    </label>
  );
}

function createTools(onOpen: (opened: Opened) => void): readonly Tool[] {
  const sheet = useSheet();
  const plain = (name: string, from: number, onPress: () => void, more: Partial<Tool> = {}): Tool => ({
    name,
    from,
    view: (place) => <Plain name={name} place={place} onPress={onPress} />,
    ...more,
  });
  const hasWeek = () => sheet.worksheet().cards.some(({ kind }) => sheet.kinds[kind]?.views?.week);
  return [
    plain("Start my own", 1100, () => beginAnew(sheet), {
      offered: sheet.starter,
      view: (place) => <Plain name="Start my own" strong place={place} onPress={() => beginAnew(sheet)} />,
    }),
    { name: "Units", from: 1180, view: (place) => <Units place={place} /> },
    // What is held is always said, and let go of where it is said.
    { name: "Hold", from: 640, view: (place) => <Hold place={place} /> },
    {
      name: "Undo",
      from: 0,
      view: (place) => <Turn name="Undo" place={place} />,
    },
    {
      name: "Redo",
      from: 640,
      view: (place) => <Turn name="Redo" place={place} />,
    },
    plain("Side by side", 1240, () => showBeside(sheet), {
      offered: () => sheet.held() || sheet.worksheet().plans !== undefined,
    }),
    plain("At the bed", 1320, () => location.assign("#bed"), { offered: hasWeek }),
    plain("Next money", 1500, () => showInTime(sheet, "money"), {
      offered: () => !isBare(sheet.kinds, sheet.worksheet().cards),
    }),
    plain("This week", 900, () => onOpen("week"), { offered: hasWeek }),
    plain("Worksheets", 760, () => {
      sheet.keep.lookAgain();
      onOpen("worksheets");
    }),
    plain("Share", 820, () => onOpen("share")),
    plain("Print", 1140, () => void print(() => !sheet.working())),
  ];
}

function createWindowWidth() {
  const [width, setWidth] = createSignal(innerWidth);
  const look = () => {
    setWidth(innerWidth);
  };
  addEventListener("resize", look);
  onCleanup(() => removeEventListener("resize", look));
  return width;
}

function Menu(props: {
  readonly says: JSX.Element;
  readonly stop: string;
  readonly kind?: "held";
  readonly tabindex: 0 | -1;
  readonly children: JSX.Element;
}) {
  const [open, setOpen] = createSignal(false);
  let button: HTMLButtonElement | undefined;
  const close = (): void => {
    setOpen(false);
    button?.focus();
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: Escape and leaving close what the button in it opened
    <div
      class="menu"
      onFocusOut={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget as Node | null)) setOpen(false);
      }}
      onKeyDown={(event) => {
        if (event.key === "Escape" && open()) {
          event.stopPropagation();
          close();
        }
      }}
    >
      <button
        type="button"
        class="tool"
        classList={{ pill: props.kind === "held" }}
        ref={button}
        aria-expanded={open()}
        data-stop={props.stop}
        tabindex={props.tabindex}
        onClick={() => setOpen(!open())}
      >
        {props.says}
      </button>
      <Show when={open()}>
        {/* biome-ignore lint/a11y/useKeyWithClickEvents: what is pressed in it are buttons; pressing one closes it */}
        {/* biome-ignore lint/a11y/noStaticElementInteractions: the same */}
        <div
          class="menu-panel"
          classList={{ held: props.kind === "held" }}
          // Pressed, a button need not take the focus: the panel must not close before the press is through.
          onPointerDown={(event) => {
            if (!(event.target instanceof HTMLSelectElement)) event.preventDefault();
          }}
          onClick={(event) => {
            if (event.target instanceof Element && event.target.closest("button:not(.more)")) close();
          }}
        >
          {props.children}
        </div>
      </Show>
    </div>
  );
}

export function Tools(props: { readonly onOpen: (opened: Opened) => void }) {
  const sheet = useSheet();
  const tools = createTools((opened) => props.onOpen(opened));
  const width = createWindowWidth();
  const offered = createMemo(() => tools.filter(({ offered = () => true }) => offered()));
  const isInLine = ({ name, from }: Tool) => width() >= from || (name === "Hold" && sheet.held());
  const inLine = createMemo(() => offered().filter(isInLine));
  const inMenu = createMemo(() => offered().filter((tool) => !isInLine(tool)));
  const stops = () => [...inLine().map(({ name }) => name), ...(inMenu().length > 0 ? ["Menu"] : [])];
  const roving = createRoving(stops);
  return (
    <div
      class="tools"
      role="toolbar"
      aria-label="Worksheet"
      onKeyDown={roving.onKeyDown}
      onFocusIn={roving.onFocusIn}
    >
      <For each={inLine()}>
        {(tool) =>
          tool.view({
            get tabindex() {
              return roving.tabindex(tool.name);
            },
            inMenu: false,
          })
        }
      </For>
      <Show when={inMenu().length > 0}>
        <Menu says="Menu" stop="Menu" tabindex={roving.tabindex("Menu")}>
          <For each={inMenu()}>{(tool) => tool.view({ tabindex: 0, inMenu: true })}</For>
        </Menu>
      </Show>
    </div>
  );
}
