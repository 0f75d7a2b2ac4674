/** Puts the core's drawing on the page as what it is: read as SVG, and only shapes and letters taken over. */

import { useEffect, useRef } from "preact/hooks";

const TAKEN = new Set(["svg", "g", "path", "line", "circle", "ellipse", "rect", "polygon", "polyline", "text", "tspan", "title", "desc", "defs", "clippath", "use", "marker", "pattern"]);

export function Markup({ svg, label }: { svg: string; label: string }) {
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    place.current!.replaceChildren(readDrawing(svg, label));
  }, [svg, label]);
  return <div class="drawn" ref={place} />;
}

export function readDrawing(svg: string, label: string): Node {
  const root = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
  for (const element of [...root.querySelectorAll("*")]) {
    if (!TAKEN.has(element.localName.toLowerCase())) element.remove();
    else for (const { name } of [...element.attributes]) if (/^on|href$/i.test(name)) element.removeAttribute(name);
  }
  // Ids within it would clash where two drawings stand on one page; the name is given here instead.
  root.removeAttribute("aria-labelledby");
  root.setAttribute("aria-label", label);
  for (const named of root.querySelectorAll("title, desc")) named.remove();
  return document.importNode(root, true);
}
