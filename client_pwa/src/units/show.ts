/** Figures for people: in metric or inch, rounded to what a lathe can hold, or in full. */

import type { System } from "../base/settings";
import { nearestFraction } from "./fraction";

export interface Shown {
  text: string;
  unit: string;
}

const MM_PER_INCH = 25.4;
const MPA_PER_PSI = 6894.757293168361e-6;
const N_PER_LBF = 4.4482216152605;
const KG_PER_LB = 0.45359237;
const W_PER_HP = 745.6998715822702;
/** Limits, and what is gauged: read finer than a lathe is set. */
const FINE = /^(limit|bore|(mean|largest|smallest|ring)_diameter)$/;

/** `value` in the wanted system, its unit, and the step to which a workshop rounds it. */
interface Converted {
  value: number;
  unit: string;
  places: number;
}

/** As shown on a sheet: rounded. `name` is the figure's name, which tells steam from stress. */
export function shown(value: number, unit: string, system: System, name = ""): Shown {
  if (!Number.isFinite(value)) return { text: "none", unit: "" };
  const converted = convert(value, unit, system, name);
  return { text: fixed(converted.value, converted.places), unit: converted.unit };
}

/** A share of one, or more than one, in per cent. */
export function inPercent(share: number): Shown {
  const { value, unit, places } = percent(share);
  return { text: fixed(value, places), unit };
}

/** The same as words: "99.6 %". */
export function percentWords(share: number): string {
  const { text, unit } = inPercent(share);
  return `${text} ${unit}`;
}

/** A limit of a size as read, rounded into its limits: what is made to it is within them. */
export function limitShown(value: number, unit: string, system: System, upper: boolean): string {
  const { value: own, places } = convert(value, unit, system, "limit");
  const steps = own * 10 ** places;
  return fixed((upper ? Math.floor(steps + 1e-6) : Math.ceil(steps - 1e-6)) / 10 ** places, places);
}

/** Every digit that the engine gave, in the wanted system. */
export function inFull(value: number, unit: string, system: System, name = ""): Shown {
  const converted = convert(value, unit, system, name);
  return { text: String(Number(converted.value.toPrecision(12))), unit: converted.unit };
}

/** A length's nearest 64th with the error in thou: "3 1/8 in, 0.4 thou under". */
export function fractionWords(mm: number): string {
  const inches = mm / MM_PER_INCH;
  const fraction = nearestFraction(inches);
  const thou = fraction.error * 1000;
  const off = Math.abs(thou) < 0.05 ? "" : thou > 0 ? ` and ${fixed(thou, 1)} thou` : ` less ${fixed(-thou, 1)} thou`;
  return `${fraction.text} in${off}`;
}

export function thouWords(mm: number): string {
  return `${fixed((mm / MM_PER_INCH) * 1000, 1)} thou`;
}

function convert(value: number, unit: string, system: System, name: string): Converted {
  const inch = system === "inch";
  switch (unit) {
    case "mm":
      return length(value, inch, name);
    case "mm2":
      return inch ? { value: value / 645.16, unit: "in²", places: 3 } : { value, unit: "mm²", places: 1 };
    case "MPa":
      return pressure(value, inch, name);
    case "N":
      return inch ? { value: value / N_PER_LBF, unit: "lbf", places: 2 } : { value, unit: "N", places: 1 };
    case "degC":
      return inch ? { value: value * 1.8 + 32, unit: "°F", places: 0 } : { value, unit: "°C", places: 0 };
    case "kg":
      if (value !== 0 && Math.abs(value) < 0.01) {
        const small = inch ? (value / KG_PER_LB) * 16 : value * 1000;
        return { value: small, unit: inch ? "oz" : "g", places: Math.max(significantPlaces(small) - 2, Math.min(4, significantPlaces(small) - 1)) };
      }
      return inch ? { value: value / KG_PER_LB, unit: "lb", places: 2 } : { value, unit: "kg", places: 2 };
    case "kg/h":
      return inch ? flow(value / KG_PER_LB, "lb/h") : flow(value, "kg/h");
    case "m3/kg":
      return inch ? { value: value * 16.018463373960138, unit: "ft³/lb", places: 2 } : { value, unit: "m³/kg", places: 3 };
    case "kJ/kg":
      return inch ? { value: value / 2.326, unit: "Btu/lb", places: 0 } : { value, unit: "kJ/kg", places: 0 };
    case "kg/m3":
      return inch
        ? { value: value / 27679.904710191, unit: "lb/in³", places: 3 }
        : { value, unit: "kg/m³", places: 0 };
    case "W":
      return watts(value, inch);
    case "m/min":
      return inch ? { value: value / 0.3048, unit: "ft/min", places: 0 } : { value, unit: "m/min", places: 0 };
    case "mm/min":
      return inch ? { value: value / MM_PER_INCH, unit: "in/min", places: 2 } : { value, unit: "mm/min", places: 0 };
    case "m/s":
      return inch ? { value: value / 0.00508, unit: "ft/min", places: 0 } : { value, unit: "m/s", places: 2 };
    case "money/kg":
      return inch ? { value: value * KG_PER_LB, unit: "per lb", places: 2 } : { value, unit: "per kg", places: 2 };
    case "money":
      return { value, unit: "", places: 2 };
    case "deg":
      return { value, unit: "°", places: 1 };
    case "1/min":
      return { value, unit: "rpm", places: 0 };
    case "min":
      return { value, unit: "min", places: value < 10 ? 1 : 0 };
    case "h":
      return { value, unit: "h", places: 1 };
    case "um":
      return inch ? { value: value / 25.4, unit: "thou", places: 2 } : { value, unit: "µm", places: 1 };
    case "mm3":
      return inch ? { value: value / 16387.064, unit: "in³", places: 3 } : { value, unit: "mm³", places: 0 };
    case "m":
      return inch ? { value: value / 0.3048, unit: "ft", places: value < 30 ? 1 : 0 } : { value, unit: "m", places: value < 100 ? 2 : 0 };
    case "N/mm":
      return inch
        ? { value: (value / N_PER_LBF) * MM_PER_INCH, unit: "lbf/in", places: 2 }
        : { value, unit: "N/mm", places: 3 };
    case "MPa abs":
      return inch
        ? { value: value / MPA_PER_PSI, unit: "psi absolute", places: 1 }
        : { value: value * 10, unit: "bar absolute", places: 2 };
    case "K":
      return inch ? { value: value * 1.8, unit: "°F of difference", places: 0 } : { value, unit: "°C of difference", places: 0 };
    case "kW":
      return watts(value * 1000, inch);
    case "mm/h":
      return inch ? { value: value / 0.0254, unit: "thou/h", places: 4 } : { value, unit: "mm/h", places: 6 };
    case "1/K":
      return { value: value * 1e6, unit: "millionths per °C", places: 1 };
    case "1":
      return pureNumber(value, name);
    default:
      return { value, unit, places: significantPlaces(value) };
  }
}

