/** The open job sheet: one set of inputs under every screen, and the answers that follow from them. */

import { batch, computed, effect, signal } from "@preact/signals";
import type { ReadonlySignal, Signal } from "@preact/signals";
import type { Answer, Fault } from "../engine/answers";
import { ask, drop } from "../engine/client";
import { sentence } from "../engine/labels";
import type { CalculationName, InputName } from "../engine/names";
import { fieldNamed, fieldsOf, isKnown } from "../engine/tables";
import { newJob } from "../book/job";
import { jobBegins, shopInputs } from "../book/shop";
import type { Input, Inputs, Job } from "../book/job";
import { changeOf, seenBy } from "./apart";
import { fed, FEEDS, variantOf } from "./feeds";
import { begin, remember } from "./history";
import { inOwnUnit } from "./own_unit";
import { assemble, sheetPath } from "./request";
import { ringsMeasured } from "./rings_measured";
import { typing } from "./typing";
import { unitNamed } from "../units/kinds";
import { splitText } from "../units/parse";

export type Result =
  | { state: "waiting" }
  | { state: "incomplete"; missing: string[]; words?: string }
  | { state: "ready"; answer: Answer; stale: boolean }
  | { state: "faults"; faults: Fault[]; before: Answer | undefined }
  | { state: "broken"; message: string; before: Answer | undefined };

const WAITING: Result = { state: "waiting" };

export const job = signal<Job>(newJob("New job"));
export const jobId = computed(() => job.value.id);
/** Counts the changes a person made; a job freshly opened starts at nought. */
export const edits = signal(0);
export const inputs = computed<Inputs>(() => job.value.inputs);
/** What calculations are asked with: the job's own inputs, and where it says nothing those of the shop. */
export const inputsWithShop = computed<Inputs>(() => ({ ...shopInputs.value, ...inputs.value }));
/** What was measured of the rings; kept apart, so that a tick or a note asks nothing anew. */
const measuredSizes = computed(() => job.value.measured);

/** The calculations that the screen in view asks for. */
const wanted = signal<readonly string[]>([]);
/** Those that a part of the screen asks for while it lies open, such as a drawing, with how many ask. */
const alsoWanted = signal<ReadonlyMap<string, number>>(new Map());
/** Large questions wait until the hand rests, in ms, so that they never hold up the small ones. */
const REST: Readonly<Record<string, number>> = { job: 180, spread: 250 };
const resting = new Map<string, ReturnType<typeof setTimeout>>();
const results = new Map<string, Signal<Result>>();
const asked = new Map<string, string>();

/** What each answer was asked with. */
const questions = new WeakMap<Answer, { calculation: CalculationName; request: unknown }>();

/** The answers on the sheet, each with its question. */
export function answersWithQuestions() {
  return [...results.values()].flatMap((result) => {
    const now = result.peek();
    const answer = now.state === "ready" ? now.answer : "before" in now ? now.before : undefined;
    const question = answer && questions.get(answer);
    return answer && question ? [{ answer, ...question }] : [];
  });
}

/** What an answer took for an input: as it was asked, else as it was chosen. */
export function takenFor(answer: Answer, name: InputName): unknown {
  const request = questions.get(answer)?.request as Readonly<Record<string, unknown>> | undefined;
  return request?.[name] ?? answer.chosen.find((each) => each.input === name)?.value;
}

export function resultOf(calculation: string): Signal<Result> {
  let found = results.get(calculation);
  if (!found) {
    found = signal<Result>(WAITING);
    results.set(calculation, found);
  }
  return found;
}

export function want(calculations: readonly string[]): void {
  if (calculations.join() !== wanted.peek().join()) wanted.value = calculations;
}

export function change(edit: Partial<Job>): void {
  remember(job.peek(), edit);
  write(edit);
}

/** Puts a former state of the job back on the sheet, as a change that is kept like any other. */
export function putBack(former: Job): void {
  write(former);
}

