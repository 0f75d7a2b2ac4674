/** The ring at a glance, on a plate of marking-out blue: drawn to scale with its five figures beside it. */

import type { ComponentChildren } from "preact";
import type { Answer, Figure } from "../../engine/answers";
import { labelOf } from "../../engine/labels";
import type { FigureName } from "../../engine/names";
import { figureLabel } from "../../engine/tables";
import { FigureTile } from "../../figures/Figures";
import { inView, settledView } from "../../figures/results";
import { openFigure } from "../../figures/working";
import { system } from "../../base/settings";
import { shown } from "../../units/show";
import { Later } from "../../base/Later";
import { RingDrawing } from "./RingDrawing";

interface Props {
  sizing: Answer | undefined;
  turns: number;
  waiting: boolean;
}

export function RingPlate({ sizing, turns, waiting }: Props) {
  const figures = sizing?.figures;
  return (
    <Plate>
      {figures || waiting ? (
        <>
          <SectionTile thickness={figures?.radial_thickness} width={figures?.ring_width} />
          <Tile name="free_gap" figure={figures?.free_gap} />
          <Tile name="closed_gap" figure={figures?.closed_gap} />
          <FormerTile />
          <BarTile />
          <Later now>
            <RingDrawing figures={figures} turns={turns} />
          </Later>
        </>
      ) : (
        <p class="plate-empty">Enter a bore and a steam pressure: the rest is chosen for you, and yours to change.</p>
      )}
    </Plate>
  );
}

/** Alone hears that figures are old: those on it are drawn anew when the next are there. */
function Plate({ children }: { children: ComponentChildren }) {
  const { answer, stale } = inView("sizing");
  return (
    <section class={stale ? "plate stale" : "plate"} aria-label="The ring" data-state={stale || !answer ? "working" : "ready"}>
      {children}
    </section>
  );
}

/** A figure in its place, which stands while the figure is still being worked. */
function Tile({ name, label = figureLabel(name), figure }: { name: FigureName; label?: string; figure: Figure | undefined }) {
  if (figure) return <FigureTile name={name} label={label} figure={figure} />;
  return (
    <span class="tile">
      <span class="tile-label">{label}</span>
      <span class="tile-value">
        <b>…</b>
      </span>
    </span>
  );
}

// Each asks for its own answer: when it comes, nothing else is drawn anew.
function FormerTile() {
  const figures = settledView("tooling").answer?.figures;
  const spacer = !figures?.former_diameter && figures?.spacer_width;
  return spacer ? <Tile name="spacer_width" label="Spacer" figure={spacer} /> : <Tile name="former_diameter" label="Former" figure={figures?.former_diameter} />;
}

function BarTile() {
  const figures = (settledView("job").answer?.stock as Answer | undefined)?.figures;
  return <Tile name="bar_diameter" label={figures?.bar_bore ? "Bar, cored" : "Bar"} figure={figures?.bar_diameter} />;
}

function SectionTile({ thickness, width }: { thickness: Figure | undefined; width: Figure | undefined }) {
  return (
    <div class="tile tile-wide">
      <span class="tile-label">Section, thick × wide</span>
      <span class="tile-value">
        {thickness && width ? (
          <>
            <TilePart name="radial_thickness" figure={thickness} />
            <span class="tile-times">×</span>
            <TilePart name="ring_width" figure={width} />
            <span class="tile-unit">{shown(thickness.value, thickness.unit, system.value).unit}</span>
          </>
        ) : (
          <b>…</b>
        )}
      </span>
    </div>
  );
}

function TilePart({ name, figure }: { name: string; figure: Figure }) {
  const { text, unit } = shown(figure.value, figure.unit, system.value);
  const label = labelOf(name);
  return (
    <button type="button" class="tile-part" aria-label={`${label} ${text} ${unit}`} data-figure={name} onClick={() => (openFigure.value = { name, label, figure })}>
      <b>{text}</b>
    </button>
  );
}
