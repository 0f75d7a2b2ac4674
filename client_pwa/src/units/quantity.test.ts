import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { joinText, parseQuantity, splitText } from "./parse";

type Row = [kind: string, text: string, value: number | null];

/** Made from the grammar of quantities, openapi/quantity.lark; the service reads the same ones. */
const TABLE = JSON.parse(readFileSync(new URL("../../../tests/vectors/quantities.json", import.meta.url), "utf8")) as Row[];

it("reads what the grammar has, to the last digit, and nothing else", () => {
  const wrong = TABLE.filter(([kind, text, value]) => {
    const parsed = parseQuantity(kind, text, "");
    return parsed.ok ? parsed.reading.value !== value : value !== null;
  });
  expect(wrong).toEqual([]);
  expect(TABLE.length).toBeGreaterThan(3000);
});

it("takes a text apart into number and unit that read as the whole", () => {
  const wrong = TABLE.filter(([kind, text, value]) => {
    if (value === null) return false;
    const { number, unit } = splitText(text);
    const parsed = parseQuantity(kind, number, unit);
    return !parsed.ok || parsed.reading.value !== value;
  });
  expect(wrong).toEqual([]);
});

it.each(["1,250", "1,250,000", "121/min", "1e308", "3 1/", "3,", "1.2.3"])("never cuts %s where it could be read", (text) => {
  expect(joinText(text, "mm").startsWith(text)).toBe(true);
  expect(splitText(`${text} mm`).number.startsWith(splitText(text).number)).toBe(true);
  expect(parseQuantity("length", joinText(splitText(text).number, "mm"), "").ok).toBe(false);
});
