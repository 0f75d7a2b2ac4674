/** What every entry of a form is given, and how its faults find it. */

import type { Input } from "../book/job";
import type { Fault } from "../engine/answers";
import type { Field } from "../engine/tables";

export interface FieldEntryProps {
  field: Field;
  value: Input | undefined;
  faults: readonly Fault[];
  /** From the top of the request; names the entry for its faults and its id. */
  path: readonly (string | number)[];
  onChange(value: Input | undefined): void;
  placeholder?: string;
  /** What is taken where nothing is entered, in the core's unit: it stands in the empty place, in the entry's own. */
  taken?: number;
  label?: string;
  hideLabel?: boolean;
}

export function samePath(one: readonly (string | number)[], other: readonly (string | number)[]): boolean {
  return one.length === other.length && one.every((step, index) => step === other[index]);
}
