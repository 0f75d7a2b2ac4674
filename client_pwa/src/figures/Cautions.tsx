/** Cautions beside the work they belong to. A long list shows its first on the screen; paper shows all. */

import { useState } from "preact/hooks";
import type { Caution } from "../engine/answers";

const SHOWN_FIRST = 2;

export function Cautions({ cautions }: { cautions: readonly Caution[] }) {
  const [all, setAll] = useState(false);
  const once = cautions.filter((caution, index) => cautions.findIndex((each) => each.key === caution.key) === index);
  if (once.length === 0) return null;
  const more = once.length - SHOWN_FIRST;
  return (
    <section class={all || more < 2 ? "cautions" : "cautions cautions-short"} aria-label="Cautions">
      <h2>Take care</h2>
      <ul>
        {once.map((caution) => (
          <li key={caution.key}>{caution.text}</li>
        ))}
      </ul>
      {more >= 2 && (
        <button type="button" class="small-words" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? "Show fewer" : `Show ${more} more cautions`}
        </button>
      )}
    </section>
  );
}
