/** Paper: the head of a printed sheet, and the button that prints it. */

import { job } from "../sheet/sheet";
import { system } from "./settings";

export function PrintHead({ title }: { title: string }) {
  const day = new Date(job.value.changed || Date.now()).toISOString().slice(0, 10);
  return (
    <div class="print-head" aria-hidden="true">
      <b>{title}</b>
      <span>{job.value.name}</span>
      <span>{typeof job.value.inputs.bore === "string" ? `Bore ${job.value.inputs.bore}` : ""}</span>
      <span>{system.value === "metric" ? "Sizes in mm" : "Sizes in inches"}</span>
      <span>Figures of {day}</span>
      <span class="print-blank">Made by</span>
      <span class="print-blank">Date</span>
    </div>
  );
}

export function PrintButton({ what }: { what: string }) {
  return (
    <button type="button" class="print-button" onClick={() => window.print()}>
      Print the {what}
    </button>
  );
}

/** What is folded on the screen stands open on paper; a drawing stays as the person left it. */
let unfolded: HTMLDetailsElement[] = [];

addEventListener("beforeprint", () => {
  unfolded = [...document.querySelectorAll<HTMLDetailsElement>("main details:not([open], .drawing, [data-asks])")];
  for (const each of unfolded) each.open = true;
});

addEventListener("afterprint", () => {
  for (const each of unfolded) each.open = false;
  unfolded = [];
});
