import { describe, expect, it } from "vitest";
import type { Fault } from "../engine/answers";
import type { Field } from "../engine/tables";
import { inOwnUnit } from "./own_unit";

const FIELDS: Field[] = [
  { name: "bore", kind: "length", unit: "mm", lowest: 10, highest: 900 },
  { name: "steam_temperature", kind: "temperature", unit: "degC", lowest: 40, highest: 550 },
  { name: "rings", kind: "count", lowest: 1, highest: 200 },
  { name: "bars", kind: "records", items: [{ name: "price", kind: "money", unit: "money" }, { name: "length", kind: "length", unit: "mm" }] },
];
const range = (path: Fault["path"], value: number, unit: string, lowest?: number, highest?: number): Fault => ({
  path,
  code: "range",
  message: "in the core's words",
  remedy: "in the core's words",
  value: { value, unit },
  ...(lowest === undefined ? {} : { lowest: { value: lowest, unit } }),
  ...(highest === undefined ? {} : { highest: { value: highest, unit } }),
});
const said = (fault: Fault, inputs: Parameters<typeof inOwnUnit>[2]) => {
  const { message, remedy, offer } = inOwnUnit(fault, FIELDS, inputs);
  return { words: `${message}; ${remedy}`, offer };
};

describe("a refusal", () => {
  it("speaks in the unit that was typed", () => {
    expect(said(range(["bore"], 99999 * 25.4, "mm", 10, 900), { bore: "99999 in" })).toEqual({
      words: "Bore is 99999 in; give 0.394 to 35.4 in",
      offer: undefined,
    });
    expect(said(range(["steam_temperature"], 650, "degC", 40, 550), { steam_temperature: "1202 °F" }).words).toBe(
      "Steam temperature is 1202 °F; give 104 to 1022 °F",
    );
  });
  it("offers the unit in which the number would do, the fraction as it was typed", () => {
    expect(said(range(["bore"], 2.875, "mm", 10, 900), { bore: "2 7/8 mm" })).toEqual({
      words: "Bore is 2 7/8 mm; give 10 to 900 mm; did you mean 2 7/8 in?",
      offer: "2 7/8 in",
    });
    expect(said(range(["bore"], 3.125, "mm", 10, 900), { bore: "3.125" }).offer).toBe("3.125 in");
    expect(said(range(["bore"], 80 * 25.4, "mm", 10, 900), { bore: "80 in" }).offer).toBe("80 mm");
    expect(said(range(["steam_temperature"], 700, "degC", 40, 550), { steam_temperature: "700 degC" }).offer).toBe("700 degF");
  });
  it("of a number without unit has none", () => {
    expect(said(range(["rings"], 0, "1", 1, 200), { rings: "0" }).words).toBe("Rings to make is 0; give 1 to 200");
  });
  it("is found in a list by its row on the sheet", () => {
    const bars = { bars: [{ length: "9 m" }, { length: "0.1 in" }] };
    expect(said(range(["bars", 1, "length"], 2.54, "mm", 5, 12000), bars).words).toContain("Length is 0.1 in; give 0.197 to 472 in");
  });
  it("of another kind is left as it is", () => {
    const fault: Fault = { path: ["bore"], code: "required", message: "bore is needed", remedy: "give it" };
    expect(inOwnUnit(fault, FIELDS, {})).toBe(fault);
    const nowhere = range(["stroke"], 1, "mm", 5, 9);
    expect(inOwnUnit(nowhere, FIELDS, { stroke: "1 mm" })).toBe(nowhere);
  });
});
