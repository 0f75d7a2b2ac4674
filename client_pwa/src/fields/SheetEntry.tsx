/** An input of the open sheet by its name, wherever a screen wants it. */

import type { Fault } from "../engine/answers";
import type { CalculationName, InputName } from "../engine/names";
import { fieldNamed } from "../engine/tables";
import type { Input } from "../book/job";
import { inputFor, setInputFor } from "../sheet/sheet";
import { FieldEntry } from "./FieldEntry";
import { ListEntry } from "./ListEntry";
import { labelOf } from "../engine/labels";

interface Props {
  name: InputName;
  calculation: CalculationName;
  faults: readonly Fault[];
  label?: string;
  placeholder?: string;
  taken?: number | undefined;
  /** For a list: what one of its entries is called. */
  rowName?: string;
}

export function SheetEntry({ name, calculation, faults, label, placeholder, taken, rowName }: Props) {
  const field = fieldNamed(name, [calculation]);
  if (!field) return null;
  const common = {
    field,
    value: inputFor(calculation, name),
    label: label ?? labelOf(name, calculation),
    faults,
    path: [name],
    onChange: (value: Input | undefined) => setInputFor(calculation, name, value),
  };
  if (field.kind === "records") {
    return <ListEntry {...common} Entry={FieldEntry} {...(rowName === undefined ? {} : { rowName })} />;
  }
  return (
    <FieldEntry
      {...common}
      {...(placeholder === undefined ? {} : { placeholder })}
      {...(taken === undefined ? {} : { taken })}
    />
  );
}
