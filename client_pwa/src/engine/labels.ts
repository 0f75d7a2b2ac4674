/** What an input is called on the screen. The core's names are words already; a few need more than their
 * underscores taken out. Figures have the labels that the core gives them. */

import type { CalculationName, InputName } from "./names";
import { figureLabel, isFigure } from "./tables";

const LABELS: Readonly<Partial<Record<InputName | `${CalculationName}/${InputName}`, string>>> = {
  measured_free_gap: "Free gap",
  measured_force: "Scale reading",
  measured_closed_gap: "Closed gap",
  measured_thickness: "Thickness",
  measured_light: "Light seen",
  measured_width: "Width",
  measured_across: "Free, across the gap",
  measured_along: "Free, along the gap",
  bars: "Bars in the rack",
  port_bars: "Bridge bars",
  port_bar_width: "Bridge bar width",
  cutting_effort: "Search for the cut list",
  ring_type: "Type of ring",
  rings: "Rings to make",
  rings_on_piston: "Rings on one piston",
  pressure_behind: "Steam behind the ring",
  end_cut: "Ends cut",
  setting: "Way of setting",
  finishing: "Held for finish-turning",
  relief: "Stress relief reached",
  ring_material: "Ring iron or bronze",
  modulus: "Modulus of elasticity",
  // A name that means something else in a calculation of its own.
  "piston-valve/bore": "Liner bore",
  "piston-valve/rings_on_piston": "Rings to a head",
  "piston-valve/joint_pinned": "A pin keeps the joint on a bar",
  "piston-valve/piston_diameter": "Valve across its lands",
  "piston-valve/piston_material": "Valve material",
  "piston-valve/cylinder_material": "Liner material",
};

/** Columns of the table of materials. */
const PROPERTIES: Readonly<Record<string, string>> = {
  modulus_low: "Modulus, least",
  modulus_high: "Modulus, most",
  poisson: "Poisson's ratio",
  expansion: "Expansion by heat",
  tensile_low: "Tensile strength, least",
  tensile_high: "Tensile strength, most",
  hottest: "Hottest in service",
};

export function labelOf(name: string, calculation = ""): string {
  const input = name as InputName;
  const known = LABELS[`${calculation as CalculationName}/${input}`] ?? LABELS[input] ?? PROPERTIES[name];
  if (known) return known;
  if (isFigure(name)) return figureLabel(name);
  const words = name.replace(/[_-]+/g, " ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Choices that are more than their letters. */
const CHOICES: Readonly<Record<string, string>> = {
  "double-turn": "Double-turn",
  "angled-45": "Angled 45°",
  "angled-60": "Angled 60°",
  hss: "High-speed steel",
};

/** A choice's word as shown: "grey-iron" is "Grey iron". What is no such word stays as it is. */
export function choiceWords(choice: string): string {
  if (!/^[a-z][a-z\d_-]*$/.test(choice)) return choice;
  return CHOICES[choice] ?? choice.charAt(0).toUpperCase() + choice.slice(1).replace(/[_-]/g, " ");
}

/** What the core says, as a sentence, with the names of inputs as they stand on the screen. */
export function sentence(text: string): string {
  const named = text.replace(/\b[a-z]+(_[a-z0-9]+)+\b/g, (name) => labelOf(name).toLowerCase());
  const head = named.charAt(0).toUpperCase() + named.slice(1);
  return /[.!?]$/.test(head) || head === "" ? head : head + ".";
}

/** A path in a request as words: "bars, row 2, length". */
export function pathWords(path: readonly (string | number)[]): string {
  return path.map((step) => (typeof step === "number" ? `row ${step + 1}` : labelOf(step))).join(", ");
}
