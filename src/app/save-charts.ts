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

/** The paper under a drawing, as a shape: the page's policy lets no style attribute be written. */
function paper({ x, y, width, height }: DOMRect): SVGRectElement {
  const sheet = document.createElementNS("http://www.w3.org/2000/svg", "rect");
  const place = { x, y, width, height, fill: getComputedStyle(document.body).backgroundColor };
  for (const [name, value] of Object.entries(place)) sheet.setAttribute(name, String(value));
  return sheet;
}

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
  copy.prepend(paper(original.viewBox.baseVal));
  return new XMLSerializer().serializeToString(copy);
}

/** Saves each drawing and chart that is shown as a file of its own. */
export function saveCharts(stem: string): void {
  document
    .querySelectorAll<SVGSVGElement>(".drawing .paper svg, main .plot > svg, main svg[role=img]")
    .forEach((chart, at) => {
      if (chart.getBoundingClientRect().width > 0)
        download(`${stem}-chart-${at + 1}.svg`, styled(chart), "image/svg+xml");
    });
}
