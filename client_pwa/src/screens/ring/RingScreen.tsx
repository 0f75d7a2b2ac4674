/** The first screen: a bore and a steam pressure give a complete ring. */

import { Drawing } from "../../drawings/Drawing";
import type { FigureName, InputName } from "../../engine/names";
import { figureGroups, fieldsOf, isKnown } from "../../engine/tables";
import { ChoiceBar } from "../../fields/FieldEntry";
import { SheetEntry } from "../../fields/SheetEntry";
import { Cautions } from "../../figures/Cautions";
import { Choices } from "../../figures/Choices";
import { FigureRows } from "../../figures/Figures";
import { Findings, Mark, summary, worst } from "../../figures/Findings";
import { Moved } from "../../figures/Moved";
import { isOf, settledView } from "../../figures/results";
import type { InView } from "../../figures/results";
import { Status } from "../../figures/Status";
import { Later } from "../../base/Later";
import { inputFor, setInput } from "../../sheet/sheet";
import { grouped, INPUT_GROUPS } from "./groups";
import { RingPlate } from "./RingPlate";
import { WhatMatters } from "./WhatMatters";

/** Part, what it is called, and for how many turns it makes sense (0: any). */
const DRAWINGS: readonly [string, string, number][] = [
  ["ring-closed", "The ring in its bore", 0],
  ["ring-free", "The ring free", 0],
  ["ring-turned-through", "The ring turned through", 2],
  ["section-window", "Sections that serve, with yours", 0],
  ["free-shape", "Free shape against the bore", 0],
  ["cylinder-section", "The ring in its groove", 0],
  ["piston", "The piston", 0],
  ["steam-temperature", "Steam temperature by pressure", 0],
];

const ON_TOP: readonly (InputName | "")[] = ["bore", "steam_pressure", "ring_type"];

const FIELDS = fieldsOf("sizing");
const TYPE = FIELDS.find((field) => field.name === "ring_type");
const CHOICES = grouped(
  INPUT_GROUPS,
  FIELDS.map((field) => field.name).filter((name) => !ON_TOP.includes(name)),
  "The rest",
).map((group) => ({ title: group.title, fields: FIELDS.filter((field) => group.names.includes(field.name)) }));

export function RingScreen() {
  const sizing = settledView("sizing");
  const given = inputFor("sizing", "ring_type");
  const chosenType = typeof given === "string" ? given : (TYPE?.choices?.[0] ?? "");
  const turns = chosenType === "plain" ? 1 : 2;
  const findings = sizing.answer?.findings ?? [];
  const waiting = sizing.result.state === "waiting";
  return (
    <div class="two tall">
      <div class="two-left">
        <form class="card top-entries" onSubmit={(event) => event.preventDefault()}>
          <SheetEntry name="bore" calculation="sizing" faults={sizing.faults} />
          <SheetEntry name="steam_pressure" calculation="sizing" faults={sizing.faults} placeholder={pressurePlaceholder(sizing.answer)} />
          {TYPE && (
            <ChoiceBar
              name="ring_type"
              label="Type of ring"
              choices={TYPE.choices ?? []}
              chosen={chosenType}
              onChange={(choice) => setInput("ring_type", choice)}
            />
          )}
        </form>
        {/* While the first figures are worked their places stand already, and nothing jumps; what is wanted the plate says. */}
        {!waiting && sizing.result.state !== "incomplete" && <Status result={sizing.result} shownAt={(fault) => isOf(ON_TOP, fault)} />}
        <RingPlate sizing={sizing.answer} turns={turns} waiting={waiting} />
        {waiting && <p class="verdict">Working it out…</p>}
        {findings.length > 0 && (
          <a class={`verdict verdict-${worst(findings)}`} href="#findings" onClick={toFindings}>
            <Mark outcome={worst(findings)} />
            <span>{summary(findings)}</span>
          </a>
        )}
        <Later>
          <Moved view={sizing} />
        </Later>
      </div>
      <div class="two-right">{!waiting && <Below sizing={sizing} turns={turns} />}</div>
    </div>
  );
}

/** What follows the figures of the plate, in the order of the page. */
function Below({ sizing: { answer, faults }, turns }: { sizing: InView; turns: number }) {
  return (
    <>
      <div id="findings" tabIndex={-1}>
        <Later>
          <Findings findings={answer?.findings ?? []} of="sizing" />
        </Later>
      </div>
      <Later>
        <h2 class="group-head">Chosen for you, and yours to change</h2>
      </Later>
      {CHOICES.map(({ title, fields }) => (
        <Later key={title}>
          <Choices calculation="sizing" title={title} fields={fields} answer={answer} faults={faults} />
        </Later>
      ))}
      {answer && (
        <>
          <Later>
            <h2 class="group-head">Drawings and charts</h2>
            <div class="card drawings">
              {DRAWINGS.filter((drawing) => drawing[2] === 0 || drawing[2] === turns).map(([part, title]) => (
                <Drawing key={part} part={part} title={title} />
              ))}
            </div>
          </Later>
          <Later>
            <h2 class="group-head">All figures</h2>
          </Later>
          {figureGroups(Object.keys(answer.figures) as FigureName[]).map((group, index) => (
            <Later key={group.title}>
              <details class="card" open={index === 0}>
                <summary>
                  <h3>{group.title}</h3>
                </summary>
                <FigureRows figures={answer.figures} names={group.names} />
              </details>
            </Later>
          ))}
          <Later>
            {isKnown("spread") && <WhatMatters />}
            <Cautions cautions={answer.cautions} />
          </Later>
        </>
      )}
    </>
  );
}

function pressurePlaceholder(answer: ReturnType<typeof settledView>["answer"]): string {
  const choice = answer?.chosen.find((each) => each.input === "steam_pressure");
  return typeof choice?.value === "number" ? "chosen for you" : "";
}

/** The fragment of the address says which screen is open, so the jump is made by hand. */
function toFindings(event: Event): void {
  event.preventDefault();
  const target = document.getElementById("findings");
  const still = matchMedia("(prefers-reduced-motion: reduce)").matches;
  target?.scrollIntoView({ behavior: still ? "auto" : "smooth", block: "start" });
  target?.focus({ preventScroll: true });
}
