import { describe, expect, it } from "vitest";
import { changeOf, seenBy } from "./apart";

const SHEET = { bore: "80 mm", steam_pressure: "8 bar", piston_valve: { bore: "40 mm", steam_pressure: "1 bar" } };

describe("the inputs of a part apart", () => {
  it("are its own, and the engine's where both have one steam", () => {
    expect(seenBy("piston-valve", SHEET)).toEqual({ bore: "40 mm", steam_pressure: "8 bar" });
    expect(seenBy("sizing", SHEET)).toBe(SHEET);
  });
  it("are none where the sheet holds something else under their name", () => {
    expect(seenBy("piston-valve", { bore: "80 mm", piston_valve: "40 mm" })).toEqual({});
  });
  it("change under their own name, and leave nothing behind when the last is rubbed out", () => {
    expect(changeOf("piston-valve", SHEET, "port_bars", "6")).toEqual({ piston_valve: { ...SHEET.piston_valve, port_bars: "6" } });
    expect(changeOf("piston-valve", SHEET, "steam_pressure", "6 bar")).toEqual({ steam_pressure: "6 bar" });
    expect(changeOf("piston-valve", { piston_valve: { bore: "40 mm" } }, "bore", undefined)).toEqual({ piston_valve: undefined });
    expect(changeOf("sizing", SHEET, "bore", "70 mm")).toEqual({ bore: "70 mm" });
  });
});
