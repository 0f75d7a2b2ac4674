import { describe, expect, it } from "vitest";
import { rackAfter } from "./rack";
import type { Cut } from "./rack";

const mm = (value: number) => ({ value, unit: "mm" });
const cut = (edit: Partial<Cut>): Cut => ({ bar: "Bar 1", have: true, alike: 1, bar_length: mm(300), sticks: [], offcut: mm(120.06), offcut_kept: true, ...edit });

describe("the rack after cutting", () => {
  it("has the rest of a bar in its place", () => {
    expect(rackAfter([{ diameter: "90 mm", length: "300 mm" }], [cut({})])).toEqual([{ diameter: "90 mm", name: "Bar 1, rest", length: "120 mm", count: "1" }]);
  });
  it("keeps what was not cut, and of three alike two", () => {
    const rack = rackAfter([{ name: "long", length: "12 in", count: "3" }, { name: "short", length: "80 mm" }], [cut({ bar: "long", offcut: mm(50.8) })]);
    expect(rack).toEqual([{ name: "long", length: "12 in", count: "2" }, { name: "short", length: "80 mm" }, { name: "long, rest", length: "2 in", count: "1" }]);
  });
  it("throws scrap away and leaves bars to buy out of it", () => {
    expect(rackAfter([{ length: "300 mm" }], [cut({ offcut_kept: false }), cut({ bar: "3 in", have: false })])).toEqual([]);
  });
  it("names two rests apart", () => {
    const names = rackAfter([{ name: "a", count: "2", length: "300 mm" }], [cut({ bar: "a" }), cut({ bar: "a", offcut: mm(90) })]).map((bar) => bar.name);
    expect(new Set(names).size).toBe(2);
  });
});
