import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { fileText, readFileText } from "./files";
import { JOB_VERSION } from "./job";

/** Files as the app of that version wrote them, kept as they are. */
const stored = (version: number): string =>
  readFileSync(new URL(`../../../tests/vectors/jobs/version_${version}.json`, import.meta.url), "utf-8");
const jobsOf = (text: string) => {
  const read = readFileText(text);
  return read.ok ? read.readings.map((each) => (each.ok ? each.job : each.reasons)) : read.message;
};
const present = (JSON.parse(stored(JOB_VERSION)) as { jobs: unknown[] }).jobs;

describe("a stored job file", () => {
  it("of the first version is read with its meaning", () => {
    expect(jobsOf(stored(1))).toEqual(present.slice(0, 1));
  });
  it("of the second version is read with its meaning", () => {
    expect(jobsOf(stored(2))).toEqual(present.slice(1));
  });
  it("of the present version goes in and out unchanged", () => {
    const read = readFileText(stored(JOB_VERSION));
    const jobs = read.ok ? read.readings.flatMap((each) => (each.ok ? [each.job] : [])) : [];
    expect(jobs).toEqual(present);
    expect(JSON.parse(fileText(jobs))).toEqual(JSON.parse(stored(JOB_VERSION)));
  });
});
