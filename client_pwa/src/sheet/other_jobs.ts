/** Jobs of the book beside the one on the sheet: which there are, and what a calculation says of one. */

import type { Job } from "../book/job";
import { shopInputs } from "../book/shop";
import { ask } from "../engine/client";
import type { Outcome as Reply } from "../engine/client";
import type { Answer } from "../engine/answers";
import { sentence } from "../engine/labels";
import type { CalculationName } from "../engine/names";
import { fieldsOf } from "../engine/tables";
import { assemble } from "./request";
import { liveEntries } from "./session";
import { job } from "./sheet";

/** Every sound job of the book; the open one as it stands on the sheet. */
export function jobsOfTheBook(): Job[] {
  return liveEntries.value.flatMap((entry) => (entry.reading.ok ? [entry.id === job.value.id ? job.value : entry.reading.job] : []));
}

export interface Worked {
  /** What was asked, in core units. */
  request: Record<string, unknown>;
  answer: Answer | undefined;
  /** Why there is none. */
  words: string;
}

/** A calculation of one job, with what the shop has. key: of the question, so that a newer one takes its place. */
export async function workedOf(one: Job, calculation: CalculationName, key: string): Promise<Worked> {
  const { request, faults } = assemble(fieldsOf(calculation), { ...shopInputs.peek(), ...one.inputs });
  if (faults.length > 0) return { request, answer: undefined, words: sentence(faults[0]!.message) };
  const reply = await replyTo(key, calculation, request);
  return reply.state === "answer" ? { request, answer: reply.answer, words: "" } : { request, answer: undefined, words: wordsOf(reply) };
}

export const replyTo = (key: string, calculation: string, request: unknown): Promise<Reply> =>
  new Promise((resolve) => ask(key, calculation, request, resolve));

export function wordsOf(reply: Reply): string {
  if (reply.state === "problem") return reply.problem.faults.map((fault) => `${sentence(fault.message)} ${sentence(fault.remedy)}`).join(" ");
  return reply.state === "broken" ? reply.error.message : "";
}
