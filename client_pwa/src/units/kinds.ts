/** The units a person may use for each kind of input; which they are, their spellings and what each is in the
 * core's unit stand in quantity.json, written by the service (`python -m ringwright.units.write`). */

import { nearest } from "./ratio";
import type { Ratio } from "./ratio";
import quantity from "./quantity.json";

export interface Unit {
  /** As it is stored beside a number. */
  name: string;
  /** In the core's unit, exact: value * over / under + offset. */
  factor: Ratio;
  offset: Ratio | undefined;
  /** The same as doubles, for what is only said: value * scale + zero. */
  scale: number;
  zero: number;
}

interface Written {
  unit: string;
  how: string;
  units: readonly { name: string; factor: string; offset?: string; offered?: boolean; also?: readonly string[] }[];
}

export interface Kind {
  /** The core's unit, in which a number is taken that names none. */
  core: string;
  /** Every text of the kind that is read. */
  pattern: RegExp;
  /** What to write, in words. */
  how: string;
  /** Units that the app lists. */
  offered: readonly Unit[];
  /** Every unit by every one of its spellings. */
  spelled: ReadonlyMap<string, Unit>;
  /** Every unit once, by its own name. */
  names: readonly string[];
}

const WRITTEN = quantity.kinds as Readonly<Record<string, Written>>;
const { space: SPACE } = quantity;
/** A number at the beginning of a text. */
export const LEADING = new RegExp(`^${SPACE}*${quantity.number}`);
const KINDS = new Map<string, Kind>();
const NO_KIND = "number";

/** A kind that has no units of its own is a plain number. */
export function kindOf(kind: string): Kind {
  const known = KINDS.get(kind);
  if (known) return known;
  const made = kindMade(WRITTEN[kind] ?? WRITTEN[NO_KIND]!);
  KINDS.set(kind, made);
  return made;
}

function kindMade(written: Written): Kind {
  const spelled = new Map<string, Unit>();
  const offered: Unit[] = [];
  for (const each of written.units) {
    const factor = ratio(each.factor);
    const offset = each.offset === undefined ? undefined : ratio(each.offset);
    const unit: Unit = { name: each.name, factor, offset, scale: nearest(factor), zero: offset ? nearest(offset) : 0 };
    for (const spelling of [each.name, ...(each.also ?? [])]) spelled.set(spelling, unit);
    if (each.offered) offered.push(unit);
  }
  return { core: written.unit, pattern: patternOf([...spelled.keys()]), how: written.how, offered, spelled, names: written.units.map((unit) => unit.name) };
}

/** Every text of a number with one of these units, or none; one that begins like a number stands apart from it. */
function patternOf(spellings: readonly string[]): RegExp {
  const any = (least: number, names: readonly string[]): string[] =>
    names.length === 0 ? [] : [`${SPACE}{${least},2}(${[...names].sort((one, other) => other.length - one.length).join("|")})`];
  const apart = (name: string): boolean => /^\d/.test(name);
  const unit = [...any(0, spellings.filter((name) => !apart(name))), ...any(1, spellings.filter(apart))].join("|");
  return new RegExp(`^${SPACE}{0,4}${quantity.number}${unit ? `(?:${unit})?` : ""}${SPACE}{0,4}$`);
}

function ratio(text: string): Ratio {
  const [over = "", under = "1"] = text.split("/");
  return { over: BigInt(over), under: BigInt(under) };
}

/** What the unit list shows for a unit whose stored name is a code. */
const SHOWN: Readonly<Record<string, string>> = {
  degC: "°C",
  degF: "°F",
  deg: "°",
  MPa: "N/mm²",
  "ppm/K": "millionths per °C",
  mm2: "mm²",
  in2: "in²",
  "kg/m3": "kg/m³",
  "lb/in3": "lb/in³",
  "1/K": "per °C",
  "1/degF": "per °F",
  "1/min": "rpm",
  "money/kg": "per kg",
  "money/lb": "per lb",
  money: "your currency",
  "1": "",
};

/** The units that are listed for a kind. */
export function unitsOf(kind: string): readonly Unit[] {
  return kindOf(kind).offered;
}

export function shownUnit(name: string): string {
  return SHOWN[name] ?? name;
}

/** The unit of that kind which is so written. */
export function unitNamed(kind: string, written: string): Unit | undefined {
  return kindOf(kind).spelled.get(written);
}

const USUAL: Readonly<Record<string, readonly [metric: string, inch: string]>> = {
  length: ["mm", "in"],
  area: ["mm2", "in2"],
  pressure: ["bar", "psi"],
  steam_pressure: ["bar", "psi"],
  // What a ring presses with is given back in N/mm2, and is not steam.
  wall_pressure: ["MPa", "psi"],
  expander_pressure: ["MPa", "psi"],
  temperature: ["degC", "degF"],
  modulus: ["GPa", "psi"],
  force: ["N", "lbf"],
  mass: ["kg", "lb"],
  surface_speed: ["m/min", "ft/min"],
  expansion: ["ppm/K", "ppm/K"],
  density: ["kg/m3", "lb/in3"],
  price: ["money/kg", "money/lb"],
};

/** The unit a person of that habit expects to type first. */
export function usualUnit(kind: string, system: "metric" | "inch", name = kind): string {
  return (USUAL[name] ?? USUAL[kind])?.[system === "inch" ? 1 : 0] ?? unitsOf(kind)[0]?.name ?? "";
}
