/** The ring on the wall, and what was measured of the finished one. */

import { said } from "../../base/said";
import { dayWords } from "../../book/names";
import type { FigureName, InputName } from "../../engine/names";
import { fieldsOf, isKnown } from "../../engine/tables";
import { Choices } from "../../figures/Choices";
import { FigureRows, FigureTile } from "../../figures/Figures";
import { Findings, summary, worst } from "../../figures/Findings";
import { GenericScreen } from "../../figures/GenericScreen";
import { inView } from "../../figures/results";
import { Status } from "../../figures/Status";
import { WallPicture } from "../../figures/WallPicture";
import { forNextRing } from "../../sheet/next_ring";
import { change, job } from "../../sheet/sheet";
import { undo } from "../../sheet/undo";

export function CheckScreen() {
  const shared = new Set(fieldsOf("sizing").map((field) => field.name));
  return (
    <>
      {isKnown("inspection") && <Inspection />}
      {isKnown("wall-pressure") && <OnTheWall shared={shared} />}
    </>
  );
}

/** What is taken at the bench, the commonest first. */
const MEASURED: readonly InputName[] = ["measured_free_gap", "measured_force", "measured_closed_gap", "measured_thickness", "measured_light"];
const VERDICTS: Readonly<Record<string, string>> = { accept: "Accept the ring", rework: "Rework the ring", scrap: "Scrap the ring" };
const LARGE: readonly FigureName[] = ["wall_pressure", "wall_pressure_intended", "relief_given", "next_former_diameter"];

function Inspection() {
  const fields = fieldsOf("inspection");
  const shared = new Set(fieldsOf("tooling").map((field) => field.name));
  return (
    <section aria-label="Measured at the bench">
      <h2 class="group-head">Measured at the bench</h2>
      <GenericScreen
        calculation="inspection"
        first={MEASURED}
        elsewhere={fields.map((field) => field.name).filter((name) => shared.has(name))}
        figuresTitle="What it says of the ring"
        checksFirst
      >
        {({ answer, stale }) =>
          answer && (
            <>
              <section class={stale ? "plate stale" : "plate"} aria-label="Verdict">
                <p class="plate-words">
                  <b>{typeof answer.verdict === "string" && (VERDICTS[answer.verdict] ?? answer.verdict)}</b>
                  {worst(answer.findings) !== "good" && <>: {summary(answer.findings)}</>}
                </p>
                {LARGE.map((name) => {
                  const figure = answer.figures[name];
                  return figure ? <FigureTile key={name} name={name} figure={figure} /> : null;
                })}
              </section>
              {answer.figures.relief_given && (
                <p>
                  <button type="button" class="main-action print-button" onClick={() => takeForNextRing(answer.figures.relief_given!.value)}>
                    Work the next ring with this relief
                  </button>
                </p>
              )}
            </>
          )
        }
      </GenericScreen>
    </section>
  );
}

function takeForNextRing(relief: number): void {
  change(forNextRing(job.peek(), relief, dayWords(Date.now())));
  said.value = { text: "The next ring is worked with this relief. What was measured stands in the notes.", action: { label: "Undo", run: undo } };
}

function OnTheWall({ shared }: { shared: ReadonlySet<string> }) {
  const cold = inView("wall-pressure@cold");
  const steam = inView("wall-pressure@steam");
  const own = fieldsOf("wall-pressure").filter((field) => !shared.has(field.name));
  return (
    <section aria-label="How it bears on the wall">
      <h2 class="group-head">How it bears on the wall</h2>
      <div class="two">
        <div class="two-left">
          <Status result={cold.result} />
          {cold.answer && <WallPicture answer={cold.answer} title="By its own spring" />}
          {steam.answer && <WallPicture answer={steam.answer} title="With steam behind it" />}
        </div>
        <div class="two-right">
          {cold.answer && (
            <>
              <Findings findings={cold.answer.findings} title="What the wall says" />
              <section class="card" aria-label="Figures on the wall">
                <h2>Figures, by its own spring</h2>
                <FigureRows figures={cold.answer.figures} stale={cold.stale} />
              </section>
            </>
          )}
          <Choices calculation="wall-pressure" title="Bore and steam, yours to change" fields={own} answer={steam.answer} faults={steam.faults} />
        </div>
      </div>
    </section>
  );
}
