/** How bars are cut: each drawn to its length with its sticks, then what is left. */

import type { Cut } from "../book/rack";
import type { Quantity } from "../engine/answers";
import { system } from "../base/settings";
import { shown } from "../units/show";

/** Each bar drawn to its length: sticks, then what is left. */
export function CutList({ cuts }: { cuts: readonly Cut[] }) {
  if (cuts.length === 0) return null;
  return (
    <section class="card" aria-label="Cut list">
      <h2>Cut list</h2>
      <ol class="cuts">
        {cuts.map((cut, index) => (
          <li key={index}>
            <p>
              <b>{cut.bar}</b>
              {cut.alike > 1 && `, ${cut.alike} alike`}: {cut.have ? "in the rack" : "to buy"}, {lengthWords(cut.bar_length)} long
            </p>
            <CutPicture cut={cut} />
            <ul>
              {cut.sticks.map((stick, at) => (
                <li key={at}>
                  Cut {lengthWords(stick.stick_length)} for {stick.blanks} {stick.blanks === 1 ? "blank" : "blanks"}
                  {stick.set && ` (${stick.set})`}
                </li>
              ))}
              <li>
                Left over {lengthWords(cut.offcut)}
                {cut.offcut_kept ? ", keep it" : ", scrap"}
              </li>
            </ul>
          </li>
        ))}
      </ol>
    </section>
  );
}

function CutPicture({ cut }: { cut: Cut }) {
  const whole = cut.bar_length.value || 1;
  let at = 0;
  return (
    <svg class="cut-picture" viewBox="0 0 300 26" preserveAspectRatio="none" aria-hidden="true">
      <rect class="cut-left" x="0" y="3" width="300" height="20" />
      {cut.sticks.map((stick, index) => {
        const width = (stick.stick_length.value / whole) * 300;
        const x = at;
        at += width;
        return <rect key={index} class="cut-stick" x={x} y="3" width={Math.max(1, width - 1.5)} height="20" />;
      })}
    </svg>
  );
}

function lengthWords(length: Quantity): string {
  const text = shown(length.value, length.unit, system.value);
  return `${text.text} ${text.unit}`;
}
