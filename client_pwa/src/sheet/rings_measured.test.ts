import { describe, expect, it } from "vitest";
import type { Field } from "../engine/tables";
import { ringsMeasured } from "./rings_measured";

const FIELD: Field = {
  name: "measured",
  kind: "records",
  items: [
    { name: "ring", kind: "count" },
    { name: "end_kerf", kind: "length", unit: "mm", lowest: 0.1, highest: 15 },
    { name: "ring_width", kind: "length", unit: "mm", lowest: 0.3, highest: 150 },
    { name: "former_diameter", kind: "length", unit: "mm", lowest: 5, highest: 1500 },
  ],
};

describe("sizes measured at the bench", () => {
  it("become one record for each ring that is made", () => {
    const measured = { "route/saw-ends/end_kerf": "1.2 mm", "route/face-step/ring_width/2": "3/16 in" };
    expect(ringsMeasured(measured, FIELD, 3)).toEqual([{ ring: "1", end_kerf: "1.2 mm" }, { ring: "2", ring_width: "3/16 in" }, { ring: "3" }]);
  });
  it("go with a tool to every ring that has none of its own", () => {
    const place = "route/put-on-former/former_diameter";
    const of = (measured: Record<string, string>) => ringsMeasured(measured, FIELD, 3).map((each) => (each as Record<string, string>).former_diameter);
    expect(of({ [place]: "76.8 mm" })).toEqual(["76.8 mm", "76.8 mm", "76.8 mm"]);
    expect(of({ [`${place}/2`]: "76.8 mm", [`${place}/3`]: "77 mm" })).toEqual(["76.8 mm", "76.8 mm", "77 mm"]);
  });
  it("are none while nothing of the rings is measured", () => {
    expect(ringsMeasured({}, FIELD, 2)).toEqual([]);
    expect(ringsMeasured({ "tool/pot/pot_bore": "80 mm", "route/soak/soak_temperature": "550 degC" }, FIELD, 2)).toEqual([]);
  });
  it.each([["no number", "x"], ["less than any ring has", "0.01 mm"], ["more than any ring has", "900 mm"]])("leave out what is %s", (_what, text) => {
    expect(ringsMeasured({ "route/saw-ends/end_kerf": text }, FIELD, 1)).toEqual([]);
  });
  it("leave out a ring that is not made", () => {
    expect(ringsMeasured({ "route/saw-ends/end_kerf/4": "1 mm" }, FIELD, 2)).toEqual([]);
  });
  it.each([
    [{ "route/inspect/ring_width": "5.01 mm", "route/face-step/ring_width": "5.02 mm" }],
    [{ "route/face-step/ring_width": "5.02 mm", "route/inspect/ring_width": "5.01 mm" }],
  ])("take the finished ring's size, whenever it was typed", (measured) => {
    expect(ringsMeasured(measured, FIELD, 1)).toEqual([{ ring: "1", ring_width: "5.01 mm" }]);
  });
});
