/** What most decides how the ring turns out: each measured or assumed input by its part in the spread. */

import { useEffect, useState } from "preact/hooks";
import type { Quantity } from "../../engine/answers";
import { fieldsOf } from "../../engine/tables";
import { labelOf } from "../../engine/labels";
import { Choices } from "../../figures/Choices";
import { FigureRows } from "../../figures/Figures";
import { Findings } from "../../figures/Findings";
import { inView } from "../../figures/results";
import { Status } from "../../figures/Status";
import { alsoWant } from "../../sheet/sheet";
import { system } from "../../base/settings";
import { percentWords, shown } from "../../units/show";

interface Ranked {
  outcome: string;
  inputs: { input: string; plus_minus: Quantity; effect: Quantity; share: Quantity }[];
}

export function WhatMatters() {
  const [open, setOpen] = useState(false);
  return (
    <details class="card" data-asks onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <h3>What matters most, and how many come right</h3>
      </summary>
      {open && <Spread />}
    </details>
  );
}

function Spread() {
  useEffect(() => alsoWant("spread"), []);
  const view = inView("spread");
  const rankings = (view.answer?.rankings ?? []) as Ranked[];
  const own = fieldsOf("spread").filter((field) => /_spread$|^lowest_|^highest_/.test(field.name));
  return (
    <>
      <Status result={view.result} />
      {view.answer && <Findings findings={view.answer.findings} title="How many come right" />}
      {rankings.map((ranking) => (
        <Ranking key={ranking.outcome} ranking={ranking} />
      ))}
      {view.answer && <FigureRows figures={view.answer.figures} stale={view.stale} />}
      <Choices calculation="spread" title="How far each may stray" fields={own} answer={view.answer} faults={view.faults} />
    </>
  );
}

function Ranking({ ranking }: { ranking: Ranked }) {
  const shown3 = ranking.inputs.filter((each) => each.share.value >= 0.005);
  return (
    <table class="ranking">
      <caption>{labelOf(ranking.outcome)} strays by</caption>
      <tbody>
        {shown3.map((each) => {
          const effect = shown(Math.abs(each.effect.value), each.effect.unit, system.value, "limit");
          const give = shown(each.plus_minus.value, each.plus_minus.unit, system.value, each.input);
          return (
            <tr key={each.input}>
              <th scope="row">
                {labelOf(each.input)} <small>± {give.text} {give.unit}</small>
              </th>
              <td>
                <svg viewBox="0 0 100 8" preserveAspectRatio="none" class="ranking-bar" aria-hidden="true">
                  <rect width={Math.max(0.5, each.share.value * 100)} height="8" />
                </svg>
                ± {effect.text} {effect.unit}, {percentWords(each.share.value)} of it
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
