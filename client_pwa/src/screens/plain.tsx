/** A screen of what the core declares and no more. With this a new calculation needs its line in screens.ts
 * and nothing else: the entries to stand open, the figures to stand large, a picture if there is one, and what is
 * looked up below the checks and figures. */

import type { ComponentType } from "preact";
import type { Answer } from "../engine/answers";
import type { CalculationName, FigureName, InputName } from "../engine/names";
import { FigureTile } from "../figures/Figures";
import { GenericScreen } from "../figures/GenericScreen";

export function plain(calculation: CalculationName, first: readonly InputName[], large: readonly FigureName[], Picture?: ComponentType<{ answer: Answer }>, Below?: ComponentType<{ answer: Answer }>): ComponentType {
  return () => (
    <GenericScreen calculation={calculation} first={first} below={({ answer }) => Below && answer && <Below answer={answer} />}>
      {({ answer, stale }) =>
        answer && (
          <>
            <section class={stale ? "plate stale" : "plate"} aria-label="The chief figures">
              {large.map((name) => {
                const figure = answer.figures[name];
                return figure && <FigureTile key={name} name={name} figure={figure} />;
              })}
            </section>
            {Picture && <Picture answer={answer} />}
          </>
        )
      }
    </GenericScreen>
  );
}
