import { describe, expect, it } from "vitest";
import { fileText, readFileText } from "./files";
import { copyOf, JOB_VERSION, newJob, readJob } from "./job";

const job = { ...newJob("Pump engine", { bore: "3 1/8 in", bars: [{ diameter: "90 mm", skin: true }] }), notes: "No. 4" };

describe("a job read back", () => {
  it("is what was written", () => {
    const read = readJob(JSON.parse(JSON.stringify(job)));
    expect(read).toEqual({ ok: true, job });
  });
  it("gets a new id and no demo mark when copied", () => {
    const copy = copyOf({ ...job, demo: true }, "Another");
    expect(copy.id).not.toBe(job.id);
    expect(copy.demo).toBe(false);
    expect(copy.inputs).toEqual(job.inputs);
    expect(copy.inputs).not.toBe(job.inputs);
  });
  it("is brought up from the first version", () => {
    const read = readJob({ ...job, inputs: { bore: { number: "3 1/8", unit: "in" }, ring_type: "plain" } }, 1);
    expect(read.ok && read.job.inputs).toEqual({ bore: "3 1/8 in", ring_type: "plain" });
  });
  it("takes a plain number as its text", () => {
    const read = readJob({ name: "x", inputs: { rings: 3 } });
    expect(read.ok && read.job.inputs.rings).toBe("3");
  });
  it.each([1e300, -1, Number.NaN, "1970"])("was changed at a time that can be shown, not at %s", (changed) => {
    const read = readJob({ name: "x", inputs: {}, changed, created: changed });
    expect(read.ok && new Date(read.job.changed).toISOString()).toBe("1970-01-01T00:00:00.000Z");
  });
  it.each([
    ["null", null],
    ["a number", 3],
    ["a list", []],
    ["no inputs", { name: "x" }],
    ["inputs as text", { name: "x", inputs: "bore" }],
    ["a name that is not text", { name: {}, inputs: {} }],
    ["a name without end", { name: "x".repeat(500), inputs: {} }],
    ["an input without end", { name: "x", inputs: { bore: "9".repeat(500) } }],
    ["an input with a strange name", { name: "x", inputs: { "__proto__ ": "1" } }],
    ["an input too deep", { name: "x", inputs: { bars: [[[[[["1"]]]]]] } }],
    ["a list too long", { name: "x", inputs: { bars: Array(501).fill("1") } }],
    ["an input that is nothing", { name: "x", inputs: { bore: null } }],
    ["measured sizes that are not text", { name: "x", inputs: {}, measured: { a: 3 } }],
  ])("is shown as damaged: %s", (_why, raw) => {
    const read = readJob(raw);
    expect(read.ok).toBe(false);
    if (!read.ok) {
      expect(read.reasons.length).toBeGreaterThan(0);
      expect(read.raw).toBe(raw);
    }
  });
  it("of a newer format is not guessed at", () => {
    const read = readJob(job, JOB_VERSION + 1);
    expect(!read.ok && read.reasons[0]).toContain("newer version");
  });
});

describe("a file", () => {
  it("goes out and comes in", () => {
    const read = readFileText(fileText([job]));
    expect(read.ok && read.readings).toEqual([{ ok: true, job }]);
  });
  it.each(["", "nonsense", "[]", "{}", '{"format":"ringwright-job","version":2}', '{"format":"x","version":2,"jobs":[]}'])(
    "that is none is refused in words: %s",
    (text) => {
      const read = readFileText(text);
      expect(!read.ok && read.message).toContain("not a job file");
    },
  );
  it("comes in within a sheet on paper, the newest where something was added", () => {
    const within = (name: string) =>
      `<<\n/Type /EmbeddedFile\n>>\nstream\n${JSON.stringify({ format: "ringwright-job", version: JOB_VERSION, jobs: [{ ...job, name }] })}\nendstream\nendobj\n`;
    const name = 'Marigold (endstream) stream {"format":"ringwright-job",';
    const read = readFileText(`%PDF-1.4\n%\uFFFD\n${within("Before")}3 0 obj\nstream\n\uFFFD\nendstream\n${within(name)}%%EOF\n`);
    expect(read.ok && read.readings).toEqual([{ ok: true, job: { ...job, name } }]);
  });
  it.each([
    ["%PDF-1.4\nstream\nnothing of ours\nendstream\n%%EOF", "holds no job"],
    ['%PDF-1.4\nstream\n{"format":"ringwright-job","version":3,"jobs":[', "not a job file"],
    ['%PDF-1.4\nstream\n{"format":"ringwright-job",%PDF-\n', "not a job file"],
  ])("on paper without a job is refused in words: %s", (text, words) => {
    const read = readFileText(text);
    expect(!read.ok && read.message).toContain(words);
  });
});
