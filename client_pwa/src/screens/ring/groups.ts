/** How the many inputs and figures of a ring are grouped for the eye. What no group names comes last, under
 * its own heading, so that nothing the core adds can go unseen. */

export interface Group {
  title: string;
  names: readonly string[];
}

export const INPUT_GROUPS: readonly Group[] = [
  { title: "The ring", names: ["rings", "radial_thickness", "ring_width", "end_cut", "closed_gap"] },
  { title: "What to aim at", names: ["wall_pressure", "free_gap", "former_ratio", "shelf_former"] },
  { title: "Materials and heat", names: ["ring_material", "modulus", "cylinder_material", "piston_material", "steam_temperature", "shop_temperature"] },
  { title: "Piston and groove", names: ["groove_width", "groove_depth", "piston_diameter"] },
  { title: "How it is set and turned", names: ["setting", "finishing", "relief"] },
];

export const FIGURE_GROUPS: readonly Group[] = [
  { title: "Sizes", names: ["radial_thickness", "ring_width", "turn_width", "inside_diameter", "free_gap", "closed_gap", "closed_gap_thumb_rule", "former_ratio"] },
  { title: "How it bears on the wall", names: ["wall_pressure", "contact_pressure", "widest_light", "slack_angle", "tangential_force", "diametral_force", "grip_force"] },
  { title: "What strains it", names: ["closed_stress", "sprung_on_stress", "wound_on_stress", "turning_through_stress"] },
  { title: "Groove and piston", names: ["groove_width", "groove_depth", "side_clearance", "back_clearance", "piston_diameter"] },
];

/** The groups with only the names there are, and a last one for what no group names. */
export function grouped(groups: readonly Group[], names: readonly string[], rest: string): Group[] {
  const named = new Set(groups.flatMap((group) => group.names));
  const found = groups.map((group) => ({ title: group.title, names: group.names.filter((name) => names.includes(name)) }));
  const others = names.filter((name) => !named.has(name));
  return [...found, { title: rest, names: others }].filter((group) => group.names.length > 0);
}
