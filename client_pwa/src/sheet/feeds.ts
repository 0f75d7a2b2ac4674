/** What one calculation takes from another when the sheet does not say it: the ring that was designed is
 * the ring that is looked at on the wall, inspected and run. */

import type { Answer } from "../engine/answers";
import type { CalculationName, FigureName, InputName } from "../engine/names";
import { fieldNamed, isKnown } from "../engine/tables";
import type { Key } from "../engine/tables";
import type { Inputs } from "../book/job";
import { system } from "../base/settings";

/** What is a figure of one calculation and an input of another. */
type Shared = FigureName & InputName;

export interface Feed {
  from: CalculationName;
  /** Figures taken under the same name. */
  names: readonly Shared[];
  /** Taken as well unless one of the others of its kind is given. */
  target?: { name: Shared; unless: readonly InputName[] };
}

const RING: readonly Shared[] = ["radial_thickness", "ring_width", "closed_gap"];
const TARGET: Feed["target"] & object = { name: "wall_pressure", unless: ["wall_pressure", "free_gap", "former_ratio"] };

export const FEEDS: Readonly<Partial<Record<CalculationName, Feed>>> = {
  "wall-pressure": { from: "sizing", names: RING, target: TARGET },
  running: { from: "sizing", names: [...RING, "piston_diameter", "side_clearance", "wall_pressure"] },
  "bore-survey": { from: "sizing", names: ["radial_thickness", "ring_width"], target: TARGET },
};

/** The same question put in another way: the wall once more with steam behind the ring. */
export interface Variant {
  calculation: CalculationName;
  with(inputs: Inputs): Inputs;
}

/** What the core takes for an input that is not given, as text for the sheet. */
function usualText(name: InputName): string {
  const field = fieldNamed(name);
  return field?.usual === undefined ? "" : `${field.usual} ${field.unit ?? ""}`.trim();
}

const VARIANTS: Readonly<Partial<Record<Key, Variant>>> = {
  "wall-pressure@steam": {
    calculation: "wall-pressure",
    with: (inputs) => ({
      ...inputs,
      pressure_behind: inputs.pressure_behind ?? inputs.steam_pressure ?? usualText("steam_pressure"),
    }),
  },
  "wall-pressure@cold": {
    calculation: "wall-pressure",
    with: ({ pressure_behind: _left, face_pressure: _out, ...inputs }) => inputs,
  },
};

/** What stands behind a key such as "wall-pressure@steam", "bars@bronze", "drawing@former@A4" or "drawing@operation:slit:2", of the second ring. */
export function variantOf(key: string): Variant | undefined {
  const known = VARIANTS[key as Key];
  if (known) return known;
  const [calculation, part, paper] = key.split("@");
  if (!calculation || !part || !isKnown(calculation)) return undefined;
  if (calculation === "bars") return { calculation, with: () => ({ metal: part, sizes: system.value }) };
  const [named, operation, ring] = part.split(":");
  return {
    calculation,
    with: (inputs) => ({ ...inputs, part: named!, ...(operation ? { operation } : {}), ...(ring ? { drawn_ring: ring } : {}), paper: paper ?? "screen", dimensions: system.value }),
  };
}

/** `request` with what the feed has for it; what the sheet says stays. */
export function fed(request: Record<string, unknown>, feed: Feed, answer: Answer, known: ReadonlySet<string>): Record<string, unknown> {
  const next = { ...request };
  for (const name of feed.names) {
    const figure = answer.figures[name];
    if (!(name in next) && figure && known.has(name)) next[name] = figure.value;
  }
  const { target } = feed;
  const figure = target && answer.figures[target.name];
  if (target && figure && known.has(target.name) && !target.unless.some((name) => name in request)) {
    next[target.name] = figure.value;
  }
  return next;
}
