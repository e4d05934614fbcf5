// The drawings on the page as SVG files that look the same elsewhere: every shape carries its own style.

import { download } from "./download.ts";

const STYLES = [
  "fill",
  "fill-opacity",
  "stroke",
  "stroke-width",
  "stroke-dasharray",
  "stroke-linejoin",
  "stroke-linecap",
  "paint-order",
  "opacity",
  "font-size",
  "font-weight",
  "text-anchor",
  "display",
] as const;

function styled(original: SVGSVGElement): string {
  const copy = original.cloneNode(true) as SVGSVGElement;
  const twins = copy.querySelectorAll("*");
  original.querySelectorAll("*").forEach((element, at) => {
    const style = getComputedStyle(element);
    for (const name of STYLES) twins[at]?.setAttribute(name, style.getPropertyValue(name));
  });
  const box = original.getBoundingClientRect();
  copy.setAttribute("xmlns", "http://www.w3.org/2000/svg");
  copy.setAttribute("width", String(Math.round(box.width)));
  copy.setAttribute("height", String(Math.round(box.height)));
  copy.setAttribute("font-family", "sans-serif");
  copy.setAttribute("style", `background: ${getComputedStyle(document.body).backgroundColor}`);
  return new XMLSerializer().serializeToString(copy);
}

/** Saves each drawing and chart that is shown as a file of its own. */
export function saveCharts(stem: string): void {
  document.querySelectorAll<SVGSVGElement>("figure svg[role=img]").forEach((chart, at) => {
    if (chart.getBoundingClientRect().width > 0)
      download(`${stem}-chart-${at + 1}.svg`, styled(chart), "image/svg+xml");
  });
}
