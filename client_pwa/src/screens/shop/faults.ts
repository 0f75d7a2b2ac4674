/** What of a shop's entry cannot be read, said at the entry; what it may not be the job says that uses it. */

import type { Input } from "../../book/job";
import type { Fault } from "../../engine/answers";
import type { Field } from "../../engine/tables";
import { assemble } from "../../sheet/request";
import { typing } from "../../sheet/typing";

export function faultsIn(field: Field, value: Input | undefined, under: readonly (string | number)[] = []): Fault[] {
  if (value === undefined || typing.value) return [];
  return assemble([field], { [field.name]: value }).faults.map((fault) => ({ ...fault, path: [...under, ...fault.path] }));
}
