/** The pressure round the bore, turn by turn: outward from the wall where the ring presses, and where it
 * stands clear, the light, much enlarged. */

import type { Answer, Series } from "../engine/answers";
import { system } from "../base/settings";
import { percentWords, shown } from "../units/show";

interface Turn {
  turn: number;
  angle: Series;
  pressure: Series;
  light: Series;
}

const CENTRE = 100;
const WALL = 56;
const LONGEST = 34;
const DEEPEST = 16;
/** Light that no lamp shows, in mm. */
const LIGHT_TIGHT = 0.002;

export function WallPicture({ answer, title }: { answer: Answer; title: string }) {
  const turns = (answer.turns ?? []) as Turn[];
  if (turns.length === 0) return null;
  const pressures = turns.flatMap((turn) => turn.pressure.values);
  // A tip's line force is no part of the scale, or it would flatten all the rest.
  const largest = sortedAt(pressures, 0.98) || Math.max(...pressures, 1e-9);
  const widest = Math.max(...turns.flatMap((turn) => turn.light.values), 0);
  const top = shown(largest, "MPa", system.value, "wall_pressure");
  const light = shown(widest, "mm", system.value, "light");
  return (
    <figure class="wall">
      <figcaption>{title}</figcaption>
      <div class="wall-turns">
        {turns.map((turn) => (
          <div key={turn.turn}>
            <svg viewBox="6 6 188 188" role="img" aria-label={describe(turn, turns.length)}>
              <circle class="wall-bore" cx={CENTRE} cy={CENTRE} r={WALL} />
              <path class="wall-pressure" d={outline(turn, (index) => WALL + Math.min(1.06, turn.pressure.values[index]! / largest) * LONGEST)} />
              {widest > LIGHT_TIGHT && (
                <path class="wall-light" d={outline(turn, (index) => WALL - (turn.light.values[index]! / widest) * DEEPEST)} />
              )}
              <path class="wall-gap" d={`M${CENTRE} ${CENTRE - WALL - 5}V${CENTRE - WALL + 8}`} />
            </svg>
            <p aria-hidden="true">
              {turns.length > 1 ? `Turn ${turn.turn}` : "The ring"} {slackWords(turn)}
            </p>
          </div>
        ))}
      </div>
      <ul class="chart-key">
        <li>
          <svg viewBox="0 0 44 14" width="44" height="14" aria-hidden="true">
            <path class="wall-pressure" d="M0 13V5q22-8 44 0v8z" />
          </svg>
          pressure on the wall, up to {top.text} {top.unit}
        </li>
        {widest > LIGHT_TIGHT && (
          <li>
            <svg viewBox="0 0 44 14" width="44" height="14" aria-hidden="true">
              <path class="wall-light" d="M0 1q22 24 44 0z" />
            </svg>
            light, not to scale, up to {light.text} {light.unit}
          </li>
        )}
      </ul>
    </figure>
  );
}

/** From the wall out (or in) to the value and back along the wall. Angle nought stands at the top, at the gap. */
function outline(turn: Turn, radius: (index: number) => number): string {
  const points = turn.angle.values.map((angle, index) => point(angle, radius(index)));
  const back = [...turn.angle.values].reverse().map((angle) => point(angle, WALL));
  return `M${points.join("L")}L${back.join("L")}Z`;
}

function point(angle: number, radius: number): string {
  const turned = ((angle - 90) * Math.PI) / 180;
  return `${(CENTRE + radius * Math.cos(turned)).toFixed(1)} ${(CENTRE + radius * Math.sin(turned)).toFixed(1)}`;
}

function bareShare(turn: Turn): number {
  const bare = turn.pressure.values.filter((value) => value <= 0).length;
  return bare / turn.pressure.values.length;
}

function slackWords(turn: Turn): string {
  const bare = bareShare(turn);
  return bare < 0.005 ? "bears all round" : `bears on ${percentWords(1 - bare)}`;
}

function describe(turn: Turn, count: number): string {
  const widest = Math.max(...turn.light.values);
  const light = shown(widest, "mm", system.value, "light");
  const name = count > 1 ? `Turn ${turn.turn}` : "The ring";
  return `${name} ${slackWords(turn)} of the circumference${widest > LIGHT_TIGHT ? `; widest light ${light.text} ${light.unit}` : "; no light"}.`;
}

function sortedAt(values: readonly number[], share: number): number {
  const sorted = [...values].sort((one, other) => one - other);
  return sorted[Math.floor((sorted.length - 1) * share)] ?? 0;
}
