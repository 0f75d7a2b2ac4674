/** The fitting card: the work from the finished rings to the laid-up engine, to be printed for the shed wall. */

import { PrintButton } from "../../base/Print";
import type { Caution, Operation } from "../../engine/answers";
import { fieldsOf } from "../../engine/tables";
import { GenericScreen } from "../../figures/GenericScreen";
import { OneOperation } from "../../figures/OneOperation";

export function FittingScreen() {
  return (
    <GenericScreen calculation="fitting" first={["bore", "ring_type", "steam_pressure"]} elsewhere={fieldsOf("sizing").map((field) => field.name)}>
      {({ answer, stale }) =>
        answer && (
          <>
            <div class="route-top">
              <PrintButton what="fitting card" />
            </div>
            <ol class={stale ? "operations stale" : "operations"}>
              {(answer.operations as Operation[]).map(({ key }, place, operations) => (
                <OneOperation key={key} card="fitting" operations={operations} place={place} />
              ))}
            </ol>
            <section class="card" aria-label="Signs">
              <h2>Signs</h2>
              <ul class="operation-cautions">
                {(answer.signs as Caution[]).map(({ key, text }) => (
                  <li key={key}>{text}</li>
                ))}
              </ul>
            </section>
          </>
        )
      }
    </GenericScreen>
  );
}
