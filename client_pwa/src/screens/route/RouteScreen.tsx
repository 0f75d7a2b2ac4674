/** The route card: the operations in order, each to be ticked off at the bench, and to be printed. */

import { useEffect } from "preact/hooks";
import type { Operation, RingSoFar } from "../../engine/answers";
import { fieldsOf } from "../../engine/tables";
import { Drawing } from "../../drawings/Drawing";
import { Cautions } from "../../figures/Cautions";
import { Choices } from "../../figures/Choices";
import { Findings } from "../../figures/Findings";
import { OneOperation } from "../../figures/OneOperation";
import { inView } from "../../figures/results";
import { Status } from "../../figures/Status";
import { PrintButton } from "../../base/Print";
import { addressOf, place } from "../../base/routes";
import { change, job } from "../../sheet/sheet";

export function RouteScreen() {
  const view = inView("route");
  const operations = (view.answer?.operations ?? []) as Operation[];
  const shared = new Set([...fieldsOf("sizing"), ...fieldsOf("tooling")].map((field) => field.name));
  const own = fieldsOf("route").filter((field) => !shared.has(field.name));
  const rings = (view.answer?.rings ?? []) as RingSoFar[];
  const done = new Set(job.value.done);
  const left = operations.filter((operation) => !done.has(operation.key)).length;
  const { topic } = place.value;
  const ready = operations.length > 0;
  // Back from the guide, the card lies open where it was left.
  useEffect(() => {
    if (topic && ready) requestAnimationFrame(() => showOperation(topic));
  }, [topic, ready]);
  return (
    <div class="route">
      <Status result={view.result} />
      {view.answer && (
        <>
          <div class="route-top">
            <p class="route-left" role="status">
              {left === 0 ? "All operations are ticked off." : `${left} of ${operations.length} operations to do.`}
            </p>
            <a class="main-action button" href={addressOf("work", job.value.id)}>
              Work through it
            </a>
            <PrintButton what="route card" />
          </div>
          <Cautions cautions={view.answer.cautions} />
          <ol class={view.stale ? "operations stale" : "operations"}>
            {operations.map((operation, at) => (
              <OneOperation key={operation.key} card="route" operations={operations} place={at} rings={rings} done={done.has(operation.key)} onTick={toggle} />
            ))}
          </ol>
          <div class="card drawings">
            <h2>Drawings for the bench</h2>
            <Drawing part="blank" title="The blank" />
            <Drawing part="template" title="Template to wrap round the blank, full size" />
            <Drawing part="rotary-table" title="Set up on the rotary table" />
          </div>
          <Findings findings={view.answer.findings} />
        </>
      )}
      <Choices calculation="route" title="Chosen, yours to change" fields={own} answer={view.answer} faults={view.faults} />
    </div>
  );
}

function showOperation(topic: string): void {
  const operation = document.getElementById(topic);
  operation?.scrollIntoView();
  operation?.querySelector("a")?.focus({ preventScroll: true });
}

function toggle(key: string): void {
  const done = job.peek().done;
  change({ done: done.includes(key) ? done.filter((each) => each !== key) : [...done, key] });
}
