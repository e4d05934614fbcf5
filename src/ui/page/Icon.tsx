// A tiny drawing of each kind of thing, in one ink line.

import { Show } from "solid-js";

const DRAWINGS: Readonly<
  Record<string, { readonly ink: string; readonly tone?: string; readonly color?: string }>
> = {
  site: { ink: "M3 20h18M6 20l5-9 4 5 2-3 3 7" },
  weather: {
    ink: "M7 13a4 4 0 0 1 .6-8 5 5 0 0 1 9.3 1.4A3.4 3.4 0 0 1 17 13z",
    tone: "M8 16l-1 4M12 16l-1 4M16 16l-1 4",
    color: "var(--water)",
  },
  roof: { ink: "M3 11 20 5M6 10v10M17 6.5V20", tone: "M20 5v7", color: "var(--water)" },
  tank: { ink: "M5 4v16h14V4", tone: "M5 10h14", color: "var(--water)" },
  line: { ink: "M3 5c5 0 4 12 9 12s4-4 9-4", tone: "M3 5 21 12", color: "var(--water)" },
  tee: { ink: "M3 8h18M12 8v12", tone: "M9 8a3 3 0 0 0 6 0", color: "var(--water)" },
  filter: { ink: "M4 5h16l-6 7v8l-4-3v-5z", tone: "M8 8h8", color: "var(--water)" },
  draw: { ink: "M4 9h7V6h5v3h1v4M4 9v3h9", tone: "M17 16v4", color: "var(--water)" },
  delivery: {
    ink: "M4 20v-6h6v6zM7 14c0-9 12-9 12-1v6",
    tone: "M19 19l-2 2M19 19l2 2",
    color: "var(--power)",
  },
  pump: {
    ink: "M6 20V10h10v10zM4 20h14M9 10V4h9",
    tone: "M11 13v4M9 15h4",
    color: "var(--power)",
  },
  wire: {
    ink: "M3 6h3c6 0 4 10 10 10h5M3 10c6 0 4 10 10 10h8",
    tone: "M14 4h6v4h-6z",
    color: "var(--power)",
  },
  panel: { ink: "M3 18 7 6h14l-4 12zM5 12h14M12 6 9 18", tone: "M17 2l1-1M21 3l-2 1", color: "var(--power)" },
  battery: { ink: "M3 8h18v12H3zM7 8V5M17 8V5", tone: "M12 11v6M9 14h6", color: "var(--power)" },
  carry: { ink: "M5 10h10l-1 10H6zM15 13l5-4M7 10a3 3 0 0 1 6 0" },
  bed: { ink: "M3 14h18v6H3z", tone: "M7 14V8M12 14V6M17 14V8", color: "var(--growth)" },
  season: { ink: "M4 6h16v14H4zM4 10h16M8 3v4M16 3v4" },
  cost: { ink: "M12 4v16M16 7c-2-2-8-1-7 2s7 2 7 5-6 4-8 1" },
  own: { ink: "M4 7h16M4 12h16M4 17h10" },
};

export function Icon(props: { readonly kind: string }) {
  const drawing = () => DRAWINGS[props.kind];
  return (
    <svg
      viewBox="0 0 24 24"
      fill="none"
      stroke="currentColor"
      stroke-width="2"
      stroke-linecap="round"
      stroke-linejoin="round"
      aria-hidden="true"
    >
      <Show when={drawing()}>
        {(shape) => (
          <>
            <path d={shape().ink} />
            <path d={shape().tone ?? ""} stroke={shape().color ?? "currentColor"} />
          </>
        )}
      </Show>
    </svg>
  );
}