function write(edit: Partial<Job>): void {
  batch(() => {
    job.value = { ...job.value, ...edit, changed: Date.now(), demo: edit.demo ?? job.value.demo };
    edits.value += 1;
  });
}

/** Asks for a calculation until the returned function is called. */
export function alsoWant(key: string): () => void {
  const count = (step: number): void => {
    const next = new Map(alsoWanted.peek());
    const left = (next.get(key) ?? 0) + step;
    if (left > 0) next.set(key, left);
    else next.delete(key);
    alsoWanted.value = next;
  };
  count(1);
  return () => count(-1);
}

export function inputsFor(calculation: string): Inputs {
  return seenBy(calculation, inputs.value);
}

const ofInputs = new Map<string, ReadonlySignal<Input | undefined>>();

/** One of them: who reads it hears of no other. */
export function inputFor(calculation: string, name: string): Input | undefined {
  const key = `${calculation}/${name}`;
  let found = ofInputs.get(key);
  if (!found) {
    found = computed(() => inputsFor(calculation)[name]);
    ofInputs.set(key, found);
  }
  return found.value;
}

export function setInputFor(calculation: string, name: string, value: Input | undefined): void {
  setInputs(changeOf(calculation, inputs.peek(), name, value));
}

export function setInput(name: string, value: Input | undefined): void {
  setInputs({ [name]: value });
}

export function setInputs(changes: Record<string, Input | undefined>): void {
  const next: Inputs = { ...job.peek().inputs };
  for (const [name, value] of Object.entries(changes)) {
    // A list keeps its empty rows while they are being filled in.
    if (value === undefined || value === "" || (Array.isArray(value) && value.length === 0)) delete next[name];
    else next[name] = value;
  }
  if ("bore" in changes && inInches(next.bore) !== inInches(job.peek().inputs.bore)) {
    // A job in inches has inch sizes, whatever unit its figures are shown in; a person may say otherwise after.
    if (inInches(next.bore)) next.inch_sizes = true;
    else if (jobBegins.peek().inch_sizes === undefined) delete next.inch_sizes;
  }
  change({ inputs: next });
}

/** A job in inches that was kept before there were inch sizes, or that came so from elsewhere: nobody has said. */
export const inchSizesOpen = computed(() => inInches(inputs.value.bore) && inputs.value.inch_sizes === undefined);

const inInches = (bore: Input | undefined): boolean => typeof bore === "string" && unitNamed("length", splitText(bore).unit)?.name === "in";

/** Puts another job on the sheet. Answers of the one before must not be taken for its own. */
export function openJob(next: Job): void {
  batch(() => {
    for (const result of results.values()) result.value = WAITING;
    for (const name of [...asked.keys()]) forget(name);
    if (next.id !== job.peek().id) begin();
    job.value = next;
    edits.value = 0;
  });
}

effect(() => {
  const current = withMeasured(inputsWithShop.value);
  const keys = new Set<string>();
  for (const key of [...wanted.value, ...alsoWanted.value.keys()]) {
    const calculation = variantOf(key)?.calculation ?? key;
    const feed = isKnown(calculation) && FEEDS[calculation];
    if (feed) keys.add(feed.from);
    keys.add(key);
  }
  for (const key of keys) work(key, current);
});

/** The sheet with one record for each ring, for the calculations that follow the rings as they are made. */
function withMeasured(sheet: Inputs): Inputs {
  const field = fieldNamed("measured");
  const measured = field ? ringsMeasured(measuredSizes.value, field, ringsMade(sheet)) : [];
  return measured.length > 0 ? { ...sheet, measured } : sheet;
}

function ringsMade(sheet: Inputs): number {
  const field = fieldNamed("rings");
  const count = Math.round(Number(sheet.rings ?? field?.usual ?? 1));
  return count >= 1 ? Math.min(count, fieldNamed("measured")?.highest ?? 1) : 1;
}

