/** The liner laid flat: bars and openings of the port, the ring that crosses them, and where its joint lies. */

import type { Answer } from "../../engine/answers";
import { system } from "../../base/settings";
import { takenFor } from "../../sheet/sheet";
import { shown } from "../../units/show";

const WIDE = 320;
const TALL = 150;

export function PortPicture({ answer }: { answer: Answer }) {
  const over = answer.findings.find((finding) => finding.check === "ring-over-port");
  const opening = answer.figures.opening;
  const bar = takenFor(answer, "port_bar_width");
  const gap = answer.figures.closed_gap?.value ?? 0;
  if (!over?.value || !over.limit || !opening || typeof bar !== "number") return null;
  const ring = over.value.value;
  const port = over.limit.value;
  const pitch = opening.value + bar;
  const scale = Math.min(WIDE / (2 * pitch + bar), TALL / (1.3 * Math.max(port, ring)));
  const middle = WIDE / 2;
  const pinned = takenFor(answer, "joint_pinned") === true;
  // A bar stands in the middle; what is not pinned may come to lie over an opening.
  const joint = middle + (pinned ? 0 : (pitch / 2) * scale);
  const tall = 1.3 * Math.max(port, ring) * scale;
  const top = (tall - port * scale) / 2;
  const edge = (tall - ring * scale) / 2;
  const openings: number[] = [];
  for (let at = middle + (bar / 2) * scale; at < WIDE; at += pitch * scale) openings.push(at, WIDE - at - opening.value * scale);
  const words = (value: number): string => {
    const text = shown(value, "mm", system.value);
    return `${text.text} ${text.unit}`;
  };
  const half = Math.max(1.5, (gap / 2) * scale);
  return (
    <figure class="wall">
      <figcaption>The liner laid flat</figcaption>
      <svg viewBox={`0 0 ${WIDE} ${tall.toFixed(1)}`} aria-hidden="true">
        {openings.map((at) => (
          <rect key={at} class="wall-bore" x={at} y={top} width={opening.value * scale} height={port * scale} />
        ))}
        <path
          class="wall-pressure"
          d={`M0 ${edge}H${joint - half}v${ring * scale}H0zM${WIDE} ${edge}H${joint + half}v${ring * scale}H${WIDE}z`}
        />
        <path class="wall-gap" d={`M${joint} ${edge - 6}v${ring * scale + 12}`} />
      </svg>
      <p>
        Openings of {words(opening.value)} between bars of {words(bar)}; the ring, {words(ring)} wide, crosses a port {words(port)} wide.{" "}
        {ring > port ? "The edges of the port carry it." : "Over the port only the bars carry it: between them it springs out."}{" "}
        {pinned ? "The pin keeps the joint on a bar, so that no end can catch." : "Nothing keeps the joint on a bar: an end may come over an opening and catch."}
      </p>
    </figure>
  );
}
