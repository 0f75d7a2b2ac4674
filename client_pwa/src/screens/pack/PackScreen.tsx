/** How many rings a piston needs: what they cost by their number, and how they share the pressure. */

import type { Answer, Quantity } from "../../engine/answers";
import { RowsTable } from "../../figures/RowsTable";
import { plain } from "../plain";

type Row = Record<string, Quantity> & { ring: number; rings: number };

const COUNTS = ["leak", "friction_power", "steam_cost", "pack_length"] as const;
const RINGS = ["pressure_difference", "share", "wall_pressure_with_steam", "wear"] as const;

export const PackScreen = plain(
  "ring-pack",
  ["bore", "stroke", "speed", "steam_pressure", "ring_type", "rings_on_piston", "piston_length"],
  ["steam_cost", "gap_leak", "first_ring_share", "pack_length"],
  undefined,
  Tables,
);

function Tables({ answer }: { answer: Answer }) {
  return (
    <>
      <RowsTable title="By their number" corner="Rings" names={COUNTS} rows={rowsOf(answer.counts, "rings")} />
      <RowsTable title="Ring by ring" corner="Ring" names={RINGS} rows={rowsOf(answer.rings, "ring")} />
    </>
  );
}

function rowsOf(list: unknown, number: "ring" | "rings") {
  return ((list ?? []) as Row[]).map((row) => ({ head: String(row[number]), sizes: row }));
}
