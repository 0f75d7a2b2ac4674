/** Figures as rows or tiles; each is a button that opens its working. */

import type { Figure } from "../engine/answers";
import { labelOf } from "../engine/labels";
import { system } from "../base/settings";
import { shown } from "../units/show";
import { Symbol } from "./Symbol";
import { openFigure } from "./working";

interface OneProps {
  name: string;
  figure: Figure;
  label?: string;
  stale?: boolean;
}

export function FigureTile({ name, figure, label = labelOf(name), stale = false }: OneProps) {
  const text = shown(figure.value, figure.unit, system.value, name);
  return (
    <button
      type="button"
      class={stale ? "tile stale" : "tile"}
      data-figure={name}
      onClick={() => (openFigure.value = { name, label, figure })}
    >
      <span class="tile-label">{label}</span>
      <span class="tile-value">
        <b>{text.text}</b> <span class="tile-unit">{text.unit}</span>
      </span>
    </button>
  );
}

export function FigureRows({ figures, names, stale = false }: { figures: Record<string, Figure>; names?: readonly string[]; stale?: boolean }) {
  const listed = names ?? Object.keys(figures);
  return (
    <ul class={stale ? "rows stale" : "rows"}>
      {listed.map((name) => {
        const figure = figures[name];
        if (!figure) return null;
        return (
          <li key={name}>
            <FigureRow name={name} figure={figure} />
          </li>
        );
      })}
    </ul>
  );
}

function FigureRow({ name, figure, label = labelOf(name) }: OneProps) {
  const text = shown(figure.value, figure.unit, system.value, name);
  const low = figure.low === undefined ? undefined : shown(figure.low, figure.unit, system.value, name);
  const high = figure.high === undefined ? undefined : shown(figure.high, figure.unit, system.value, name);
  return (
    <button type="button" class="row" data-figure={name} onClick={() => (openFigure.value = { name, label, figure })}>
      <span class="row-label">
        {label}
        {figure.symbol && <i class="row-symbol"> <Symbol text={figure.symbol} /></i>}
      </span>
      <span class="row-value">
        <b>{text.text}</b> {text.unit}
        {low && high && (
          <small class="row-spread">
            {low.unit === text.unit && high.unit === text.unit
              ? `${low.text} to ${high.text}`
              : `${low.text} ${low.unit} to ${high.text} ${high.unit}`}
          </small>
        )}
      </span>
    </button>
  );
}
