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
  return (
    <section class="card" aria-label={title}>
      <h2>{title}</h2>
      <table class="plain ways">
        <thead>
          <tr>
            {columns.map((name) => (
              <th key={name} scope="col">
                {labelOf(name)}
              </th>
            ))}
          </tr>
        </thead>
        {rows.map(({ head, outcome, why, cells }) => (
          <tbody key={head}>
            <tr>
              <th scope="rowgroup" colSpan={columns.length}>
                {outcome && <Mark outcome={outcome} />} {head}
                {why && outcome !== "good" && <small>{why}</small>}
              </th>
            </tr>
            <tr>
              {cells.map((one, index) => (
                <td key={index}>{one ? words(one, columns[index]!) : "–"}</td>
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
