/** What a soak gives without a pyrometer, beside other soaks and every tell-tale, and what a first ring tells. */

import { system } from "../../base/settings";
import type { Answer, Figure, Outcome, Quantity } from "../../engine/answers";
import { Mark } from "../../figures/Findings";
import { shown } from "../../units/show";
import { plain } from "../plain";

interface Soak {
  soak: string;
  soak_time: Quantity;
  ring_temperature: Figure;
  relief_expected: Figure;
  soak_pressure: Figure;
  outcome: Outcome;
}

interface First {
  soak_gap: Figure;
  relief: Quantity;
  soak_pressure: Figure;
}

export const SoakScreen = plain(
  "soak",
  ["bore", "ring_type", "tell_tale", "soak_temperature", "soak_time"],
  ["ring_temperature", "relief_expected", "soak_pressure", "soak_gap"],
  undefined,
  Tables,
);

function Tables({ answer }: { answer: Answer }) {
  const first = (answer.first_ring ?? []) as First[];
  return (
    <>
      <Soaks title="Short and long" soaks={(answer.soaks ?? []) as Soak[]} />
      {first.length > 0 && (
        <section class="card" aria-label="What a first ring tells">
          <h2>What a first ring tells</h2>
          <Head columns={[`Free gap, ${shown(0, "mm", system.value, "free_gap").unit}`, `Relief, ${shown(0, "1", system.value, "relief").unit}`, pressureHead()]}>
            <tbody>
              {first.map((each) => (
                <tr key={each.relief.value}>
                  <td>{text(each.soak_gap, "free_gap")}</td>
                  <td>{text(each.relief, "relief")}</td>
                  <td>{text(each.soak_pressure, "wall_pressure")}</td>
                </tr>
              ))}
            </tbody>
          </Head>
        </section>
      )}
      <Soaks title="Every tell-tale" soaks={(answer.tell_tales ?? []) as Soak[]} />
    </>
  );
}

function Soaks({ title, soaks }: { title: string; soaks: readonly Soak[] }) {
  if (soaks.length === 0) return null;
  return (
    <section class="card" aria-label={title}>
      <h2>{title}</h2>
      <Head columns={[`Heat, ${shown(0, "degC", system.value, "soak_temperature").unit}`, `Relief, ${shown(0, "1", system.value, "relief").unit}`, pressureHead()]}>
        {soaks.map((each, index) => (
          <tbody key={index}>
            <tr>
              <th scope="rowgroup" colSpan={3}>
                <Mark outcome={each.outcome} /> {each.soak}, {held(each.soak_time.value)}
              </th>
            </tr>
            <tr>
              <td>{reach(each.ring_temperature, "soak_temperature")}</td>
              <td>{reach(each.relief_expected, "relief")}</td>
              <td>{reach(each.soak_pressure, "wall_pressure")}</td>
            </tr>
          </tbody>
        ))}
      </Head>
    </section>
  );
}

function Head({ columns, children }: { columns: readonly string[]; children: preact.ComponentChildren }) {
  return (
    <table class="plain ways">
      <thead>
        <tr>
          {columns.map((each) => (
            <th key={each} scope="col">{each}</th>
          ))}
        </tr>
      </thead>
      {children}
    </table>
  );
}

const held = (hours: number): string => (hours < 1 ? `${Math.round(60 * hours)} min` : `${shown(hours, "h", system.value, "soak_time").text} h`);
const pressureHead = (): string => `Presses, ${shown(0, "MPa", system.value, "wall_pressure").unit}`;
const text = ({ value, unit }: Quantity, name: string): string => shown(value, unit, system.value, name).text;

/** From its least to its most. */
function reach({ low, value, high, unit }: Figure, name: string): string {
  return `${text({ value: low ?? value, unit }, name)} to ${text({ value: high ?? value, unit }, name)}`;
}
