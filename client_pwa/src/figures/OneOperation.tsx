/** One operation of a card: how it is done, its sizes, what to check, what to be careful of. */

import type { Caution, Operation, Quantity, RingSoFar, Size } from "../engine/answers";
import { system } from "../base/settings";
import { shown } from "../units/show";
import { GuideLink } from "./GuideLink";
import { SizeTable } from "./SizeTable";

/** A size as each ring's own card has it. */
const ownSizes = (rings: readonly RingSoFar[], operation: string, size: Size): Map<number, Size> =>
  new Map(
    rings.flatMap(({ ring, sizes }) => {
      const own = sizes.find((each) => each.operation === operation && each.name === size.name);
      return own ? [[ring, { ...size, value: own.value, ...(own.limits ? { limits: own.limits } : {}) }] as const] : [];
    }),
  );

interface Props {
  /** Which card, as its measured sizes are kept. */
  card: "route" | "fitting";
  operations: readonly Operation[];
  place: number;
  rings?: readonly RingSoFar[];
  done?: boolean;
  /** Where there is a box to tick. */
  onTick?(key: string): void;
}

export function OneOperation({ card, operations, place, rings = [], done = false, onTick }: Props) {
  const operation = operations[place]!;
  const said = operations.slice(0, place).flatMap((each) => each.cautions.map((caution) => caution.key));
  const again = operation.cautions.filter((caution) => said.includes(caution.key));
  return (
    <li id={`operation-${operation.key}`} class={done ? "operation operation-done" : "operation"}>
      <div class="operation-head">
        <span class="operation-number" aria-hidden="true">
          {operation.number}
        </span>
        {/* The guide has the operations of making a ring. */}
        <h2>{card === "route" ? <GuideLink topic={`operation-${operation.key}`}>{operation.title}</GuideLink> : operation.title}</h2>
        {onTick && (
          <label class="operation-tick">
            <input type="checkbox" checked={done} aria-label={`Operation ${operation.number}, ${operation.title}, done`} onChange={() => onTick(operation.key)} />
            <span aria-hidden="true">done</span>
          </label>
        )}
      </div>
      <p>{operation.text}</p>
      <SizeTable
        sizes={operation.sizes}
        place={`${card}/${operation.key}`}
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
  return <Fact name={name}>{`${text.text} ${text.unit}${per ? ` a ${per}` : ""}${more ? ` (${more.text} ${more.unit})` : ""}`}</Fact>;
}
