/** An input of the open sheet by its name, wherever a screen wants it. */

import type { Fault } from "../engine/answers";
import { fieldNamed } from "../engine/tables";
import { inputs, setInput } from "../sheet/sheet";
import { FieldEntry } from "./FieldEntry";
import { ListEntry } from "./ListEntry";
import { labelOf } from "./labels";

interface Props {
  name: string;
  calculation?: string;
  faults: readonly Fault[];
  label?: string;
  placeholder?: string;
  /** For a list: what one of its entries is called. */
  rowName?: string;
}

export function SheetEntry({ name, calculation, faults, label, placeholder, rowName }: Props) {
  const field = fieldNamed(name, calculation ? [calculation] : undefined);
  if (!field) return null;
  const common = {
    field,
    value: inputs.value[name],
    faults,
    path: [name],
    onChange: (value: Parameters<typeof setInput>[1]) => setInput(name, value),
  };
  if (field.kind === "records") {
    return <ListEntry {...common} label={label ?? labelOf(name)} {...(rowName === undefined ? {} : { rowName })} />;
  }
  return (
    <FieldEntry
      {...common}
      {...(label === undefined ? {} : { label })}
      {...(placeholder === undefined ? {} : { placeholder })}
    />
  );
}
