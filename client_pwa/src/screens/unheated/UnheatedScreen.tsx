/** A ring made without heat: how it bears, the same ring made in other ways, and the steps. */

import type { Answer, Quantity } from "../../engine/answers";
import { RowsTable } from "../../figures/RowsTable";
import { WallPicture } from "../../figures/WallPicture";
import { plain } from "../plain";

type Way = Record<string, Quantity> & { way: string };

const SIZES = ["mean_wall_pressure", "lowest_pressure", "largest_pressure", "widest_light"] as const;

export const UnheatedScreen = plain(
  "ring-without-heat",
  ["bore", "radial_thickness", "wall_pressure", "finishing", "bored_again"],
  ["first_outside_diameter", "piece_cut_out", "finish_outside_diameter", "mean_wall_pressure"],
  Making,
);

function Making({ answer }: { answer: Answer }) {
  const ways = ((answer.ways ?? []) as unknown as Way[]).map((one) => ({ head: one.way, sizes: one }));
  const steps = (answer.steps ?? []) as string[];
  return (
    <>
      <WallPicture answer={answer} title="By its own spring" />
      <section class="card" aria-label="How it is made">
        <h2>How it is made</h2>
        <ol class="steps">
          {steps.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
      </section>
      <RowsTable title="The same section and free gap, made in other ways" names={SIZES} heads={["Mean", "Lowest", "Highest", "Light"]} rows={ways} />
    </>
  );
}
