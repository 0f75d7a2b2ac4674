import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { nearestFraction } from "./fraction";
import { unitsOf } from "./kinds";
import { fieldParts, joinText, parseQuantity, splitText } from "./parse";
import { fixed, fractionWords, inFull, inPercent, limitShown, shown, thouWords } from "./show";

/** Worked by hand; the paper is tested by the same table. */
const SHARES = JSON.parse(readFileSync(new URL("../../../tests/vectors/shares_shown.json", import.meta.url), "utf8")) as [number, string][];
const LENGTHS = JSON.parse(readFileSync(new URL("../../../tests/vectors/lengths_shown.json", import.meta.url), "utf8")) as [number, string, string][];

// Factors: inch, pound, pound-force and psi are exact by the international agreement of 1959 and NIST SP 811.
const GOOD: [string, string, string, number][] = [
  ["length", "80", "mm", 80],
  ["length", "3.125", "in", 79.375],
  ["length", "3 1/8", "in", 79.375],
  ["length", "3-1/8", "in", 79.375],
  ["length", "3 1/8 in", "mm", 79.375],
  ["length", '3 1/8"', "mm", 79.375],
  ["length", "3⅛ in", "mm", 79.375],
  ["length", "⅛", "in", 3.175],
  ["length", "1/64 in", "mm", 0.396875],
  ["length", "3,12", "in", 79.248],
  ["length", "0,125", "in", 3.175],
  ["length", "80,5 mm", "in", 80.5],
  ["length", "4 thou", "mm", 0.1016],
  ["length", "-4 thou", "mm", -0.1016],
  ["length", " 12 MM ", "in", 12],
  ["length", "1e-1", "mm", 0.1],
  ["length", ".5", "in", 12.7],
  ["pressure", "120 psi", "bar", 0.8273708751802034],
  ["pressure", "8,3 bar", "psi", 0.83],
  ["pressure", "0.83", "MPa", 0.83],
  ["pressure", "830 kPa", "MPa", 0.83],
  ["temperature", "350", "degF", 176.66666666666666],
  ["temperature", "177 C", "degF", 177],
  ["temperature", "-40 °F", "degC", -40],
  ["modulus", "17e6 psi", "MPa", 117210.87398386214],
  ["modulus", "103.5", "GPa", 103500],
  ["force", "2 lbf", "N", 8.896443230521],
  ["force", "1 kg", "N", 9.80665],
  ["mass", "1 lb", "kg", 0.45359237],
  ["duration", "90 min", "h", 1.5],
  ["speed", "280 1/min", "rpm", 280],
  ["speed", "280", "rpm", 280],
  ["expansion", "11.7", "ppm/K", 11.7e-6],
  ["power", "1 hp", "W", 745.6998715822702],
  ["ratio", "90 %", "", 0.9],
  ["ratio", "1.022", "", 1.022],
  ["count", "3", "", 3],
];

const BAD: [string, string][] = [
  ["length", "eighty"],
  ["length", "3 1/0 in"],
  ["length", "1/2/3"],
  ["length", "1,250.5"],
  ["length", "3,125 in"],
  ["pressure", "8 mPa"],
  ["speed", "121/min"],
  ["length", "3.1.2"],
  ["length", "80 furlongs"],
  ["length", "NaN"],
  ["length", "Infinity"],
  ["length", "1e999"],
  ["length", "80 mm mm"],
  ["length", "--4"],
  ["length", "3 4"],
  ["length", "x".repeat(200)],
  ["pressure", "8 mm"],
  ["ratio", "3 mm"],
  ["count", "<b>3</b>"],
];

describe("what people type", () => {
  it.each(GOOD)("%s: %s (in %s) is %d", (kind, text, unit, value) => {
    const parsed = parseQuantity(kind, text, unit);
    expect(parsed.ok).toBe(true);
    if (parsed.ok) expect(Math.abs(parsed.reading.value - value)).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(value)));
  });
  it.each(BAD)("%s: %s is refused with a remedy", (kind, text) => {
    const parsed = parseQuantity(kind, text, unitsOf(kind)[0]?.name ?? "");
    expect(parsed.ok).toBe(false);
    if (!parsed.ok) {
      expect(parsed.message).not.toBe("");
      expect(parsed.remedy).not.toBe("");
      expect(parsed.message.length).toBeLessThan(120);
    }
  });
  it("is stored with its unit and comes apart again", () => {
    expect(joinText("3 1/8", "in")).toBe("3 1/8 in");
    expect(joinText("3 1/8 thou", "in")).toBe("3 1/8 thou");
    expect(joinText(" ", "in")).toBe("");
    expect(fieldParts("length", "3 1/8 in", "metric")).toEqual({ number: "3 1/8", unit: "in" });
    expect(fieldParts("length", "", "inch")).toEqual({ number: "", unit: "in" });
    expect(splitText("280 1/min")).toEqual({ number: "280", unit: "1/min" });
  });
});

