/** Rows of an answer side by side. Where each is called by a word or two they stand as columns, four at a time,
 * to be compared; where their sizes are few these stand in a line below the name; else each has its sizes below
 * its name, and what is said of it. Letters that are large have room for the last way alone. */

import { system } from "../base/settings";
import type { Figure, Outcome, Quantity } from "../engine/answers";
import { labelOf } from "../engine/labels";
import { shown } from "../units/show";
import { Mark } from "./Findings";

type Sizes = Readonly<Partial<Record<string, Quantity | Figure | null>>>;

interface Row {
  /** None: the first size says which row it is. */
  head?: string;
  outcome?: Outcome;
  why?: string;
  sizes: Sizes;
}

interface Props {
  title: string;
  names: readonly string[];
  rows: readonly Row[];
  /** What the heads number: then they are columns. */
  corner?: string;
  /** Sizes in a line, under what they are called here. */
  heads?: readonly string[];
}

const ACROSS = 4;
const LARGE_PX = 20;
const lettersAreLarge = (): boolean => parseFloat(getComputedStyle(document.documentElement).fontSize) > LARGE_PX;

export function RowsTable({ title, names, rows, corner, heads }: Props) {
  // What no row has anything of is left out.
  const used = names.filter((name) => rows.some((row) => row.sizes[name]));
  if (used.length === 0) return null;
  const called = (name: string, among = rows): string => withUnit(heads?.[names.indexOf(name)] ?? labelOf(name), name, among);
  const below = lettersAreLarge() || !(corner ?? heads);
  return (
    <section class="card" aria-label={title}>
      <h2>{title}</h2>
      <table class={below ? "plain ways" : `plain ways ${heads ? "ways-line" : "ways-across"}`}>
        {below ? rows.map((row, index) => <Below key={index} row={row} used={used} called={called} corner={corner} />) : heads ? <Lines rows={rows} used={used} called={called} /> : <Columns rows={rows} used={used} called={called} corner={corner} />}
      </table>
    </section>
  );
}

interface Part {
  used: readonly string[];
  called: (name: string, among?: readonly Row[]) => string;
}

function Head({ row: { head, outcome, why }, span }: { row: Row; span: number }) {
  return (
    <tr>
      <th scope="rowgroup" colSpan={span}>
        {outcome && <Mark outcome={outcome} />} {head}
        {why && outcome !== "good" && <small> {why}</small>}
      </th>
    </tr>
  );
}

function Below({ row, used, called, corner }: Part & { row: Row; corner: string | undefined }) {
  const [first, ...others] = used;
  const named = row.head !== undefined;
  return (
    <tbody>
      <Head row={{ ...row, head: named ? `${corner ?? ""} ${row.head}` : `${called(first!)}: ${textOf(row.sizes[first!], first!)}` }} span={2} />
      {(named ? used : others).map((name) => (
        <tr key={name}>
          <th scope="row" class="ways-size">
            {called(name)}
          </th>
          <td>{textOf(row.sizes[name], name)}</td>
        </tr>
      ))}
    </tbody>
  );
}

function Lines({ rows, used, called }: Part & { rows: readonly Row[] }) {
  return (
    <>
      <thead>
        <tr>
          {used.map((name) => (
            <th key={name} scope="col">
              {called(name)}
            </th>
          ))}
        </tr>
      </thead>
      {rows.map((row, index) => (
        <tbody key={index}>
          {row.head !== undefined && <Head row={row} span={used.length} />}
          <tr>
            {used.map((name, at) => (at === 0 && row.head === undefined ? <th key={name} scope="row">{textOf(row.sizes[name], name)}</th> : <td key={name}>{textOf(row.sizes[name], name)}</td>))}
          </tr>
        </tbody>
      ))}
    </>
  );
}

function Columns({ rows, used, called, corner }: Part & { rows: readonly Row[]; corner: string | undefined }) {
  const parts = rows.flatMap((_, at) => (at % ACROSS === 0 ? [rows.slice(at, at + ACROSS)] : []));
  return (
    <>
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
              <th scope="row">{called(name, part)}</th>
              {part.map(({ head, sizes }) => (
                <td key={head}>{textOf(sizes[name], name)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      ))}
    </>
  );
}

function withUnit(label: string, name: string, rows: readonly Row[]): string {
  const one = rows.map((row) => row.sizes[name]).find(Boolean);
  const unit = one && shown(one.value, one.unit, system.value, name).unit;
  return unit ? `${label}, ${unit}` : label;
}

/** A figure that is not certain from its least to its most. */
function textOf(one: Quantity | Figure | null | undefined, name: string): string {
  if (!one) return "–";
  const text = (value: number): string => shown(value, one.unit, system.value, name).text;
  return "low" in one && one.low !== undefined && one.high !== undefined ? `${text(one.low)} to ${text(one.high)}` : text(one.value);
}
