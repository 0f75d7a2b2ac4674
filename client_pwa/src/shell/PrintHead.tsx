/** The head of a printed sheet: whose figures these are, and of which day. */

import { system } from "../base/settings";
import { job } from "../sheet/sheet";

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