describe("what people read", () => {
  it("gives the nearest 64th and its error", () => {
    expect(nearestFraction(3.125)).toEqual({ text: "3 1/8", error: 0 });
    expect(nearestFraction(0.999)).toEqual({ text: "1", error: expect.closeTo(-0.001, 12) });
    expect(nearestFraction(0.5 + 1 / 128 - 1e-9).text).toBe("1/2");
    expect(nearestFraction(-2.5).text).toBe("-2 1/2");
    expect(nearestFraction(0.001).text).toBe("0");
    expect(fractionWords(79.4)).toBe("3 1/8 in and 1.0 thou");
    expect(thouWords(0.254)).toBe("10.0 thou");
  });
  it.each(LENGTHS)("gives a length of %d mm the digits that it has on paper: %s mm, %s in", (mm, metric, inch) => {
    expect(shown(mm, "mm", "metric")).toEqual({ text: metric, unit: "mm" });
    expect(shown(mm, "mm", "inch")).toEqual({ text: inch, unit: "in" });
  });
  it.each(SHARES)("gives a share of %d the digits that the core's words have: %s %%", (share, text) => {
    expect(inPercent(share)).toEqual({ text, unit: "%" });
    if (share <= 1) expect(shown(share, "1", "metric", "sealed_share")).toEqual({ text, unit: "%" });
  });
  it("rounds half away from nought and groups thousands", () => {
    expect(fixed(2.675, 2)).toBe("2.68");
    expect(fixed(-0.004, 2)).toBe("0.00");
    expect(fixed(-1.5, 0)).toBe("\u22122");
    expect(fixed(38600, 0)).toBe("38\u202f600");
  });
  it.each([
    [79.375, "mm", "metric", "", "79.38", "mm"],
    [79.375, "mm", "inch", "", "3.125", "in"],
    [0.268, "mm", "metric", "", "0.268", "mm"],
    [0.268, "mm", "inch", "", "0.0106", "in"],
    [78.4994, "mm", "metric", "limit", "78.499", "mm"],
    [0.048, "MPa", "metric", "wall_pressure", "0.048", "N/mm²"],
    [0.048, "MPa", "inch", "wall_pressure", "7.0", "psi"],
    [0.83, "MPa", "metric", "steam_pressure", "8.3", "bar"],
    [152, "MPa", "inch", "closed_stress", "22\u202f000", "psi"],
    [177, "degC", "inch", "", "351", "°F"],
    [0.42, "1", "metric", "leak_share", "42", "%"],
    [1.022, "1", "metric", "former_ratio", "1.022", ""],
    [0.99997, "1", "metric", "wear", "1.000", ""],
    [0.2956, "1", "metric", "seals", "30", "%"],
  ] as const)("%d %s in %s as %s: %s %s", (value, unit, system, name, text, shownUnit) => {
    expect(shown(value, unit, system, name)).toEqual({ text, unit: shownUnit });
  });
  it("keeps every digit for those who ask", () => {
    expect(inFull(78.49937109951541, "mm", "metric").text).toBe("78.4993710995");
  });
  it("gives what was gauged as fine as the gauge reads", () => {
    // 3.1269 in is 79.42326 mm: 25.4 mm to the inch by definition.
    expect(shown(79.42326, "mm", "inch", "mean_diameter").text).toBe("3.1269");
    expect(shown(79.42326, "mm", "metric", "mean_diameter").text).toBe("79.423");
    expect(shown(79.42326, "mm", "inch", "former_diameter").text).toBe("3.127");
    // On a card too: 3.1263 in is 79.40802 mm.
    expect(shown(79.40802, "mm", "inch", "bore").text).toBe("3.1263");
    expect(shown(79.40802, "mm", "metric", "bore").text).toBe("79.408");
  });
  it("keeps small masses and shares from vanishing", () => {
    expect(shown(3.3e-6, "kg", "metric", "leak_per_stroke")).toEqual({ text: "0.0033", unit: "g" });
    expect(shown(0.0527, "1", "metric", "thermal_efficiency")).toEqual({ text: "5.3", unit: "%" });
    expect(shown(0, "1", "metric", "leak_share")).toEqual({ text: "0", unit: "%" });
  });
});

it("a limit is read into its limits, as on drawings: what is made to it is within", () => {
  // 75.0468 mm is 2.954598 in, 80.2338 mm is 3.158811 in.
  expect(limitShown(75.0468, "mm", "inch", true)).toBe("2.9545");
  expect(limitShown(80.2338, "mm", "inch", false)).toBe("3.1589");
  expect(limitShown(75.0468, "mm", "metric", true)).toBe("75.046");
  // A whole number of steps stays.
  expect(limitShown(3.125 * 25.4, "mm", "inch", false)).toBe("3.1250");
});
