/** The ring at a glance, on a plate of marking-out blue: drawn to scale with its five figures beside it. */

import type { Answer, Figure } from "../engine/answers";
import { FigureTile } from "../figures/Figures";
import { openFigure } from "../figures/working";
import { system } from "../shell/settings";
import { shown } from "../units/show";
import { RingDrawing } from "./RingDrawing";

interface Props {
  sizing: Answer | undefined;
  tooling: Answer | undefined;
  stock: Answer | undefined;
  stale: boolean;
  turns: number;
  waiting: boolean;
}

export function RingPlate({ sizing, tooling, stock, stale, turns, waiting }: Props) {
  const figures = sizing?.figures;
  const former = tooling?.figures.former_diameter;
  const bar = stock?.figures.bar_diameter;
  const spacer = tooling?.figures.spacer_width;
  return (
    <section class={stale ? "plate stale" : "plate"} aria-label="The ring" data-state={stale || !figures ? "working" : "ready"}>
      {figures ? (
        <>
          <SectionTile thickness={figures.radial_thickness} width={figures.ring_width} />
          {figures.free_gap && <FigureTile name="free_gap" figure={figures.free_gap} />}
          {figures.closed_gap && <FigureTile name="closed_gap" figure={figures.closed_gap} />}
          {former ? (
            <FigureTile name="former_diameter" label="Former" figure={former} />
          ) : (
            spacer && <FigureTile name="spacer_width" label="Spacer" figure={spacer} />
          )}
          {bar ? (
            <FigureTile name="bar_diameter" label={stock?.figures.bar_bore ? "Bar, cored" : "Bar"} figure={bar} />
          ) : (
            <span class="tile">
              <span class="tile-label">Bar</span>
              <span class="tile-value">
                <b>…</b>
              </span>
            </span>
          )}
          <RingDrawing figures={figures} turns={turns} />
        </>
      ) : (
        <p class="plate-empty">{waiting ? "Working it out…" : "A bore and a steam pressure are enough."}</p>
      )}
    </section>
  );
}

function SectionTile({ thickness, width }: { thickness: Figure | undefined; width: Figure | undefined }) {
  if (!thickness || !width) return null;
  const one = shown(thickness.value, thickness.unit, system.value);
  const two = shown(width.value, width.unit, system.value);
  return (
    <div class="tile tile-wide">
      <span class="tile-label">Section, thick × wide</span>
      <span class="tile-value">
        <button type="button" class="tile-part" aria-label={`Radial thickness ${one.text} ${one.unit}`} data-figure="radial_thickness" onClick={() => (openFigure.value = { name: "radial_thickness", label: "Radial thickness", figure: thickness })}>
          <b>{one.text}</b>
        </button>
        <span class="tile-times">×</span>
        <button type="button" class="tile-part" aria-label={`Ring width ${two.text} ${two.unit}`} data-figure="ring_width" onClick={() => (openFigure.value = { name: "ring_width", label: "Ring width", figure: width })}>
          <b>{two.text}</b>
        </button>
        <span class="tile-unit">{one.unit}</span>
      </span>
    </div>
  );
}
