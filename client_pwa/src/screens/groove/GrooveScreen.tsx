/** A worn groove cut true: what to cut, what is left, and the ways to go on side by side. */

import type { Answer, Outcome, Quantity } from "../../engine/answers";
import { RowsTable } from "../../figures/RowsTable";
import { plain } from "../plain";

type Way = Record<string, Quantity> & { way: string; outcome: Outcome; why: string };

const SIZES = ["groove_width", "ring_width", "insert_width", "end_land_left", "inner_land_left"] as const;

export const GrooveScreen = plain(
  "groove-recut",
  ["bore", "ring_type", "groove_readings", "groove_step", "end_land", "inner_land", "old_ring_width"],
  ["groove_width", "ring_width", "end_land_left", "insert_width"],
  Ways,
);

function Ways({ answer }: { answer: Answer }) {
  const ways = (answer.ways ?? []) as unknown as Way[];
  const rows = ways.map((one) => ({ head: one.way, outcome: one.outcome, why: one.why, sizes: one }));
  return <RowsTable title="Ways to go on" names={SIZES} rows={rows} />;
}
