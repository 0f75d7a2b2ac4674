/** The rings whose drawings show what the guide says, in core units: invented, and between them of every operation. */

import type { InputName } from "../../engine/names";

export type Sample = Readonly<Partial<Record<InputName, number | string | boolean>>>;

const ENGINE: Sample = { bore: 80, steam_pressure: 0.8 };

export const DOUBLE: Sample = { ...ENGINE, ring_type: "double-turn" };
export const PLAIN: Sample = { ...ENGINE, ring_type: "plain", end_cut: "angled-45" };

/** The first that has an operation shows it. */
export const RINGS: readonly Sample[] = [
  DOUBLE,
  { ...ENGINE, ring_type: "plain", end_cut: "stepped" },
  { ...PLAIN, setting: "bound", finishing: "band" },
  { ...DOUBLE, setting: "bound", finishing: "forced-round", bar_form: "solid" },
  { ...DOUBLE, slit_on_stick: true },
];
