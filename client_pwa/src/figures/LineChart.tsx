/** Lines over a common axis, told apart by their strokes and by words at their ends, not by colour. */

import type { Series } from "../engine/answers";
import { system } from "../base/settings";
import { shown } from "../units/show";

export interface Line {
  label: string;
  values: readonly number[];
  /** "solid", "dash" or "dot". */
  stroke: "solid" | "dash" | "dot";
}

interface Props {
  title: string;
  across: Series;
  acrossLabel: string;
  unit: string;
  name: string;
  lines: readonly Line[];
  /** A level that matters, such as nothing left. */
  level?: { value: number; label: string };
}

const WIDTH = 340;
const HEIGHT = 210;
const LEFT = 52;
const RIGHT = 10;
const TOP = 12;
const BOTTOM = 40;

export function LineChart({ title, across, acrossLabel, unit, name, lines, level }: Props) {
  const all = [...lines.flatMap((line) => line.values), ...(level ? [level.value] : [])].filter(Number.isFinite);
  if (all.length === 0 || across.values.length < 2) return null;
  let low = Math.min(...all);
  let high = Math.max(...all);
  if (high - low < 1e-12) high = low + 1;
  const room = (high - low) * 0.06;
  low -= room;
  high += room;
  const first = across.values[0]!;
  const last = across.values[across.values.length - 1]!;
  const x = (value: number): number => LEFT + ((value - first) / (last - first)) * (WIDTH - LEFT - RIGHT);
  const y = (value: number): number => TOP + ((high - value) / (high - low)) * (HEIGHT - TOP - BOTTOM);
  const rows = ticks(low, high, 5);
  // One axis, one number of decimals.
  const fine = unit === "mm" ? "limit" : name;
  const columns = ticks(first, last, 4);
  return (
    <figure class="chart">
      <figcaption>{title}</figcaption>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={describe(title, lines, unit, name)}>
        {rows.map((value) => (
          <g key={value}>
            <path class="chart-grid" d={`M${LEFT} ${y(value)}H${WIDTH - RIGHT}`} />
            <text x={LEFT - 6} y={y(value) + 4} text-anchor="end">
              {shown(value, unit, system.value, fine).text}
            </text>
          </g>
        ))}
        {columns.map((value) => (
          <text key={value} x={x(value)} y={HEIGHT - BOTTOM + 17} text-anchor="middle">
            {shown(value, across.unit, system.value, acrossLabel).text}
          </text>
        ))}
        <text x={(LEFT + WIDTH) / 2} y={HEIGHT - 4} text-anchor="middle">
          {acrossLabel}, {shown(first, across.unit, system.value, acrossLabel).unit}
        </text>
        <text x={2} y={TOP - 1}>
          {shown(first, unit, system.value, name).unit}
        </text>
        {level && level.value > low && level.value < high && <path class="chart-level" d={`M${LEFT} ${y(level.value)}H${WIDTH - RIGHT}`} />}
        {lines.map((line) => (
          <path key={line.label} class={`chart-line chart-${line.stroke}`} d={"M" + line.values.map((value, index) => `${x(across.values[index]!).toFixed(1)} ${y(value).toFixed(1)}`).join("L")} />
        ))}
      </svg>
      <ul class="chart-key">
        {lines.map((line) => (
          <li key={line.label}>
            <svg viewBox="0 0 44 10" width="44" height="10" aria-hidden="true">
              <path class={`chart-line chart-${line.stroke}`} d="M0 5H44" />
            </svg>
            {line.label}
          </li>
        ))}
        {level && (
          <li>
            <svg viewBox="0 0 44 10" width="44" height="10" aria-hidden="true">
              <path class="chart-level" d="M0 5H44" />
            </svg>
            {level.label}
          </li>
        )}
      </ul>
    </figure>
  );
}

/** Round values within the bounds, about `wanted` of them. */
export function ticks(low: number, high: number, wanted: number): number[] {
  const rough = (high - low) / wanted;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 5, 10].find((each) => each * power >= rough) ?? 10) * power;
  const found: number[] = [];
  for (let value = Math.ceil(low / step) * step; value <= high + step * 1e-9; value += step) found.push(Math.abs(value) < step * 1e-9 ? 0 : value);
  return found;
}

function describe(title: string, lines: readonly Line[], unit: string, name: string): string {
  const parts = lines.map((line) => {
    const from = shown(line.values[0] ?? 0, unit, system.value, name);
    const to = shown(line.values[line.values.length - 1] ?? 0, unit, system.value, name);
    return `${line.label}: from ${from.text} to ${to.text} ${to.unit}`;
  });
  return `${title}. ${parts.join("; ")}.`;
}
