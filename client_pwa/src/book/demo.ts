/** The demonstration job: an invented launch engine of an invented club, numbers of our own. */

import { newJob } from "./job";
import type { Job } from "./job";

export const DEMO_ID = "demo-marigold";

export function demoJob(): Job {
  return {
    ...newJob("Launch engine Marigold"),
    id: DEMO_ID,
    demo: true,
    notes: "Demonstration: an invented engine of the Fernhollow Steam Club. Change anything, or start a job of your own.",
    inputs: {
      bore: "3 1/8 in",
      steam_pressure: "120 psi",
      ring_type: "double-turn",
      rings: "2",
      stroke: "4 in",
      speed: "280 1/min",
      worn_gap: "40 thou",
    },
  };
}
