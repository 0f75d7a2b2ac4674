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
      inch_sizes: true,
      steam_pressure: "120 psi",
      ring_type: "double-turn",
      rings: "2",
      stroke: "4 in",
      speed: "280 rpm",
      worn_gap: "40 thou",
      readings: [
        { height: "10 mm", direction: "0", diameter: "3.1255 in" },
        { height: "10 mm", direction: "90", diameter: "3.1265 in" },
        { height: "55 mm", direction: "0", diameter: "3.1260 in" },
        { height: "55 mm", direction: "90", diameter: "3.1275 in" },
        { height: "100 mm", direction: "0", diameter: "3.1255 in" },
        { height: "100 mm", direction: "90", diameter: "3.1260 in" },
      ],
      measured_free_gap: "6.4 mm",
      piston_valve: { bore: "1 1/2 in", port_width: "5/16 in" },
    },
  };
}
