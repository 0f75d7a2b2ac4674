/** Rows of an answer side by side: what each is called across, its sizes below, and what is said of it. */

import { system } from "../base/settings";
import type { Outcome, Quantity } from "../engine/answers";
import { labelOf } from "../engine/labels";
import { shown } from "../units/show";
import { Mark } from "./Findings";

interface Row {
  head: string;
  outcome?: Outcome;
  why?: string;
  cells: readonly (Quantity | undefined)[];
}

export function RowsTable({ title, columns, rows }: { title: string; columns: readonly string[]; rows: readonly Row[] }) {
  // A column that no row has anything in is left out.
  const used = columns.flatMap((name, at) => (rows.some((row) => row.cells[at]) ? [{ name, at }] : []));
  return (
    <section class="card" aria-label={title}>
      <h2>{title}</h2>
      <table class="plain ways">
        <thead>
          <tr>
            {used.map(({ name }) => (
              <th key={name} scope="col">
                {labelOf(name)}
              </th>
            ))}
          </tr>
        </thead>
        {rows.map(({ head, outcome, why, cells }) => (
          <tbody key={head}>
            <tr>
              <th scope="rowgroup" colSpan={used.length}>
                {outcome && <Mark outcome={outcome} />} {head}
                {why && outcome !== "good" && <small> {why}</small>}
              </th>
            </tr>
            <tr>
              {used.map(({ name, at }) => (
                <td key={name}>{cells[at] ? words(cells[at], name) : "–"}</td>
              ))}
            </tr>
          </tbody>
        ))}
      </table>
    </section>
  );
}

function words(one: Quantity, name: string): string {
  const { text, unit } = shown(one.value, one.unit, system.value, name);
  return `${text} ${unit}`;
}
