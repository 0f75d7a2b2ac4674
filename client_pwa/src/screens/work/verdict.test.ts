import { expect, test } from "vitest";
import type { Size } from "../../engine/answers";
import type { System } from "../../base/settings";
import { verdictOn } from "./verdict";

const size = (value: number, unit: string, name: string, limits?: [number, number]): Size =>
  ({ value, unit, name, label: name, ...(limits && { limits: { lower: { value: limits[0], unit }, upper: { value: limits[1], unit } } }) });
const said = (one: Size, measured: number, system: System): string[] => {
  const { outcome, words } = verdictOn(one, measured, system);
  return [outcome ?? "", words];
};

test("what the card shows is on the card, however many digits stand behind it", () => {
  // 74.512 mm is 2.93354 in, shown as 2.934, and as 2.9335 where a gauge reads it.
  expect(said(size(74.512, "mm", "inside"), 2.934 * 25.4, "inch")).toEqual(["good", "As on the card."]);
  expect(said(size(74.512, "mm", "inside"), 2.946 * 25.4, "inch")).toEqual(["", "0.012 in more than on the card."]);
  expect(said(size(74.512, "mm", "bore"), 2.9335 * 25.4, "inch")).toEqual(["good", "As on the card."]);
  expect(said(size(74.512, "mm", "bore"), 2.934 * 25.4, "inch")).toEqual(["", "0.0005 in more than on the card."]);
});

test("degrees are apart by degrees: 551 for 550 is one more, 1.8 in the other scale", () => {
  expect(said(size(550, "degC", "soak_temperature"), 551, "metric")).toEqual(["", "1 °C more than on the card."]);
  expect(said(size(550, "degC", "soak_temperature"), (1024 - 32) / 1.8, "inch")).toEqual(["", "2 °F more than on the card."]);
});

test("a size within its limits is good, and which side is still open the name tells", () => {
  expect(said(size(75, "mm", "bore", [75, 75.03]), 75.03, "metric")[0]).toBe("good");
  expect(said(size(75, "mm", "bore", [75, 75.03]), 75.13, "metric")).toEqual(["stop", "0.100 mm above its upper limit: too much is off."]);
  expect(said(size(80, "mm", "outside", [79.9, 80]), 80.1, "metric")).toEqual(["watch", "0.100 mm above its upper limit: take off more."]);
});
