/** Cautions beside the work they belong to. */

import type { Caution } from "../engine/answers";

export function Cautions({ cautions }: { cautions: readonly Caution[] }) {
  if (cautions.length === 0) return null;
  return (
    <section class="cautions" aria-label="Cautions">
      <h2>Take care</h2>
      <ul>
        {cautions.map((caution) => (
          <li key={caution.key}>{caution.text}</li>
        ))}
      </ul>
    </section>
  );
}
