/** Which figures an entry moved, and by how much: those whose text on the screen is another than before. */

import type { Figures } from "../engine/answers";
import type { FigureName } from "../engine/names";
import type { System } from "../base/settings";
import { percentWords, shown } from "../units/show";

export interface Move {
  name: FigureName;
  before: string;
  after: string;
  /** "5 % more"; empty for temperatures, whose nought is arbitrary, and for what began at nought. */
  words: string;
  share: number;
}

/** The farthest moved first. A figure that came or went is no move. */
export function movesBetween(before: Figures, after: Figures, system: System): Move[] {
  const moves: Move[] = [];
  for (const [key, figure] of Object.entries(after)) {
    const name = key as FigureName;
    const old = before[name];
    if (!figure || !old || old.unit !== figure.unit) continue;
    const [was, is] = [old, figure].map((each) => shown(each.value, each.unit, system, name));
    if (!was || !is || (was.text === is.text && was.unit === is.unit)) continue;
    const share = old.value === 0 ? Infinity : (figure.value - old.value) / Math.abs(old.value);
    const bare = figure.unit === "degC" || !Number.isFinite(share);
    const sameUnit = was.unit === is.unit;
    moves.push({
      name,
      before: sameUnit ? was.text : `${was.text} ${was.unit}`,
      after: `${is.text} ${is.unit}`.trim(),
      words: bare ? "" : shareWords(share),
      share: Math.abs(share),
    });
  }
  return moves.sort((one, other) => other.share - one.share);
}

function shareWords(share: number): string {
  return `${percentWords(Math.abs(share))} ${share > 0 ? "more" : "less"}`;
}
