/** The shapes that the core returns (see core/records.py), as the app reads them. */

import type { CheckName, FigureName, ListName } from "./names";

export interface Quantity {
  value: number;
  unit: string;
}

export interface WorkingEntry extends Quantity {
  symbol: string;
}

export interface Figure extends Quantity {
  symbol: string;
  method: string;
  working?: WorkingEntry[];
  low?: number;
  high?: number;
}

export type Outcome = "good" | "watch" | "stop";

export interface Finding {
  check: CheckName;
  outcome: Outcome;
  why: string;
  remedy: string;
  value?: Quantity;
  limit?: Quantity;
  /** Inputs that clear it, as tried; null: leave it out. */
  apply?: Choice[];
}

export interface Choice {
  input: string;
  value: string | number | boolean | null;
  unit: string;
  why: string;
}

export interface Caution {
  key: string;
  text: string;
}

/** What a figure is, and what a check judges, as the list of methods tells. */
export interface FigureTold {
  name: string;
  label: string;
  meaning: string;
  symbol: string;
  methods: string[];
}

export interface CheckTold {
  check: string;
  judges: string;
}

export interface Size {
  name?: string;
  label: string;
  value: number;
  unit: string;
  limits?: { lower: Quantity; upper: Quantity };
  /** How it is taken in the hand. */
  reading?: string;
}

export interface Tool {
  tool: string;
  title: string;
  material: string;
  why: string;
  sizes: Size[];
}

export interface Operation {
  number: number;
  key: string;
  title: string;
  hold: string;
  tool: string;
  text: string;
  sizes: Size[];
  speed?: Quantity;
  surface_speed?: Quantity;
  feed?: Quantity;
  feed_per?: string;
  passes?: number;
  time?: Quantity;
  time_all?: Quantity;
  each_ring?: boolean;
  check: string;
  cautions: Caution[];
}

/** What the core says of a ring that was measured so far: the card follows the ring. */
export interface RingSoFar {
  ring: number;
  outcome: Outcome;
  why: string;
  remedy: string;
  sizes: WorkedSize[];
}

export type WorkedSize = Size & { operation: string; name: string; measured?: Quantity; outcome?: Outcome; cost?: string };

export interface Series {
  values: number[];
  unit: string;
  symbol: string;
}

export type Figures = Partial<Record<FigureName, Figure>>;

/** What every calculation returns, and by name whatever else is its own. */
export interface Answer extends Partial<Record<ListName, unknown>> {
  figures: Figures;
  findings: Finding[];
  chosen: Choice[];
  cautions: Caution[];
}

export interface Fault {
  path: (string | number)[];
  code: string;
  message: string;
  remedy: string;
  /** What was given and what will do, in the core's unit. */
  value?: Quantity;
  lowest?: Quantity;
  highest?: Quantity;
  more_than?: boolean;
  /** The unit, of those the core knows, in which the same number would do. */
  likely?: string;
  /** What to put in its place at a touch (see sheet/own_unit.ts). */
  offer?: string;
}

export interface Problem {
  code: string;
  message?: string;
  faults: Fault[];
}

export interface Method {
  key: string;
  title: string;
  formula: string;
  validity: string;
  sources: { key: string; title: string; basis: string }[];
}

export interface Source {
  key: string;
  title: string;
  where: string;
  basis: string;
}

export interface DrawnSheet {
  sheet: number;
  sheets: number;
  title: string;
  about: string;
  paper: string;
  width: number;
  height: number;
  scale: number | null;
  svg: string;
}
