/** The gauged bore: readings by height and direction, what they come to, and what to do about it. */

import type { FigureName } from "../../engine/names";
import type { Quantity } from "../../engine/answers";
import { fieldsOf } from "../../engine/tables";
import { FigureTile } from "../../figures/Figures";
import { GenericScreen } from "../../figures/GenericScreen";
import { RowsTable } from "../../figures/RowsTable";
import type { InView } from "../../figures/results";
import { inputs, job, setInputs } from "../../sheet/sheet";
import { system } from "../../base/settings";
import { unitNamed } from "../../units/kinds";
import { splitText } from "../../units/parse";
import { ReadingsGrid } from "./ReadingsGrid";

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
      checksFirst
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
  const sections = ((answer.sections ?? []) as Record<string, Quantity>[]).map((sizes) => ({ sizes }));
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
      {sections.length > 1 && <RowsTable title="Height by height" names={["height", "mean_diameter", "ovality"]} heads={["Height", "Mean", "Oval by"]} rows={sections} />}
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
