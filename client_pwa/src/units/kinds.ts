/** The units a person may use for each kind of input, and what they are in the core's unit.
 *
 * Exact by definition: inch, pound, pound-force. A value in the core's unit is (typed + before) * factor. */

export interface Unit {
  /** As it is shown and as it is stored beside a number. */
  name: string;
  /** Other spellings taken when typed. */
  also: readonly string[];
  factor: number;
  before?: number;
  /** True where fractions such as 3 1/8 are the custom. */
  fractions?: boolean;
}

const POUND_FORCE = 4.4482216152605;
const PSI = 6894.757293168361e-6;

const LENGTH: readonly Unit[] = [
  { name: "mm", also: ["millimetre", "millimetres", "millimeter", "millimeters"], factor: 1 },
  { name: "in", also: ["inch", "inches", '"', "″", "''"], factor: 25.4, fractions: true },
  { name: "thou", also: ["mil", "mils"], factor: 0.0254 },
];

const PRESSURE: readonly Unit[] = [
  { name: "psi", also: ["psig", "lbf/in2", "lb/in2"], factor: PSI },
  { name: "bar", also: ["barg"], factor: 0.1 },
  { name: "MPa", also: ["N/mm2", "N/mm²"], factor: 1 },
  { name: "kPa", also: [], factor: 0.001 },
];

const TEMPERATURE: readonly Unit[] = [
  { name: "degC", also: ["C", "°C", "deg C"], factor: 1 },
  { name: "degF", also: ["F", "°F", "deg F"], factor: 5 / 9, before: -32 },
];

const UNITS: Readonly<Record<string, readonly Unit[]>> = {
  length: LENGTH,
  pressure: PRESSURE,
  modulus: [
    { name: "MPa", also: ["N/mm2", "N/mm²"], factor: 1 },
    { name: "GPa", also: ["kN/mm2"], factor: 1000 },
    { name: "psi", also: ["lbf/in2", "lb/in2"], factor: PSI },
  ],
  force: [
    { name: "N", also: ["newton", "newtons"], factor: 1 },
    { name: "lbf", also: ["lb"], factor: POUND_FORCE },
    { name: "kgf", also: ["kg", "kp"], factor: 9.80665 },
  ],
  temperature: TEMPERATURE,
  angle: [{ name: "deg", also: ["°", "degree", "degrees"], factor: 1 }],
  area: [
    { name: "mm2", also: ["mm²"], factor: 1 },
    { name: "in2", also: ["in²", "sq in"], factor: 645.16 },
  ],
  mass: [
    { name: "kg", also: [], factor: 1 },
    { name: "lb", also: ["lbs"], factor: 0.45359237 },
  ],
  density: [
    { name: "kg/m3", also: ["kg/m³"], factor: 1 },
    { name: "lb/in3", also: ["lb/in³"], factor: 27679.904710191 },
  ],
  expansion: [
    { name: "ppm/K", also: ["um/m/K"], factor: 1e-6 },
    { name: "1/K", also: ["/K", "1/degC"], factor: 1 },
    { name: "1/degF", also: ["/F"], factor: 1.8 },
  ],
  speed: [{ name: "rpm", also: ["1/min", "rev/min"], factor: 1 }],
  surface_speed: [
    { name: "m/min", also: [], factor: 1 },
    { name: "ft/min", also: ["fpm", "sfm"], factor: 0.3048 },
  ],
  duration: [
    { name: "h", also: ["hour", "hours", "hr"], factor: 1 },
    { name: "min", also: ["minute", "minutes"], factor: 1 / 60 },
  ],
  power: [
    { name: "W", also: [], factor: 1 },
    { name: "kW", also: [], factor: 1000 },
    { name: "hp", also: ["HP"], factor: 745.6998715822702 },
  ],
  price: [
    { name: "money/kg", also: ["/kg"], factor: 1 },
    { name: "money/lb", also: ["/lb"], factor: 1 / 0.45359237 },
  ],
  money: [{ name: "money", also: [], factor: 1 }],
};

const NO_UNIT: readonly Unit[] = [];

/** What the unit list shows for a unit whose stored name is a code. */
const SHOWN: Readonly<Record<string, string>> = {
  degC: "°C",
  degF: "°F",
  deg: "°",
  "ppm/K": "millionths per °C",
  mm2: "mm²",
  in2: "in²",
  "kg/m3": "kg/m³",
  "lb/in3": "lb/in³",
  "1/K": "per °C",
  "1/degF": "per °F",
  "money/kg": "per kg",
  "money/lb": "per lb",
  money: "your currency",
  "1": "",
};

export function unitsOf(kind: string): readonly Unit[] {
  return UNITS[kind] ?? NO_UNIT;
}

export function shownUnit(name: string): string {
  return SHOWN[name] ?? name;
}

/** The unit so written, in that kind's list; capitals matter only where two units would clash. */
export function unitNamed(kind: string, written: string): Unit | undefined {
  const units = unitsOf(kind);
  const exact = units.find((unit) => unit.name === written || unit.also.includes(written));
  if (exact) return exact;
  const low = written.toLowerCase();
  return units.find(
    (unit) => unit.name.toLowerCase() === low || unit.also.some((word) => word.toLowerCase() === low),
  );
}

/** The unit a person of that habit expects to type first. */
export function usualUnit(kind: string, system: "metric" | "inch"): string {
  if (kind === "length") return system === "inch" ? "in" : "mm";
  if (kind === "pressure") return system === "inch" ? "psi" : "bar";
  if (kind === "temperature") return system === "inch" ? "degF" : "degC";
  if (kind === "modulus") return system === "inch" ? "psi" : "GPa";
  if (kind === "force") return system === "inch" ? "lbf" : "N";
  if (kind === "mass") return system === "inch" ? "lb" : "kg";
  if (kind === "surface_speed") return system === "inch" ? "ft/min" : "m/min";
  return unitsOf(kind)[0]?.name ?? "";
}