function length(mm: number, inch: boolean, name: string): Converted {
  // The core's length_places: what is below 1 mm is a gap or a clearance. A size with limits would seem to lie outside them.
  const places = FINE.test(name) || (mm !== 0 && Math.abs(mm) < 1) ? 3 : 2;
  return inch ? { value: mm / MM_PER_INCH, unit: "in", places: places + 1 } : { value: mm, unit: "mm", places };
}

function pressure(value: number, inch: boolean, name: string): Converted {
  const steam = /steam|gauge|back_pressure|pressure_behind|boiler/.test(name) && !/wall/.test(name);
  if (inch) {
    const psi = value / MPA_PER_PSI;
    if (Math.abs(psi) >= 1000) return { value: Math.round(psi / 100) * 100, unit: "psi", places: 0 };
    return { value: psi, unit: "psi", places: Math.abs(psi) < 20 ? 1 : 0 };
  }
  if (steam) return { value: value * 10, unit: "bar", places: 1 };
  if (Math.abs(value) >= 20_000) return { value: value / 1000, unit: "kN/mm²", places: 1 };
  return { value, unit: "N/mm²", places: Math.abs(value) < 2 ? 3 : Math.abs(value) < 20 ? 1 : 0 };
}

function flow(value: number, unit: string): Converted {
  return { value, unit, places: Math.abs(value) < 1 ? 3 : Math.abs(value) < 10 ? 2 : 1 };
}

function watts(value: number, inch: boolean): Converted {
  if (inch) {
    const hp = value / W_PER_HP;
    return { value: hp, unit: "hp", places: Math.abs(hp) < 1 ? 3 : Math.abs(hp) < 20 ? 2 : 1 };
  }
  if (Math.abs(value) >= 2000) return { value: value / 1000, unit: "kW", places: 2 };
  return { value, unit: "W", places: Math.abs(value) < 20 ? 1 : 0 };
}

function pureNumber(value: number, name: string): Converted {
  if (/share|yield|relief|efficiency|spring_left|^(seals|leak|bar-wear|matters-most|cut-list)$/.test(name) && Math.abs(value) <= 1.0000001) return percent(value);
  if (Number.isInteger(value)) return { value, unit: "", places: 0 };
  return { value, unit: "", places: Math.max(3, significantPlaces(value)) };
}

/** A share of one, by the core's percent_places: what is a little off nothing or all never reads so. */
function percent(share: number): Converted {
  const value = share * 100;
  const size = Math.abs(value);
  let places = size < 10 && Math.abs(size - Math.round(size)) > 1e-9 ? 1 : 0;
  const near = Math.min(size, Math.abs(100 - value));
  while (places < 9 && near > 1e-9 && near * 10 ** places < 0.5 + 1e-9) places += 1;
  return { value, unit: "%", places };
}

/** Of four figures: 0.99997 is 1.000, and has no more of them than 1.00003. */
function significantPlaces(value: number): number {
  if (value === 0) return 0;
  return Math.min(9, Math.max(0, 3 - Math.floor(Math.log10(Math.abs(value) * 1.00005))));
}

/** With that many decimals, ties away from zero, a thin space between thousands from 10 000 on. */
export function fixed(value: number, places: number): string {
  const scale = 10 ** places;
  const units = Math.floor(Math.abs(value) * scale + 0.5 + 1e-9);
  const whole = Math.floor(units / scale);
  const part = units - whole * scale;
  const head = whole < 10_000 ? String(whole) : String(whole).replace(/\B(?=(\d{3})+$)/g, "\u202f");
  const tail = places > 0 ? "." + String(part).padStart(places, "0") : "";
  return (value < 0 && units > 0 ? "\u2212" : "") + head + tail;
}
