/** A label for the ring's box: what is in it, for which bore, and the job as a code to photograph. */

import { system } from "../../base/settings";
import { PrintButton } from "../../base/Print";
import { dayWords } from "../../book/names";
import { choiceWords } from "../../engine/labels";
import type { FigureName } from "../../engine/names";
import { figureLabel } from "../../engine/tables";
import { inView } from "../../figures/results";
import { Status } from "../../figures/Status";
import { job } from "../../sheet/sheet";
import { shown } from "../../units/show";
import { Code, useLink } from "../../figures/JobCode";

/** What tells one ring from another, and what is read when it is fitted. */
const ON_LABEL: readonly FigureName[] = ["radial_thickness", "ring_width", "free_gap", "closed_gap", "piston_diameter"];
/** Readings and measures of an afternoon: they would make the code too fine to read. */
const NOT_IN_CODE = ["readings", "piston_valve", "bars"];

export function LabelScreen() {
  const { result, answer, stale } = inView("sizing");
  const link = useLink(job.value, NOT_IN_CODE);
  if (!answer) return <Status result={result} />;
  const taken = (name: string): string => {
    const given = job.value.inputs[name];
    if (typeof given === "string") return choiceWords(given);
    const chosen = answer.chosen.find((choice) => choice.input === name)?.value;
    return typeof chosen === "string" ? choiceWords(chosen) : "";
  };
  const { bore } = job.value.inputs;
  return (
    <>
      <section class={stale ? "box-label stale" : "box-label"} aria-label="Label">
        <div>
          <b>{job.value.name}</b>
          <p>
            {taken("ring_type")} ring, {taken("ring_material")}
          </p>
          <dl>
            <div>
              <dt>Bore</dt>
              <dd>{typeof bore === "string" ? bore : ""}</dd>
            </div>
            {ON_LABEL.map((name) => {
              const figure = answer.figures[name];
              if (!figure) return null;
              const { text, unit } = shown(figure.value, figure.unit, system.value, name);
              return (
                <div key={name}>
                  <dt>{figureLabel(name)}</dt>
                  <dd>
                    {text} {unit}
                  </dd>
                </div>
              );
            })}
          </dl>
          <p class="box-label-foot">
            {dayWords(job.value.changed || Date.now())}. Rings in the box: <span class="print-blank" /> by <span class="print-blank" />
          </p>
        </div>
        {link && <Code text={link} />}
      </section>
      <p>
        <PrintButton what="label" />
      </p>
      <p class="label-words">It prints 95 mm wide, for the lid of a box. The code carries the job, but for its gauge readings.</p>
    </>
  );
}
