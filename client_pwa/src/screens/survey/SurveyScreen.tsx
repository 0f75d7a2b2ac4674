/** The gauged bore: readings by height and direction, what they come to, and what to do about it. */

import type { FigureName } from "../../engine/names";
import type { Quantity } from "../../engine/answers";
import { fieldsOf } from "../../engine/tables";
import { FigureTile } from "../../figures/Figures";
import { GenericScreen } from "../../figures/GenericScreen";
import type { InView } from "../../figures/results";
import { inputs, job, setInputs } from "../../sheet/sheet";
import { system } from "../../base/settings";
import { unitNamed } from "../../units/kinds";
import { splitText } from "../../units/parse";
import { shown } from "../../units/show";
import { ReadingsGrid } from "./ReadingsGrid";

interface Section {
  height?: Quantity | null;
  mean_diameter: Quantity;
  ovality?: Quantity | null;
  oval_direction?: Quantity | null;
}

const VERDICTS: Readonly<Record<string, string>> = {
  run: "Run it as it is",
  hone: "Hone it",
  "bore-out": "Bore it out",
  sleeve: "Sleeve it",
};
const LARGE: readonly FigureName[] = ["mean_diameter", "ring_diameter", "taper", "ovality"];

export function SurveyScreen() {
  const shared = new Set(fieldsOf("sizing").map((field) => field.name));
  const elsewhere = fieldsOf("bore-survey").map((field) => field.name).filter((name) => shared.has(name));
  return (
    <GenericScreen
      calculation="bore-survey"
      elsewhere={["readings", ...elsewhere]}
      figuresTitle="What the readings come to"
      top={(view) => <ReadingsGrid key={job.value.id} faults={view.faults} />}
    >
      {(view) => <Verdict view={view} />}
    </GenericScreen>
  );
}

function Verdict({ view }: { view: InView }) {
  const { answer } = view;
  if (!answer) return null;
  const verdict = typeof answer.verdict === "string" ? answer.verdict : "";
  const size = answer.figures.ring_diameter;
  const gap = answer.figures.closed_gap;
  return (
    <>
      <section class={view.stale ? "plate stale" : "plate"} aria-label="Verdict">
        <p class="plate-words">
          <b>{VERDICTS[verdict] ?? verdict}</b>
        </p>
        {LARGE.map((name) => {
          const figure = answer.figures[name];
          return figure ? <FigureTile key={name} name={name} figure={figure} {...(name === "ring_diameter" ? { label: "Make rings for" } : {})} /> : null;
        })}
      </section>
      {size && (
        <p>
          <button type="button" class="main-action print-button" onClick={() => setInputs(ofSurvey(verdict, size.value, gap?.value))}>
            Use this size as the bore of the job
          </button>
        </p>
      )}
      <Sections sections={(answer.sections ?? []) as Section[]} />
    </>
  );
}

// A ring for a bore that runs as it is gets the gap that its tightest place asks for.
function ofSurvey(verdict: string, size: number, gap: number | undefined) {
  const bore = inReadingsUnit(size);
  return verdict === "run" && gap !== undefined ? { bore, closed_gap: inReadingsUnit(gap) } : { bore };
}

/** A size in the unit in which the bore was gauged: who reads inches is not handed millimetres. */
function inReadingsUnit(mm: number): string {
  const { readings } = inputs.peek();
  const [first] = Array.isArray(readings) ? readings : [];
  const typed = typeof first === "object" && !Array.isArray(first) ? first.diameter : undefined;
  const unit = typeof typed === "string" && typed !== "" ? unitNamed("length", splitText(typed).unit)?.name : undefined;
  // A ring's size is never read in thou.
  if (unit === "in" || unit === "thou" || (unit === undefined && system.peek() === "inch")) return `${Number((mm / 25.4).toFixed(4))} in`;
  return `${Number(mm.toFixed(3))} mm`;
}

function Sections({ sections }: { sections: readonly Section[] }) {
  if (sections.length < 2) return null;
  const { unit } = shown(0, "mm", system.value);
  return (
    <section class="card" aria-label="Height by height">
      <h2>Height by height</h2>
      <table class="plain">
        <caption class="unseen">Mean size and ovality at each height</caption>
        <thead>
          <tr>
            <th scope="col">Height, {unit}</th>
            <th scope="col">Mean</th>
            <th scope="col">Oval by</th>
          </tr>
        </thead>
        <tbody>
          {sections.map((section, index) => (
            <tr key={index}>
              <th scope="row">{words(section.height, "height")}</th>
              <td>{words(section.mean_diameter)}</td>
              <td>{words(section.ovality)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function words(quantity: Quantity | null | undefined, name = "limit"): string {
  return quantity ? shown(quantity.value, quantity.unit, system.value, name).text : "not known";
}
