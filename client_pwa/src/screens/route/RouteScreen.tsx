/** The route card: the operations in order, each to be ticked off at the bench, and to be printed. */

import { useEffect } from "preact/hooks";
import type { Caution, Operation, Quantity, RingSoFar, Size } from "../../engine/answers";
import { fieldsOf } from "../../engine/tables";
import { Drawing } from "../../drawings/Drawing";
import { Cautions } from "../../figures/Cautions";
import { Choices } from "../../figures/Choices";
import { Findings } from "../../figures/Findings";
import { GuideLink } from "../../figures/GuideLink";
import { inView } from "../../figures/results";
import { SizeTable } from "../../figures/SizeTable";
import { Status } from "../../figures/Status";
import { PrintButton } from "../../base/Print";
import { addressOf, place } from "../../base/routes";
import { system } from "../../base/settings";
import { change, job } from "../../sheet/sheet";
import { shown } from "../../units/show";

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
              <OneOperation key={operation.key} operation={operation} rings={rings} done={done.has(operation.key)} said={cautionsOf(operations.slice(0, at))} />
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

const cautionsOf = (operations: readonly Operation[]): string[] => operations.flatMap((operation) => operation.cautions.map((caution) => caution.key));

/** A size as each ring's own card has it. */
const ownSizes = (rings: readonly RingSoFar[], operation: string, size: Size): Map<number, Size> =>
  new Map(
    rings.flatMap(({ ring, sizes }) => {
      const own = sizes.find((each) => each.operation === operation && each.name === size.name);
      return own ? [[ring, { ...size, value: own.value, ...(own.limits ? { limits: own.limits } : {}) }] as const] : [];
    }),
  );

interface OneOperationProps {
  operation: Operation;
  rings: readonly RingSoFar[];
  done: boolean;
  said: readonly string[];
}

function OneOperation({ operation, rings, done, said }: OneOperationProps) {
  const again = operation.cautions.filter((caution) => said.includes(caution.key));
  return (
    <li id={`operation-${operation.key}`} class={done ? "operation operation-done" : "operation"}>
      <div class="operation-head">
        <span class="operation-number" aria-hidden="true">
          {operation.number}
        </span>
        <h2>
          <GuideLink topic={`operation-${operation.key}`}>{operation.title}</GuideLink>
        </h2>
        <label class="operation-tick">
          <input type="checkbox" checked={done} aria-label={`Operation ${operation.number}, ${operation.title}, done`} onChange={() => toggle(operation.key)} />
          <span aria-hidden="true">done</span>
        </label>
      </div>
      <p>{operation.text}</p>
      <SizeTable
        sizes={operation.sizes}
        place={`route/${operation.key}`}
        caption={`Sizes for operation ${operation.number}`}
        own={(size) => ownSizes(rings, operation.key, size)}
      />
      <dl class="operation-facts">
        {operation.hold && <Fact name="Hold">{operation.hold}</Fact>}
        {operation.tool && <Fact name="Tool">{operation.tool}</Fact>}
        <QuantityFact name="Speed" quantity={operation.speed} and={operation.surface_speed} />
        <QuantityFact name="Feed" quantity={operation.feed} {...(operation.feed_per ? { per: operation.feed_per } : {})} />
        {operation.passes !== undefined && operation.passes > 1 && <Fact name="Passes">{String(operation.passes)}</Fact>}
        <QuantityFact name="Time" quantity={operation.time} {...(operation.each_ring ? { per: "ring" } : {})} />
        {operation.check && <Fact name="Check">{operation.check}</Fact>}
      </dl>
      <CautionList cautions={operation.cautions.filter((caution) => !again.includes(caution))} />
      {again.length > 0 && (
        <details class="cautions-again">
          <summary>Take care as before: {again.map((caution) => caution.key.replaceAll("-", " ")).join(", ")}</summary>
          <CautionList cautions={again} />
        </details>
      )}
    </li>
  );
}

/** In full where they first come up; later by name, to be opened. */
function CautionList({ cautions }: { cautions: readonly Caution[] }) {
  if (cautions.length === 0) return null;
  return (
    <ul class="operation-cautions" aria-label="Take care">
      {cautions.map((caution) => (
        <li key={caution.key}>{caution.text}</li>
      ))}
    </ul>
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

interface QuantityFactProps {
  name: string;
  quantity: Quantity | undefined | null;
  and?: Quantity | undefined;
  per?: string;
}

function QuantityFact({ name, quantity, and, per }: QuantityFactProps) {
  if (!quantity) return null;
  const text = shown(quantity.value, quantity.unit, system.value, name);
  const more = and && shown(and.value, and.unit, system.value, name);
  return <Fact name={name}>{`${text.text} ${text.unit}${per ? ` each ${per}` : ""}${more ? ` (${more.text} ${more.unit})` : ""}`}</Fact>;
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
