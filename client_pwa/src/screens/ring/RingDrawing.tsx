/** The ring to scale: closed in its bore, free round it, and its section beside them. A picture of the
 * figures next to it; the working drawings come from the core's own geometry. */

import type { Figure } from "../../engine/answers";

const VIEW = "0 0 230 120";
const SIZE = 120;
const CENTRE = SIZE / 2;
const LARGEST = 54;

export function RingDrawing({ figures = {}, turns }: { figures: Record<string, Figure> | undefined; turns: number }) {
  const inside = figures.inside_diameter?.value ?? 0;
  const thickness = figures.radial_thickness?.value ?? 0;
  const gap = figures.free_gap?.value ?? 0;
  const closed = figures.closed_gap?.value ?? 0;
  const width = figures.ring_width?.value ?? 0;
  const bore = inside + 2 * thickness;
  // Its room is kept while there is nothing to draw.
  if (bore <= 0 || thickness <= 0) return <svg class="plate-drawing" viewBox={VIEW} aria-hidden="true" />;
  // Free, the neutral line keeps its length and takes the gap as well.
  const neutral = (bore - thickness) / 2;
  const metal = 2 * Math.PI * neutral - closed;
  const freeRadius = (metal + gap) / (2 * Math.PI);
  const scale = LARGEST / (freeRadius + thickness);
  const sectionScale = Math.min(46 / Math.max(thickness, width), scale * 6);
  return (
    <svg class="plate-drawing" viewBox={VIEW} role="img" aria-label="The ring to scale: free, and closed in its bore; its section beside it">
      <circle class="line-thin line-chain" cx={CENTRE} cy={CENTRE} r={(bore / 2) * scale} />
      <path class="line-bold" d={arcBand(freeRadius - thickness / 2, freeRadius + thickness / 2, gap / freeRadius, scale)} />
      <path class="line-thin line-dash" d={arcBand(inside / 2, bore / 2, Math.max(closed / neutral, 0.01), scale)} />
      <path class="line-thin line-chain" d={`M${CENTRE} 2V118M2 ${CENTRE}H118`} />
      <g transform={`translate(${178 - (thickness * sectionScale) / 2} ${CENTRE - (width * sectionScale) / 2})`}>
        <rect class="line-bold" x="0" y="0" width={thickness * sectionScale} height={width * sectionScale} />
        {turns === 2 && <path class="line-thin" d={`M0 ${(width * sectionScale) / 2}h${thickness * sectionScale}`} />}
        <path class="line-thin" d={hatch(thickness * sectionScale, width * sectionScale)} />
      </g>
    </svg>
  );
}

/** A ring with a gap at the top that takes up `open` radians. */
function arcBand(inner: number, outer: number, open: number, scale: number): string {
  const from = -Math.PI / 2 + open / 2;
  const to = -Math.PI / 2 - open / 2;
  const point = (radius: number, angle: number): string =>
    `${(CENTRE + radius * scale * Math.cos(angle)).toFixed(2)} ${(CENTRE + radius * scale * Math.sin(angle)).toFixed(2)}`;
  const r1 = (outer * scale).toFixed(2);
  const r2 = (inner * scale).toFixed(2);
  return `M${point(outer, from)}A${r1} ${r1} 0 1 1 ${point(outer, to)}L${point(inner, to)}A${r2} ${r2} 0 1 0 ${point(inner, from)}Z`;
}

function hatch(width: number, height: number): string {
  const lines: string[] = [];
  for (let at = 5; at < width + height; at += 5) {
    const x1 = Math.max(0, at - height);
    const y1 = Math.min(at, height);
    const x2 = Math.min(at, width);
    const y2 = Math.max(0, at - width);
    lines.push(`M${x1.toFixed(1)} ${y1.toFixed(1)}L${x2.toFixed(1)} ${y2.toFixed(1)}`);
  }
  return lines.join("");
}
