/** The numbers put into a figure's formula: asked for when it is opened, with the question that gave the figure. */

import type { Figure } from "../engine/answers";
import { ask } from "../engine/client";
import type { Outcome } from "../engine/client";
import { at, pathTo } from "./path_to";
import { answersWithQuestions } from "./sheet";

/** The figure with its working; as it is where that cannot be had. */
export async function withWorking(figure: Figure): Promise<Figure> {
  if (figure.working) return figure;
  for (const { answer, calculation, request } of answersWithQuestions()) {
    const path = pathTo(answer, figure);
    if (!path) continue;
    const reply = await new Promise<Outcome>((resolve) => ask("opened", calculation, request, resolve, true));
    const found = reply.state === "answer" ? at(reply.answer, path) : undefined;
    return (found as Figure | undefined) ?? figure;
  }
  return figure;
}
