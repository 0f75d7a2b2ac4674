/** The thumb rules of the trade on the ring of this sheet: which hold, and what each would do to it. */

import type { Answer, Figure, Figures } from "../../engine/answers";
import type { FigureName, InputName } from "../../engine/names";
import { fieldsOf } from "../../engine/tables";
import { SheetEntry } from "../../fields/SheetEntry";
import { Cautions } from "../../figures/Cautions";
import { FigureRows, FigureTile } from "../../figures/Figures";
import { Mark } from "../../figures/Findings";
import { inView, isOf } from "../../figures/results";
import { Status } from "../../figures/Status";

interface Rule extends Partial<Record<FigureName, Figure>> {
  rule: string;
  title: string;
  source: string;
  verdict: string;
  why: string;
}

const FIRST: readonly InputName[] = ["bore", "ring_type", "steam_pressure"];
const COUNTS: readonly [FigureName, string][] = [
  ["rules_held", "Hold"],
  ["rules_held_in_part", "In part"],
  ["rules_not_held", "Not here"],
];
const FIELDS = fieldsOf("thumb-rules").filter((field) => FIRST.includes(field.name as InputName));
const GIVES: readonly FigureName[] = [
  "thumb_size", "worked_size", "wall_pressure", "closed_stress", "sprung_on_stress", "tangential_force",
  "closed_gap_hot", "side_clearance_hot", "piston_clearance_hot",
];

export function ThumbScreen() {
  const { result, answer, faults, stale } = inView("thumb-rules");
  return (
    <div class="two">
      <div class="two-left">
        <form class="card top-entries" onSubmit={(event) => event.preventDefault()}>
          {FIELDS.map((field) => (
            <SheetEntry key={field.name} name={field.name as InputName} calculation="thumb-rules" faults={faults} />
          ))}
        </form>
        <Status result={result} calculation="thumb-rules" shownAt={(fault) => isOf(FIRST, fault)} />
        {answer && (
          <section class={stale ? "plate plate-three stale" : "plate plate-three"} aria-label="How many rules hold">
            {COUNTS.map(([name, label]) => {
              const figure = answer.figures[name];
              return figure && <FigureTile key={name} name={name} label={label} figure={figure} />;
            })}
          </section>
        )}
      </div>
      <div class="two-right">
        {answer && <Rules answer={answer} stale={stale} />}
        <Cautions cautions={answer?.cautions ?? []} />
      </div>
    </div>
  );
}

function Rules({ answer, stale }: { answer: Answer; stale: boolean }) {
  return (
    <section class="card" aria-label="Rule by rule">
      <h2>Rule by rule</h2>
      <p>A rule holds where no check of the ring comes out worse with it than with what is worked. All else stays as worked.</p>
      {((answer.rules ?? []) as Rule[]).map((rule) => (
        <details key={rule.rule} class="thumb-rule" data-rule={rule.rule}>
          <summary>
            <Mark outcome={answer.findings.find((finding) => finding.check === `${rule.rule}-thumb-rule`)?.outcome ?? "good"} />
            <span>
              {rule.title}: <b>{rule.verdict}</b>
            </span>
          </summary>
          <p>{rule.why}</p>
          <FigureRows figures={given(rule)} names={GIVES} stale={stale} />
          <p class="tool-why">The rule: {rule.source}.</p>
        </details>
      ))}
    </section>
  );
}

function given(rule: Rule): Figures {
  return Object.fromEntries(GIVES.flatMap((name) => (rule[name] ? [[name, rule[name]]] : [])));
}
