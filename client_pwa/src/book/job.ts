/** A job: everything a person entered for one engine, as it is kept, shared and read back.
 *
 * Whatever comes from outside the running page (the job book, a file, a link) is a stranger's text: it is
 * checked here, brought up to the present version, and never trusted for its shape. `inputs` hold what was
 * typed ("3 1/8 in"), under the names the calculations use, so that a job's inputs are also a request body
 * of the service. */

import { broughtUp, isRecord } from "./versions";

export const JOB_FORMAT = "ringwright-job";
export const JOB_VERSION = 3;

export type Input = string | boolean | Input[] | { [name: string]: Input };
export type Inputs = { [name: string]: Input };

export interface Job {
  id: string;
  name: string;
  /** Milliseconds since 1970, of this device's clock. */
  created: number;
  changed: number;
  demo: boolean;
  notes: string;
  inputs: Inputs;
  /** Operations of the route card that are ticked off, by key: a number means other work once the card changes. */
  done: string[];
  /** Sizes measured at the bench, by the place they are asked for ("route/turn-rough/rough_outside_diameter"). */
  measured: { [place: string]: string };
}

export interface JobFile {
  format: typeof JOB_FORMAT;
  version: number;
  jobs: Job[];
}

export type JobReading = { ok: true; job: Job } | { ok: false; reasons: string[]; raw: unknown; name: string };

const LONGEST_NAME = 120;
const LONGEST_NOTES = 20_000;
const LONGEST_INPUT = 200;
const MOST_INPUTS = 200;
const MOST_ENTRIES = 500;
const DEEPEST = 5;
const NAME = /^[a-z][a-z0-9_]{0,63}$/;
const OPERATION = /^[a-z][a-z-]{0,39}$/;
const ID = /^[A-Za-z0-9_-]{1,64}$/;

export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(9));
  return btoa(String.fromCharCode(...bytes)).replace(/\+/g, "-").replace(/\//g, "_");
}

export function newJob(name: string, inputs: Inputs = {}): Job {
  const now = Date.now();
  return { id: newId(), name, created: now, changed: now, demo: false, notes: "", inputs, done: [], measured: {} };
}

export function copyOf(job: Job, name: string): Job {
  const now = Date.now();
  return { ...structuredClone(job), id: newId(), name, created: now, changed: now, demo: false };
}

/** A job from anything at all: the job brought up to date, or the reasons why it is none. */
export function readJob(raw: unknown, version: unknown = JOB_VERSION): JobReading {
  const reasons: string[] = [];
  if (!isRecord(raw)) return { ok: false, reasons: ["it is not a job at all"], raw, name: "Unreadable job" };
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1) {
    reasons.push("it does not say which version it is");
  } else if (version > JOB_VERSION) {
    reasons.push(`it was written by a newer version of this app (format ${version}, this app reads ${JOB_VERSION})`);
  }
  const current = broughtUp(raw, version);
  const job: Job = {
    id: typeof current.id === "string" && ID.test(current.id) ? current.id : newId(),
    name: text(current.name, "name", LONGEST_NAME, reasons) || "Job without a name",
    created: time(current.created),
    changed: time(current.changed),
    demo: current.demo === true,
    notes: current.notes === undefined ? "" : text(current.notes, "notes", LONGEST_NOTES, reasons),
    inputs: readInputs(current.inputs, reasons),
    done: readDone(current.done),
    measured: readMeasured(current.measured, reasons),
  };
  if (reasons.length > 0) return { ok: false, reasons, raw, name: job.name };
  return { ok: true, job };
}

/** Inputs from anything at all; what cannot be read is named in `reasons`. */
export function readInputs(raw: unknown, reasons: string[]): Inputs {
  if (!isRecord(raw)) {
    reasons.push("it holds no inputs");
    return {};
  }
  const names = Object.keys(raw);
  if (names.length > MOST_INPUTS) {
    reasons.push("it holds more inputs than any job has");
    return {};
  }
  const inputs: Inputs = {};
  for (const name of names) {
    if (!NAME.test(name)) {
      reasons.push(`an input has a name that cannot be right: ${JSON.stringify(name.slice(0, 40))}`);
      continue;
    }
    const value = readInput(raw[name], 1);
    if (value === undefined) reasons.push(`the input ${name} cannot be read`);
    else inputs[name] = value;
  }
  return inputs;
}

function readInput(raw: unknown, depth: number): Input | undefined {
  if (typeof raw === "string") return raw.length <= LONGEST_INPUT ? raw : undefined;
  if (typeof raw === "boolean") return raw;
  if (typeof raw === "number") return Number.isFinite(raw) ? String(raw) : undefined;
  if (depth >= DEEPEST) return undefined;
  if (Array.isArray(raw)) {
    if (raw.length > MOST_ENTRIES) return undefined;
    const list = raw.map((each) => readInput(each, depth + 1));
    return list.includes(undefined) ? undefined : (list as Input[]);
  }
  if (!isRecord(raw)) return undefined;
  const entry: Inputs = {};
  for (const [name, value] of Object.entries(raw)) {
    const read = NAME.test(name) ? readInput(value, depth + 1) : undefined;
    if (read === undefined) return undefined;
    entry[name] = read;
  }
  return entry;
}

function readDone(raw: unknown): string[] {
  if (!Array.isArray(raw)) return [];
  return raw.filter((each): each is string => typeof each === "string" && OPERATION.test(each)).slice(0, 200);
}

function readMeasured(raw: unknown, reasons: string[]): { [place: string]: string } {
  const measured: { [place: string]: string } = {};
  if (raw === undefined) return measured;
  if (!isRecord(raw) || Object.keys(raw).length > MOST_ENTRIES) {
    reasons.push("its measured sizes cannot be read");
    return measured;
  }
  for (const [place, value] of Object.entries(raw)) {
    if (typeof value === "string" && value.length <= LONGEST_INPUT && place.length <= LONGEST_INPUT && place !== "__proto__") {
      measured[place] = value;
    } else {
      reasons.push("a measured size cannot be read");
    }
  }
  return measured;
}

function text(raw: unknown, what: string, longest: number, reasons: string[]): string {
  if (typeof raw !== "string") reasons.push(`its ${what} is not text`);
  else if (raw.length > longest) reasons.push(`its ${what} is longer than ${longest} letters`);
  else return raw;
  return "";
}

/** Beyond the last that a date can be it could not be shown. */
const LAST_TIME = 8.64e15;

function time(raw: unknown): number {
  return typeof raw === "number" && raw >= 0 && raw <= LAST_TIME ? raw : 0;
}
