/** A quiet line: what the last entry moved. All that is typed in one entry is one step, as for undo. */

import { useRef } from "preact/hooks";
import { system } from "../base/settings";
import type { Figures } from "../engine/answers";
import { figureLabel } from "../engine/tables";
import { lastStep } from "../sheet/history";
import { jobId } from "../sheet/sheet";
import { movesBetween } from "./moved";
import type { Move } from "./moved";
import type { InView } from "./results";

/** As many as are read at a glance; the rest lie below. */
const AT_ONCE = 3;

interface Seen {
  id: string;
  step: unknown;
  before: Figures | undefined;
  now: Figures;
}

export function Moved({ view: { answer, result } }: { view: InView }) {
  const seen = useRef<Seen | undefined>(undefined);
  // Only an answer tells of a move: neither another job nor another step by itself.
  const [id, step] = [jobId.peek(), lastStep.peek()];
  if (answer && result.state === "ready" && answer.figures !== seen.current?.now) {
    const last = seen.current?.id === id ? seen.current : undefined;
    seen.current = { id, step, before: last?.step === step ? last?.before : last?.now, now: answer.figures };
  }
  const { before, now } = seen.current ?? {};
  const moves = before && now && seen.current?.id === id ? movesBetween(before, now, system.value) : [];
  if (moves.length === 0) return null;
  const rest = moves.slice(AT_ONCE);
  return (
    <section class="moved" aria-label="What the last entry moved">
      <b>Moved by the last entry:</b>
      <Moves moves={moves.slice(0, AT_ONCE)} />
      {rest.length > 0 && (
        <details>
          <summary>{rest.length} more</summary>
          <Moves moves={rest} />
        </details>
      )}
    </section>
  );
}

function Moves({ moves }: { moves: readonly Move[] }) {
  return (
    <ul>
      {moves.map(({ name, before, after, words }) => (
        <li key={name}>
          {figureLabel(name)} {before} → {after}
          {words && <small>, {words}</small>}
        </li>
      ))}
    </ul>
  );
}
