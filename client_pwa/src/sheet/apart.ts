/** Inputs of a part of the engine that is not the cylinder, kept apart under a name of their own on the same
 * sheet: the bore of the valve's liner is not the bore of the job. */

import type { Input, Inputs } from "../book/job";

interface Apart {
  /** The name on the sheet that holds them. */
  under: string;
  /** What the whole engine has in common stays with the job. */
  shared: readonly string[];
}

const APART: Readonly<Record<string, Apart>> = {
  "piston-valve": { under: "piston_valve", shared: ["steam_pressure", "steam_temperature", "back_pressure", "speed", "shop_temperature"] },
};

/** What this calculation sees of the sheet. */
export function seenBy(calculation: string, sheet: Inputs): Inputs {
  const apart = APART[calculation];
  if (!apart) return sheet;
  const common = apart.shared.flatMap((name) => (sheet[name] === undefined ? [] : [[name, sheet[name]] as const]));
  return { ...ownOf(apart, sheet), ...Object.fromEntries(common) };
}

/** What changes on the sheet when an input of this calculation does. */
export function changeOf(calculation: string, sheet: Inputs, name: string, value: Input | undefined): Record<string, Input | undefined> {
  const apart = APART[calculation];
  if (!apart || apart.shared.includes(name)) return { [name]: value };
  const own = { ...ownOf(apart, sheet) };
  if (value === undefined || value === "") delete own[name];
  else own[name] = value;
  return { [apart.under]: Object.keys(own).length > 0 ? own : undefined };
}

function ownOf(apart: Apart, sheet: Inputs): Inputs {
  const own = sheet[apart.under];
  return typeof own === "object" && !Array.isArray(own) ? own : {};
}
