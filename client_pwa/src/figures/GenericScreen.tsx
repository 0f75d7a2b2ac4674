/** A screen made of nothing but what the core declares: the inputs that are not on another screen, the
 * figures, the findings. A new calculation is on the phone with this; its own picture can follow. */

import type { ComponentChildren } from "preact";
import type { CalculationName, FigureName, InputName } from "../engine/names";
import { fieldsOf } from "../engine/tables";
import { SheetEntry } from "../fields/SheetEntry";
import { Cautions } from "./Cautions";
import { Choices } from "./Choices";
import { FigureRows } from "./Figures";
import { Findings } from "./Findings";
import { Moved } from "./Moved";
import { inView, isOf } from "./results";
import type { InView } from "./results";
import { Status } from "./Status";

interface Props {
  calculation: CalculationName;
  /** Inputs to stand open at the top. */
  first?: readonly InputName[];
  /** Inputs that another screen of the same sheet shows. */
  elsewhere?: readonly (InputName | "")[];
  rowNames?: Readonly<Partial<Record<InputName, string>>>;
  /** Figures to leave to the screen's own picture. */
  without?: readonly FigureName[];
  figuresTitle?: string;
  /** The checks before the screen's own: it ends in a verdict. */
  checksFirst?: boolean;
  /** Entries of the screen's own, above those of `first`. */
  top?(view: InView): ComponentChildren;
  children?(view: InView): ComponentChildren;
  below?(view: InView): ComponentChildren;
}

export function GenericScreen({ calculation, first = [], elsewhere = [], rowNames = {}, without = [], figuresTitle = "Figures", checksFirst = false, top, children, below }: Props) {
  const view = inView(calculation);
  const fields = fieldsOf(calculation);
  const rest = fields.filter((field) => !(first as readonly string[]).includes(field.name) && !elsewhere.includes(field.name));
  const figures = view.answer?.figures ?? {};
  const names = (Object.keys(figures) as FigureName[]).filter((name) => !without.includes(name));
  const checks = <Findings findings={view.answer?.findings ?? []} of={calculation} />;
  return (
    <div class="two">
      <div class="two-left">
        {(first.length > 0 || top) && (
          <form class="card top-entries" onSubmit={(event) => event.preventDefault()}>
            {top?.(view)}
            {first.map((name) => (
              <SheetEntry
                key={name}
                name={name}
                calculation={calculation}
                faults={view.faults}
                taken={takenFor(view, name)}
                {...(rowNames[name] === undefined ? {} : { rowName: rowNames[name] })}
              />
            ))}
          </form>
        )}
        <Status result={view.result} calculation={calculation} shownAt={(fault) => isOf(first, fault) || (top !== undefined && isOf(elsewhere, fault))} />
        <Moved view={view} />
        {checksFirst && checks}
        {children?.(view)}
      </div>
      <div class="two-right">
        {!checksFirst && checks}
        {names.length > 0 && (
          <section class="card" aria-label={figuresTitle}>
            <h2>{figuresTitle}</h2>
            <FigureRows figures={figures} names={names} stale={view.stale} />
          </section>
        )}
        {below?.(view)}
        <Choices calculation={calculation} title="Chosen, yours to change" fields={rest} answer={view.answer} faults={view.faults} />
        <Cautions cautions={view.answer?.cautions ?? []} />
      </div>
    </div>
  );
}

/** What is taken where nothing is entered, in the core's unit. */
function takenFor(view: InView, name: string): number | undefined {
  const choice = view.answer?.chosen.find((each) => each.input === name);
  return typeof choice?.value === "number" ? choice.value : undefined;
}
