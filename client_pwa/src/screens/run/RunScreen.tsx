/** What the engine loses now and what it would lose with new rings, as its driver would ask it. */

import type { Answer, Figure, Series } from "../../engine/answers";
import type { FigureName, InputName } from "../../engine/names";
import { fieldsOf } from "../../engine/tables";
import { GenericScreen } from "../../figures/GenericScreen";
import { FigureRows, FigureTile } from "../../figures/Figures";
import { LineChart } from "../../figures/LineChart";
import type { InView } from "../../figures/results";
import { choiceWords } from "../../engine/labels";
import { system } from "../../base/settings";
import { shown } from "../../units/show";

interface Compared {
  ring: string;
  leak_rate: Figure;
  leak_share: Figure;
}

interface Warming {
  figures: Record<string, Figure>;
  first_to_touch: string;
  series: Record<string, Series>;
}

const RING_WORDS: Readonly<Record<string, string>> = { now: "Ring as it is now", plain: "New plain ring", "double-turn": "New double-turn ring" };
const FIRST: readonly InputName[] = ["stroke", "speed", "worn_gap"];
const LARGE: readonly FigureName[] = ["indicated_power", "friction_power", "steam_use", "steam_saved"];

export function RunScreen() {
  const shared = new Set(fieldsOf("sizing").map((field) => field.name));
  const elsewhere = fieldsOf("running").map((field) => field.name).filter((name) => shared.has(name));
  return (
    <GenericScreen calculation="running" first={FIRST} elsewhere={elsewhere} rowNames={{ gap_readings: "Reading" }} below={below}>
      {(view) => view.answer && <Losses answer={view.answer} stale={view.stale} />}
    </GenericScreen>
  );
}

function Losses({ answer, stale }: { answer: Answer; stale: boolean }) {
  const compared = (answer.comparison ?? []) as Compared[];
  const most = Math.max(...compared.map((each) => each.leak_rate.value), 1e-12);
  return (
    <>
      <section class={stale ? "plate stale" : "plate"} aria-label="Leak past the rings">
        {compared.map((each) => (
          <LossRow key={each.ring} compared={each} most={most} />
        ))}
      </section>
      <div class="tiles-pair">
        {LARGE.map((name) => {
          const figure = answer.figures[name];
          return figure ? <FigureTile key={name} name={name} figure={figure} /> : null;
        })}
      </div>
    </>
  );
}

function LossRow({ compared, most }: { compared: Compared; most: number }) {
  const { ring, leak_rate: rate, leak_share: share } = compared;
  const low = shown(rate.low ?? rate.value, rate.unit, system.value);
  const high = shown(rate.high ?? rate.value, rate.unit, system.value);
  const part = shown(share.value, share.unit, system.value, "leak_share");
  return (
    <div class="loss">
      <FigureTile name="leak_rate" label={RING_WORDS[ring] ?? choiceWords(ring)} figure={rate} />
      <svg viewBox="0 0 100 8" preserveAspectRatio="none" class="loss-bar" aria-hidden="true">
        <rect width={Math.max(0.6, (rate.value / most) * 100)} height="8" />
      </svg>
      <p>
        {part.text} {part.unit} of the steam it uses; could be {low.text} to {high.text} {high.unit}
      </p>
    </div>
  );
}

function below(view: InView) {
  const warming = view.answer?.warming as Warming | undefined;
  const diagram = view.answer?.diagram as Record<string, Series> | undefined;
  return (
    <>
      {warming && <WarmingUp warming={warming} />}
      {diagram?.travel && diagram.pressure_outward && diagram.pressure_returning && (
        <section class="card" aria-label="Steam in the cylinder">
          <LineChart
            title="Steam in the cylinder over the stroke"
            across={diagram.travel}
            acrossLabel="share of the stroke"
            unit="MPa"
            name="steam_pressure"
            lines={[
              { label: "outward", values: diagram.pressure_outward.values, stroke: "solid" },
              { label: "returning", values: diagram.pressure_returning.values, stroke: "dash" },
            ]}
          />
        </section>
      )}
    </>
  );
}

function WarmingUp({ warming }: { warming: Warming }) {
  const { series } = warming;
  const across = series.cylinder_temperature;
  if (!across) return null;
  const chart = (part: string, title: string) => {
    const together = series[`${part}_together`];
    const hurried = series[`${part}_hurried`];
    if (!together || !hurried) return null;
    return (
      <LineChart
        title={title}
        across={across}
        acrossLabel="cylinder"
        unit="mm"
        name={part}
        lines={[
          { label: "all warmed together", values: together.values, stroke: "solid" },
          { label: "steam on a cold cylinder", values: hurried.values, stroke: "dash" },
        ]}
        level={{ value: 0, label: "touches" }}
      />
    );
  };
  return (
    <section class="card" aria-label="Warming up">
      <h2>Warming up</h2>
      {warming.first_to_touch && <p>First to touch: {warming.first_to_touch}.</p>}
      {chart("gap", "Gap of the ring ends")}
      {chart("side_clearance", "Side clearance in the groove")}
      {chart("piston_clearance", "Clearance of the piston")}
      <FigureRows figures={warming.figures} />
    </section>
  );
}
