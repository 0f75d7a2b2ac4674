/** What stands in the place of figures while there are none, or why the ones shown are old. */

import type { Fault } from "../engine/answers";
import { fieldsOf } from "../engine/tables";
import { labelOf, pathWords, sentence } from "../engine/labels";
import { addressOf, place } from "../base/routes";
import { job } from "../sheet/sheet";
import type { Result } from "../sheet/sheet";

export function Status({ result, calculation, shownAt }: { result: Result; calculation?: string; shownAt?: (fault: Fault) => boolean }) {
  switch (result.state) {
    case "waiting":
      return (
        <p class="status" role="status">
          Working it out…
        </p>
      );
    case "incomplete":
      return (
        <div class="status" role="status">
          {result.words ?? `Enter ${listWords(result.missing.map((name) => "the " + labelOf(name, calculation).toLowerCase()))} to see figures.`}
          {calculation !== "piston-valve" && <ToRing names={result.missing} />}
        </div>
      );
    case "faults": {
      const elsewhere = result.faults.filter((fault) => !shownAt?.(fault));
      return (
        <div class="status status-fault" role="status">
          <p>
            <b>An entry has to be mended first.</b>
            {result.before && " Figures below are those from before it."}
          </p>
          <ul>
            {elsewhere.map((fault, index) => (
              <li key={index}>
                {fault.path.length > 0 && <b>{pathWords(fault.path)}: </b>}
                {sentence(fault.message)} {sentence(fault.remedy)}
              </li>
            ))}
          </ul>
          <ToRing names={elsewhere.map((fault) => fault.path[0])} />
        </div>
      );
    }
    case "broken":
      return (
        <p class="status status-fault" role="alert">
          <b>This could not be worked.</b> {result.message} Your entries are kept. Change an entry to try again; if it stays so, save the job
          out as a file and report it.
        </p>
      );
    default:
      return null;
  }
}

/** The way to an entry that is made with the ring. */
function ToRing({ names }: { names: readonly (string | number | undefined)[] }) {
  const there = fieldsOf("sizing").some((field) => names.includes(field.name));
  return there && place.value.screen !== "ring" ? <a href={addressOf("ring", job.value.id)}>Go to the ring</a> : null;
}

function listWords(words: readonly string[]): string {
  if (words.length < 2) return words.join("");
  return words.slice(0, -1).join(", ") + " and " + words[words.length - 1];
}
