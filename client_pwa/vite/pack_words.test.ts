import { describe, expect, it } from "vitest";
import { codeOf, isPlain, MOST_WORDS, unpackWords } from "../src/engine/words";
import { coreFiles } from "./core_plugin";
import { packWords } from "./pack_words";

describe("packWords", () => {
  it("comes back letter for letter", () => {
    const text = "radius = radius + radius * radius\nfor radius in radius: radius\n";
    expect(unpackWords(packWords(text))).toBe(text);
  });
  it("brings the whole core back letter for letter", () => {
    const files = coreFiles("../service/ringwright/core");
    const text = Object.values(files).join("");
    const packed = packWords(text);
    expect(unpackWords(packed)).toBe(text);
    expect(packed.length).toBeLessThan(text.length * 0.75);
  });
  it("has a code of its own for every word", () => {
    const codes = Array.from({ length: MOST_WORDS }, (_unused, number) => codeOf(number));
    expect(new Set(codes.map(String)).size).toBe(MOST_WORDS);
    for (const [first] of codes) expect(isPlain(first!)).toBe(false);
  });
  it("refuses what it could not bring back", () => {
    expect(() => packWords("three °")).toThrow("not plain");
  });
  it("leaves no line that begins like the head of a file", () => {
    const files = coreFiles("../service/ringwright/core");
    for (const source of Object.values(files)) expect(source).not.toMatch(/^#/m);
  });
});
