/** The route card: the operations in order, each to be ticked off at the bench, and to be printed. */

import type { Operation, Quantity } from "../engine/answers";
import { fieldsOf } from "../engine/tables";
import { Cautions } from "../figures/Cautions";
import { Choices } from "../figures/Choices";
import { Findings } from "../figures/Findings";
import { inView } from "../figures/results";
import { SizeTable } from "../figures/SizeTable";
import { Status } from "../figures/Status";
import { PrintButton, PrintHead } from "../shell/Print";
import { system } from "../shell/settings";
import { change, job } from "../sheet/sheet";
import { shown } from "../units/show";

export function RouteScreen() {
  const view = inView("route");
  const operations = (view.answer?.operations ?? []) as Operation[];
  const shared = new Set([...fieldsOf("sizing"), ...fieldsOf("tooling")].map((field) => field.name));
  const own = fieldsOf("route").filter((field) => !shared.has(field.name));
  const done = new Set(job.value.done);
  const left = operations.filter((operation) => !done.has(operation.number)).length;
  return (
    <div class="route">
      <Status result={view.result} />
      {view.answer && (
        <>
          <PrintHead title="Route card" />
          <div class="route-top">
            <p class="route-left" role="status">
              {left === 0 ? "All operations are ticked off." : `${left} of ${operations.length} operations to do.`}
            </p>
            <PrintButton what="route card" />
          </div>
          <Cautions cautions={view.answer.cautions} />
          <ol class={view.stale ? "operations stale" : "operations"}>
            {operations.map((operation) => (
              <OneOperation key={operation.number} operation={operation} done={done.has(operation.number)} />
            ))}
          </ol>
          <Findings findings={view.answer.findings} />
        </>
      )}
      <Choices title="Chosen for the card, and yours to change" fields={own} answer={view.answer} faults={view.faults} />
    </div>
  );
}

function OneOperation({ operation, done }: { operation: Operation; done: boolean }) {
  return (
    <li class={done ? "operation operation-done" : "operation"}>
      <div class="operation-head">
        <span class="operation-number" aria-hidden="true">
          {operation.number}
        </span>
        <h2>{operation.title}</h2>
        <label class="operation-tick">
          <input type="checkbox" checked={done} aria-label={`Operation ${operation.number}, ${operation.title}, done`} onChange={() => toggle(operation.number)} />
          <span aria-hidden="true">done</span>
        </label>
      </div>
      <p>{operation.text}</p>
      <SizeTable sizes={operation.sizes} place={`route/${operation.number}`} caption={`Sizes for operation ${operation.number}`} />
      <dl class="operation-facts">
        {operation.tool && <Fact name="Tool">{operation.tool}</Fact>}
        <QuantityFact name="Speed" quantity={operation.speed} />
        <QuantityFact name="Feed" quantity={operation.feed} />
        <QuantityFact name="About" quantity={operation.time} />
        {operation.check && <Fact name="Check">{operation.check}</Fact>}
      </dl>
      {operation.cautions.length > 0 && (
        <ul class="operation-cautions" aria-label="Take care">
          {operation.cautions.map((caution) => (
            <li key={caution.key}>{caution.text}</li>
          ))}
        </ul>
      )}
    </li>
  );
}

function Fact({ name, children }: { name: string; children: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

function QuantityFact({ name, quantity }: { name: string; quantity: Quantity | undefined | null }) {
  if (!quantity) return null;
  const text = shown(quantity.value, quantity.unit, system.value, name);
  return <Fact name={name}>{`${text.text} ${text.unit}`}</Fact>;
}

function toggle(number: number): void {
  const done = job.peek().done;
  change({ done: done.includes(number) ? done.filter((each) => each !== number) : [...done, number] });
}
