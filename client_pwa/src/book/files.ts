/** Jobs as a file: written so that it can be read in any text editor, read as a stranger's. */

import { JOB_FORMAT, JOB_VERSION, readJob } from "./job";
import type { Job, JobFile, JobReading } from "./job";
import { isRecord } from "./versions";

const LARGEST_FILE = 5_000_000;
const MOST_JOBS = 1000;
/** Sheets on paper hold their job in one line of a stream that begins so. */
const JOB_IN_PDF = `stream\n{"format":"${JOB_FORMAT}",`;

export type FileReading = { ok: true; readings: JobReading[] } | { ok: false; message: string };

export function fileText(jobs: readonly Job[]): string {
  const file: JobFile = { format: JOB_FORMAT, version: JOB_VERSION, jobs: [...jobs] };
  return JSON.stringify(file, null, 2) + "\n";
}

export function readFileText(text: string): FileReading {
  if (text.length > LARGEST_FILE) return { ok: false, message: "This file is far larger than any job book." };
  if (text.startsWith("%PDF-")) {
    // What was added to a PDF later stands further down.
    const at = text.lastIndexOf(JOB_IN_PDF);
    if (at < 0) return { ok: false, message: "This PDF holds no job: bring in the sheet as the service wrote it, not a copy that was printed or scanned." };
    const start = text.indexOf("{", at);
    return readFileText(text.slice(start, text.indexOf("\n", start)));
  }
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch {
    return { ok: false, message: "This is not a job file: it is not written in JSON." };
  }
  if (!isRecord(raw) || raw.format !== JOB_FORMAT || !Array.isArray(raw.jobs)) {
    return { ok: false, message: "This is not a job file: it does not say that it holds jobs of this app." };
  }
  if (raw.jobs.length > MOST_JOBS) return { ok: false, message: `This file holds more than ${MOST_JOBS} jobs.` };
  const { version } = raw;
  return { ok: true, readings: raw.jobs.map((each) => readJob(each, version)) };
}

/** Hands a file to the person by the browser's own download. */
export function saveOut(name: string, text: string, type = "application/json"): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The download must have begun before the address is taken away.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

export function fileName(job: Job): string {
  const plain = job.name.toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "").slice(0, 40);
  return `${plain || "job"}.ringwright.json`;
}
