/** How the work is held, tool, speed, feed, what to do and what to look for, of one operation. */

import type { Operation, Quantity } from "../../engine/answers";
import { system } from "../../base/settings";
import { shown } from "../../units/show";

export function Facts({ operation }: { operation: Operation }) {
  const { speed, surface_speed: surface, feed, feed_per: per, passes, time } = operation;
  return (
    <>
      <dl class="work-facts">
        <Fact name="Hold">{operation.hold}</Fact>
        <Fact name="Tool">{operation.tool}</Fact>
        <Fact name="Speed">{speed && words(speed, "Speed") + (surface ? ` (${words(surface, "Speed")})` : "")}</Fact>
        <Fact name="Feed">{feed && words(feed, "Feed") + (per ? ` a ${per}` : "")}</Fact>
        <Fact name="Passes">{passes !== undefined && passes > 1 ? String(passes) : ""}</Fact>
        <Fact name="Time">{time && words(time, "Time")}</Fact>
      </dl>
      <p class="work-text">{operation.text}</p>
      {operation.check && (
        <p class="work-text">
          <b>Check:</b> {operation.check}
        </p>
      )}
    </>
  );
}

function Fact({ name, children }: { name: string; children: string | undefined }) {
  if (!children) return null;
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

function words(quantity: Quantity, name: string): string {
  const text = shown(quantity.value, quantity.unit, system.value, name);
  return `${text.text} ${text.unit}`.trim();
}
