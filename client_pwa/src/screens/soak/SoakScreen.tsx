/** What a soak gives without a pyrometer, beside other soaks and every tell-tale, and what a first ring tells. */

import { system } from "../../base/settings";
import type { Answer, Figure, Outcome, Quantity } from "../../engine/answers";
import { RowsTable } from "../../figures/RowsTable";
import { shown } from "../../units/show";
import { plain } from "../plain";

type Soak = Record<string, Figure> & { soak: string; soak_time: Quantity; outcome: Outcome };

export const SoakScreen = plain(
  "soak",
  ["bore", "ring_type", "tell_tale", "soak_temperature", "soak_time"],
  ["ring_temperature", "relief_expected", "soak_pressure", "soak_gap"],
  undefined,
  Tables,
);

function Tables({ answer }: { answer: Answer }) {
  const first = ((answer.first_ring ?? []) as Record<string, Figure>[]).map((sizes) => ({ sizes }));
  return (
    <>
      <Soaks title="Short and long" soaks={answer.soaks} />
      <RowsTable title="What a first ring tells" names={["soak_gap", "relief", "soak_pressure"]} heads={["Free gap", "Relief", "Presses"]} rows={first} />
      <Soaks title="Every tell-tale" soaks={answer.tell_tales} />
    </>
  );
}

function Soaks({ title, soaks }: { title: string; soaks: unknown }) {
  const rows = ((soaks ?? []) as unknown as Soak[]).map((each) => ({ head: `${each.soak}, ${held(each.soak_time.value)}`, outcome: each.outcome, sizes: each }));
  return <RowsTable title={title} names={["ring_temperature", "relief_expected", "soak_pressure"]} heads={["Heat", "Relief", "Presses"]} rows={rows} />;
}

const held = (hours: number): string => (hours < 1 ? `${Math.round(60 * hours)} min` : `${shown(hours, "h", system.value, "soak_time").text} h`);
