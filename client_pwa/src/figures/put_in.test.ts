import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { asWritten } from "./formula";
import { putIn } from "./put_in";
import type { Known } from "./put_in";
import { putInShown } from "./put_in_shown";

const line = (formula: string, symbol: string, value: number, known: Known[]): string | undefined =>
  putIn(formula, { symbol, value, unit: "mm" }, known)?.numbers.map((node) => asWritten(node).trim()).join(" ");

const mm = (symbol: string, value: number): Known => ({ symbol, value, unit: "mm" });

// Ft = p h1 d1/2 of a 80 mm ring, 4 mm wide, at 0.05 N/mm2: 8 N, by hand.
test("each letter gives way to its number, with a cross between", () => {
  expect(line("Ft = p h1 d1/2", "Ft", 8, [mm("h1", 4), mm("d1", 80), { symbol: "p", value: 0.05, unit: "MPa" }])).toBe("0.05*4*80/2");
});

test("of several clauses the one that gives the figure is taken, others may settle a letter", () => {
  const rule = "b = (h1 + k)/2 + f; L = h1 + 2*k + 2*f; part = L + 2*f";
  const known = [mm("h1", 6), mm("k", 1), mm("f", 0.5)];
  expect(line(rule, "b", 4, known)).toBe("6+1/2 + 0.5");
  expect(line(rule, "L", 9, known)).toBe("6 + 2 * 1 + 2 * 0.5");
  expect(line(rule, "part", 10, known)).toBe("9 + 2 * 0.5");
});

test("words round a rule are left out, a word that is a name is not", () => {
  expect(line("nominal 3 p (d1/a1)(d1/a1 - 1); outside 3 p (d1/a1)(d1/a1 - 2)", "sigma", 3 * 0.05 * 20 * 18, [mm("d1", 80), mm("a1", 4), { symbol: "p", value: 0.05, unit: "MPa" }])).toBe(
    "3 * 0.05 * (80/4) * (80/4-2)",
  );
  expect(line("closing ring = D + allowance", "closing", 81, [mm("D", 80), mm("allowance", 1)])).toBe("80 + 1");
});

test("an angle is put in as degrees and worked as such; a loss stands in brackets", () => {
  expect(line("reading = gap*sin(A)", "x", 2, [mm("gap", 4), { symbol: "A", value: 30, unit: "deg" }])).toBe("4 * sin(30)");
  expect(line("s = a - b", "s", 5, [mm("a", 2), mm("b", -3)])).toBe("2 - (-3)");
});

test("no line is shown that does not come to the figure, or lacks a letter", () => {
  expect(line("Ft = p h1 d1/2", "Ft", 9, [mm("h1", 4), mm("d1", 80), { symbol: "p", value: 0.05, unit: "MPa" }])).toBeUndefined();
  expect(line("Ft = p h1 d1/2", "Ft", 8, [mm("h1", 4), mm("d1", 80)])).toBeUndefined();
});

const service = fileURLToPath(new URL("../../../service", import.meta.url));
const requests = fileURLToPath(new URL("../../../tests/vectors/requests.json", import.meta.url));
const ANSWERS = `
import json
from ringwright.core.calculations import CALCULATIONS, run_json
told = {}
for each in json.load(open(${JSON.stringify(requests)})):
    answer = json.loads(run_json(each["calculation"], json.dumps(each["request"]))).get("answer", {})
    figures = answer.get("figures")
    for name, figure in figures.items() if type(figures) is dict else ():
        told.setdefault(name, []).append(figure)
formulas = {m["key"]: m["formula"] for m in json.loads(run_json("methods", "{}"))["answer"]["methods"]}
print(json.dumps([told, formulas]))`;

interface Told extends Known {
  method: string;
  working?: Known[];
}

/** Those whose rule is one line; the rest are searched for, integrated, or of more than one rule. */
const SHOWN =
  "ring_width turn_width inside_diameter closed_gap_thumb_rule wall_pressure contact_pressure closed_stress closed_stress_nominal closed_compression sprung_on_stress " +
  "tangential_force diametral_force diametral_force_to_bore widest_light former_ratio closed_gap_hot side_clearance side_clearance_hot groove_width groove_depth back_clearance " +
  "piston_diameter_hot piston_clearance piston_clearance_hot sprung_on_opening rough_outside_diameter bored_inside_diameter blank_length part_length band_width " +
  "finish_outside_diameter clamped_gap feeler_gap closed_gap_reading pot_bore closing_ring_bore clamp_mandrel_diameter end_plate_diameter bridge_length cutter_centre_distance " +
  "table_travel slit_mandrel_diameter scarf_length spacer_width spacer_across gap_breathing heat_carried_away thermal_efficiency leak_rate leak_share spring_left swarf_share " +
  "opening bulge free_end";

test("a figure whose rule is one line shows its numbers", () => {
  const text = execFileSync("python3", ["-c", ANSWERS], { env: { ...process.env, PYTHONPATH: service }, encoding: "utf-8", maxBuffer: 2e8 });
  const [told, formulas] = JSON.parse(text) as [Record<string, Told[]>, Record<string, string>];
  const shown = Object.entries(told).filter(([, figures]) => figures.some((each) => putIn(formulas[each.method] ?? "", each, each.working ?? [])));
  expect(SHOWN.split(" ").filter((name) => !shown.some(([found]) => found === name))).toEqual([]);
}, 120_000);

// 0.05 N/mm2 is 7.25 psi, 4 mm are 0.1575 in, 80 mm 3.15 in; 8 N are 1.80 lbf.
test("numbers stand in the units of the sheet where the rule holds in them, else in the core's", () => {
  const force = { value: 8, unit: "N", symbol: "Ft", method: "", working: [{ symbol: "p", value: 0.05, unit: "MPa" }, mm("h1", 4), mm("d1", 80)] };
  const inch = putInShown("Ft = p h1 d1/2", "tangential_force", force, "inch")!;
  expect(inch.units).toEqual(["psi", "in"]);
  expect(inch.result).toBe("1.798 lbf");
  const grown = { value: 80.08, unit: "mm", symbol: "d", method: "", working: [mm("D", 80), { symbol: "alpha_c", value: 1e-5, unit: "1/K" }, { symbol: "T_c", value: 120, unit: "degC" }, { symbol: "T_0", value: 20, unit: "degC" }] };
  const hot = putInShown("d = D (1 + alpha_c (T_c - T_0))", "bore", grown, "inch")!;
  expect(hot.units).toEqual(["mm", "per °C", "°C"]);
  expect(hot.result).toBe("80.08 mm");
});
