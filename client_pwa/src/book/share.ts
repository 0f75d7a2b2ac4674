/** A whole job in a link: JSON, deflated, in base64url, in the fragment, which no server is sent. */

import { JOB_FORMAT, JOB_VERSION, readJob } from "./job";
import type { Job, JobReading } from "./job";
import { isRecord } from "./versions";

const LONGEST_LINK = 60_000;
const LARGEST_JOB = 400_000;

export async function packJob(job: Job): Promise<string> {
  const { id: _id, demo: _demo, done: _done, ...kept } = job;
  const text = JSON.stringify({ format: JOB_FORMAT, version: JOB_VERSION, job: kept });
  const stream = new Blob([text]).stream().pipeThrough(new CompressionStream("deflate-raw"));
  return toBase64Url(new Uint8Array(await new Response(stream).arrayBuffer()));
}

export async function unpackJob(packed: string): Promise<JobReading> {
  const unreadable = (why: string): JobReading => ({ ok: false, reasons: [why], raw: packed, name: "Job from a link" });
  if (packed.length > LONGEST_LINK) return unreadable("the link is longer than any job needs");
  let text: string;
  try {
    const bytes = fromBase64Url(packed);
    text = await inflate(bytes);
  } catch {
    return unreadable("the link is cut short or changed: ask for it again");
  }
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch {
    return unreadable("what the link carries is not a job");
  }
  if (!isRecord(raw) || raw.format !== JOB_FORMAT) return unreadable("what the link carries is not a job of this app");
  return readJob(raw.job, raw.version);
}

/** Stops as soon as more comes out than a job can be, so that a small link cannot fill the memory. */
async function inflate(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const reader = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("deflate-raw")).getReader();
  const decoder = new TextDecoder("utf-8", { fatal: true });
  let text = "";
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return text + decoder.decode();
    text += decoder.decode(value, { stream: true });
    if (text.length > LARGEST_JOB) {
      await reader.cancel();
      throw new Error("more than a job");
    }
  }
}

function toBase64Url(bytes: Uint8Array): string {
  let text = "";
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text).replace(/\+/g, "-").replace(/\//g, "_").replace(/=+$/, "");
}

function fromBase64Url(text: string): Uint8Array<ArrayBuffer> {
  if (!/^[A-Za-z0-9_-]+$/.test(text)) throw new Error("not base64url");
  const plain = atob(text.replace(/-/g, "+").replace(/_/g, "/"));
  const bytes = new Uint8Array(plain.length);
  for (let index = 0; index < plain.length; index += 1) bytes[index] = plain.charCodeAt(index);
  return bytes;
}