function work(key: string, sheet: Inputs): void {
  const variant = variantOf(key);
  const calculation = variant?.calculation ?? key;
  if (!isKnown(calculation)) return;
  const fields = fieldsOf(calculation);
  const { request, faults, rows } = assemble(fields, seenBy(calculation, variant ? variant.with(sheet) : sheet));
  const result = resultOf(key);
  const before = result.peek();
  const kept = before.state === "ready" ? before.answer : "before" in before ? before.before : undefined;
  const say = (next: Result): void => {
    // Half a number is no fault: while one is being typed the figures before it stay, marked as old.
    if (!typing.value || before.state === "waiting") result.value = next;
    else if (before.state === "ready") result.value = { ...before, stale: true };
  };
  const missing = fields.filter((field) => field.required && !(field.name in request)).map((field) => field.name);
  if (faults.length > 0) {
    forget(key);
    say({ state: "faults", faults, before: kept });
    return;
  }
  if (missing.length > 0) {
    forget(key);
    say({ state: "incomplete", missing });
    return;
  }
  const feed = FEEDS[calculation];
  let full = request;
  if (feed && isKnown(feed.from)) {
    const source = resultOf(feed.from).value;
    if (source.state === "faults" || source.state === "broken") {
      forget(key);
      say({ ...source, before: kept });
      return;
    }
    // It comes by again when the source is worked. A source that lacks something has nothing to give: the
    // bore is surveyed before there is any ring.
    if (source.state === "waiting" || (source.state === "ready" && source.stale)) return;
    if (source.state === "ready") full = fed(request, feed, source.answer, new Set(fields.map((field) => field.name)));
  }
  const text = JSON.stringify(full);
  if (asked.get(key) === text) return;
  asked.set(key, text);
  if (before.state === "ready") result.value = { ...before, stale: true };
  const rest = REST[calculation];
  clearTimeout(resting.get(key));
  if (rest === undefined) put(key, calculation, full, rows, kept);
  else resting.set(key, setTimeout(() => put(key, calculation, full, rows, kept), rest));
}

/** What is held back until the hand leaves the entry or rests. */
const held = new Map<string, () => void>();

effect(() => {
  if (typing.value) return;
  const now = [...held.values()];
  held.clear();
  for (const each of now) each();
});

function put(key: string, calculation: CalculationName, request: unknown, rows: Map<string, number[]>, kept: Answer | undefined): void {
  const result = resultOf(key);
  held.delete(key);
  const say = (next: Result): void => {
    if (!typing.peek() || result.peek().state === "waiting") result.value = next;
    else held.set(key, () => (result.value = next));
  };
  ask(key, calculation, request, (outcome) => {
    if (outcome.state === "answer") {
      questions.set(outcome.answer, { calculation, request });
      result.value = { state: "ready", answer: outcome.answer, stale: false };
    } else if (outcome.state === "broken") {
      asked.delete(key);
      result.value = { state: "broken", message: outcome.error.message, before: kept };
    } else if (outcome.problem.faults.some((fault) => fault.code === "required" && fault.path.length === 1)) {
      // Nothing is wrong yet: something is still to be entered.
      const words = outcome.problem.faults.map((fault) => `${sentence(fault.message)} ${sentence(fault.remedy)}`).join(" ");
      say({ state: "incomplete", missing: [], words });
    } else if (outcome.problem.faults.length > 0) {
      const typed = seenBy(calculation, inputs.peek());
      const mended = outcome.problem.faults.map((fault) =>
        inOwnUnit({ ...fault, path: sheetPath(fault.path, rows) }, fieldsOf(calculation), typed, calculation),
      );
      say({ state: "faults", faults: mended, before: kept });
    } else {
      result.value = { state: "broken", message: outcome.problem.message ?? outcome.problem.code, before: kept };
    }
  });
}

function forget(key: string): void {
  clearTimeout(resting.get(key));
  drop(key);
  asked.delete(key);
  held.delete(key);
}
