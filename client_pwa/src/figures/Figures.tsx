/** Figures as rows or tiles; each is a button that opens its working. */

import type { Figure, Figures } from "../engine/answers";
import type { FigureName } from "../engine/names";
import { figureLabel } from "../engine/tables";
import { system } from "../base/settings";
import { shown } from "../units/show";
import { Symbol } from "./Symbol";
import { openFigure } from "./working";

interface OneProps {
  name: FigureName;
  figure: Figure;
  label?: string;
  stale?: boolean;
}

export function FigureTile({ name, figure, label = figureLabel(name), stale = false }: OneProps) {
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

export function FigureRows({ figures, names, stale = false }: { figures: Figures; names?: readonly FigureName[]; stale?: boolean }) {
  const listed = names ?? (Object.keys(figures) as FigureName[]);
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

function FigureRow({ name, figure, label = figureLabel(name) }: OneProps) {
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
