import { describe, expect, it } from "vitest";
import type { Field } from "../engine/tables";
import { assemble, sheetPath } from "./request";

const FIELDS: Field[] = [
  { name: "bore", kind: "length", unit: "mm", required: true },
  { name: "ring_type", kind: "choice", choices: ["plain", "double-turn"] },
  { name: "joint_pinned", kind: "flag" },
  { name: "spindle_speeds", kind: "records", items: [{ name: "", kind: "speed", unit: "1/min" }] },
  {
    name: "bars",
    kind: "records",
    items: [
      { name: "diameter", kind: "length", unit: "mm" },
      { name: "count", kind: "count" },
    ],
  },
];

describe("a request from what was typed", () => {
  it("is in core units and leaves out what is empty or not asked for", () => {
    const { request, faults } = assemble(FIELDS, {
      bore: "3 1/8 in",
      ring_type: "plain",
      joint_pinned: false,
      spindle_speeds: ["60 rpm", "", "120"],
      bars: [{}, { diameter: "4 in", count: "2" }],
      stroke: "100 mm",
    });
    expect(faults).toEqual([]);
    expect(request).toEqual({
      bore: 79.375,
      ring_type: "plain",
      joint_pinned: false,
      spindle_speeds: [60, 120],
      bars: [{ diameter: 101.6, count: 2 }],
    });
  });
  it("names the entry that cannot be read by its row on the sheet", () => {
    const { faults } = assemble(FIELDS, { bore: "eighty", bars: [{}, { diameter: "x" }] });
    expect(faults.map((fault) => fault.path)).toEqual([["bore"], ["bars", 1, "diameter"]]);
  });
  it("brings the engine's row numbers back to those of the sheet", () => {
    const { rows } = assemble(FIELDS, { bars: [{}, { count: "1" }, {}, { count: "2" }] });
    expect(sheetPath(["bars", 1, "diameter"], rows)).toEqual(["bars", 3, "diameter"]);
    expect(sheetPath(["bore"], rows)).toEqual(["bore"]);
  });
  it("refuses a number that its unit carries beyond all measure, and takes no default for it", () => {
    const { request, faults } = assemble(FIELDS, { bore: "1e308 in" });
    expect(request).toEqual({});
    expect(faults.map((fault) => [fault.path, fault.message])).toEqual([[["bore"], "'1e308 in' is beyond any measure"]]);
  });
  it("refuses an entry of the wrong shape instead of guessing", () => {
    const { faults } = assemble(FIELDS, { bore: ["80"], ring_type: { a: "b" }, bars: "two" });
    expect(faults.map((fault) => fault.code)).toEqual(["unreadable", "unreadable", "unreadable"]);
  });
});
