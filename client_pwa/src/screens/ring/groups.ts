/** How the many inputs of a ring are grouped for the eye. What no group names comes last, under its own
 * heading, so that nothing the core adds can go unseen. Figures stand in the groups that the core gives them. */

import type { InputName } from "../../engine/names";

export interface Group {
  title: string;
  names: readonly (InputName | "")[];
}

export const INPUT_GROUPS: readonly Group[] = [
  { title: "The ring", names: ["rings", "radial_thickness", "ring_width", "end_cut", "closed_gap"] },
  { title: "What to aim at", names: ["wall_pressure", "free_gap", "former_ratio", "shelf_former"] },
  { title: "Materials and heat", names: ["ring_material", "modulus", "cylinder_material", "piston_material", "steam_temperature", "shop_temperature"] },
  { title: "Piston and groove", names: ["groove_width", "measured_groove_width", "groove_depth", "piston_diameter"] },
  { title: "How it is set and turned", names: ["setting", "finishing", "relief"] },
];

/** The groups with only the names there are, and a last one for what no group names. */
export function grouped(groups: readonly Group[], names: readonly (InputName | "")[], rest: string): Group[] {
  const named = new Set(groups.flatMap((group) => group.names));
  const found = groups.map((group) => ({ title: group.title, names: group.names.filter((name) => names.includes(name)) }));
  const others = names.filter((name) => !named.has(name));
  return [...found, { title: rest, names: others }].filter((group) => group.names.length > 0);
}
