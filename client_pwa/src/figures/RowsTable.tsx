/** Rows of an answer side by side. Where each is called by a word or two they stand as columns, four at a time,
 * to be compared; else each has its sizes below its name, and what is said of it. */

import { system } from "../base/settings";
import type { Outcome, Quantity } from "../engine/answers";
import { labelOf } from "../engine/labels";
import { shown } from "../units/show";
import { Mark } from "./Findings";

interface Row {
  head: string;
  outcome?: Outcome;
  why?: string;
  sizes: Readonly<Partial<Record<string, Quantity>>>;
}

interface Props {
  title: string;
  names: readonly string[];
  rows: readonly Row[];
  /** What the heads number: then they are columns. */
  corner?: string;
}

/** So many columns beside their names: fewer where letters are large. */
const across = (): number => (parseFloat(getComputedStyle(document.documentElement).fontSize) > 24 ? 2 : 4);

export function RowsTable({ title, names, rows, corner }: Props) {
  // What no row has anything of is left out.
  const used = names.filter((name) => rows.some((row) => row.sizes[name]));
  const wide = across();
  const parts = corner === undefined ? [] : rows.flatMap((_, at) => (at % wide === 0 ? [rows.slice(at, at + wide)] : []));
  return (
    <section class="card" aria-label={title}>
      <h2>{title}</h2>
      <table class={corner === undefined ? "plain ways" : "plain ways ways-across"}>
        {parts.map((part) => (
          <tbody key={part[0]!.head}>
            <tr>
              <th scope="col">{corner}</th>
              {part.map(({ head }) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
            {used.map((name) => (
              <tr key={name}>
                <th scope="row">{labelWithUnit(name, part)}</th>
                {part.map(({ head, sizes }) => (
                  <td key={head}>{numberOf(sizes[name], name)}</td>
                ))}
              </tr>
            ))}
          </tbody>
        ))}
        {corner === undefined &&
          rows.map(({ head, outcome, why, sizes }) => (
            <tbody key={head}>
              <tr>
                <th scope="rowgroup" colSpan={2}>
                  {outcome && <Mark outcome={outcome} />} {head}
                  {why && outcome !== "good" && <small> {why}</small>}
                </th>
              </tr>
              {used.map((name) => (
                <tr key={name}>
                  <th scope="row" class="ways-size">
                    {labelWithUnit(name, rows)}
                  </th>
                  <td>{numberOf(sizes[name], name)}</td>
                </tr>
              ))}
            </tbody>
          ))}
      </table>
    </section>
  );
}

function labelWithUnit(name: string, rows: readonly Row[]): string {
  const one = rows.map((row) => row.sizes[name]).find(Boolean);
  const unit = one && shown(one.value, one.unit, system.value, name).unit;
  return unit ? `${labelOf(name)}, ${unit}` : labelOf(name);
}

function numberOf(one: Quantity | undefined, name: string): string {
  return one ? shown(one.value, one.unit, system.value, name).text : "–";
}
