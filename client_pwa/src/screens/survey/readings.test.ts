import { describe, expect, it } from "vitest";
import { gridOf, listOf, pasted, stepped, usualGrid } from "./readings";

const NONE = { heights: [], directions: [] };
const READINGS = [
  { height: "10 mm", direction: "0", diameter: "3.1255 in" },
  { height: "10 mm", direction: "90", diameter: "3.1265 in" },
  { height: "1 in", direction: "0 deg", diameter: "80 mm" },
];

describe("readings as a grid", () => {
  it("come back as the list they were", () => {
    const grid = gridOf(READINGS, NONE)!;
    expect(grid.laid).toEqual({ heights: ["10 mm", "1 in"], directions: ["0", "90"] });
    const list = listOf(grid.laid, (height, direction) => grid.cells.get(`${height}/${direction}`)?.text ?? "");
    expect(list).toEqual([READINGS[0], READINGS[1], { ...READINGS[2]!, direction: "0" }]);
  });
  it("stand at the height laid out already, whatever unit it is in", () => {
    const grid = gridOf(READINGS, { heights: ["25.4 mm", "10 mm"], directions: ["90"] })!;
    expect(grid.laid.heights).toEqual(["25.4 mm", "10 mm"]);
    expect(grid.cells.get("0/1")).toEqual({ text: "80 mm", row: 2 });
  });
  it("fit no grid where two are in one place or the gauge is another", () => {
    expect(gridOf([READINGS[0]!, { ...READINGS[0]!, diameter: "3.12 in" }], NONE)).toBeUndefined();
    expect(gridOf([{ ...READINGS[0]!, gauge: "three-point" }], NONE)).toBeUndefined();
  });
  it("are laid along the stroke", () => {
    expect(usualGrid("4 in", "in").heights).toEqual(["0 in", "2 in", "4 in"]);
    expect(usualGrid(undefined, "mm").heights).toEqual(["0 mm", "50 mm", "100 mm"]);
  });
});

describe("the same as the last but", () => {
  it.each([
    ["+1.5", "3.1255 in", "in", "3.1270 in"],
    ["-.5", "3.1255 in", "in", "3.1250 in"],
    ["+2", "2 7/8 in", "in", "2.8770 in"],
    ["−3", "80.02 mm", "mm", "79.99 mm"],
    ["+0,5", "80.02 mm", "mm", "80.025 mm"],
    ["=", "2 7/8 in", "in", "2 7/8 in"],
  ] as const)("%s on %s", (typed, from, unit, wanted) => {
    expect(stepped(typed, from, unit)).toBe(wanted);
  });
  it.each(["3.1", "", "+", "1+1"])("is not meant by %s", (typed) => {
    expect(stepped(typed, "3 in", "in")).toBeUndefined();
  });
});

describe("a block from a spreadsheet", () => {
  it("is its rows", () => {
    expect(pasted("80,01\t80,02\r\n80,03\t80,04\r\n")).toEqual({ rows: [["80,01", "80,02"], ["80,03", "80,04"]] });
  });
  it("brings its heights and directions", () => {
    expect(pasted("\t0\t90\n10 mm\t3.12\t3.13\n")).toEqual({ heights: ["10 mm"], directions: ["0", "90"], rows: [["3.12", "3.13"]] });
  });
  it("is none when it is one cell", () => expect(pasted("80.01")).toBeUndefined());
});
