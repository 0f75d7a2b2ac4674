/** A ring made without heat: how it bears, the same ring made in other ways, and the steps. */

import { system } from "../../base/settings";
import type { Answer, Quantity } from "../../engine/answers";
import { WallPicture } from "../../figures/WallPicture";
import { shown } from "../../units/show";
import { plain } from "../plain";

interface Way {
  way: string;
  mean_wall_pressure: Quantity;
  lowest_pressure: Quantity;
  largest_pressure: Quantity;
  widest_light: Quantity;
}

export const UnheatedScreen = plain(
  "ring-without-heat",
  ["bore", "radial_thickness", "wall_pressure", "finishing", "bored_again"],
  ["first_outside_diameter", "piece_cut_out", "finish_outside_diameter", "mean_wall_pressure"],
  Making,
);

function Making({ answer }: { answer: Answer }) {
  const ways = (answer.ways ?? []) as Way[];
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
      <Ways ways={ways} />
    </>
  );
}

function Ways({ ways }: { ways: readonly Way[] }) {
  const pressure = shown(0, "MPa", system.value, "wall_pressure").unit;
  const length = shown(0, "mm", system.value, "light").unit;
  return (
    <section class="card" aria-label="The same ring made in other ways">
      <h2>The same section and free gap, made in other ways</h2>
      <table class="plain ways">
        <thead>
          <tr>
            <th scope="col">Mean, {pressure}</th>
            <th scope="col">Lowest</th>
            <th scope="col">Highest</th>
            <th scope="col">Light, {length}</th>
          </tr>
        </thead>
        {ways.map((each) => (
          <tbody key={each.way}>
            <tr>
              <th scope="rowgroup" colSpan={4}>
                {each.way}
              </th>
            </tr>
            <tr>
              {[each.mean_wall_pressure, each.lowest_pressure, each.largest_pressure].map((one, index) => (
                <td key={index}>{shown(one.value, one.unit, system.value, "wall_pressure").text}</td>
              ))}
              <td>{shown(each.widest_light.value, each.widest_light.unit, system.value, "light").text}</td>
            </tr>
          </tbody>
        ))}
      </table>
    </section>
  );
}
