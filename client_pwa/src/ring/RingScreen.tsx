/** The first screen: a bore and a steam pressure give a complete ring. */

import { Drawing } from "../drawings/Drawing";
import type { Answer } from "../engine/answers";
import { fieldsOf, isKnown } from "../engine/tables";
import { ChoiceBar } from "../fields/FieldEntry";
import { SheetEntry } from "../fields/SheetEntry";
import { Cautions } from "../figures/Cautions";
import { Choices } from "../figures/Choices";
import { FigureRows } from "../figures/Figures";
import { Findings, Mark, summary, worst } from "../figures/Findings";
import { inView } from "../figures/results";
import { Status } from "../figures/Status";
import { inputs, setInput } from "../sheet/sheet";
import { FIGURE_GROUPS, grouped, INPUT_GROUPS } from "./groups";
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

const ON_TOP = ["bore", "steam_pressure", "ring_type"];

export function RingScreen() {
  const sizing = inView("sizing");
  const tooling = inView("tooling");
  const job = inView("job");
  const fields = fieldsOf("sizing");
  const type = fields.find((field) => field.name === "ring_type");
  const given = inputs.value.ring_type;
  const chosenType = typeof given === "string" ? given : (type?.choices?.[0] ?? "");
  const names = fields.map((field) => field.name).filter((name) => !ON_TOP.includes(name));
  const findings = sizing.answer?.findings ?? [];
  return (
    <div class="two">
      <div class="two-left">
        <form class="card top-entries" onSubmit={(event) => event.preventDefault()}>
          <SheetEntry name="bore" calculation="sizing" faults={sizing.faults} />
          <SheetEntry name="steam_pressure" calculation="sizing" faults={sizing.faults} placeholder={pressurePlaceholder(sizing.answer)} />
          {type && (
            <ChoiceBar
              name="ring_type"
              label="Type of ring"
              choices={type.choices ?? []}
              chosen={chosenType}
              onChange={(choice) => setInput("ring_type", choice)}
            />
          )}
        </form>
        {/* While the first figures are worked the plate says so in its own place, and nothing jumps. */}
        {sizing.result.state !== "waiting" && <Status result={sizing.result} shownAt={(fault) => ON_TOP.includes(String(fault.path[0]))} />}
        <RingPlate
          sizing={sizing.answer}
          tooling={tooling.answer}
          stock={job.answer?.stock as Answer | undefined}
          stale={sizing.stale}
          turns={chosenType === "plain" ? 1 : 2}
          waiting={sizing.result.state === "waiting"}
        />
        {findings.length > 0 && (
          <a class={`verdict verdict-${worst(findings)}`} href="#findings" onClick={toFindings}>
            <Mark outcome={worst(findings)} />
            <span>{summary(findings)}</span>
          </a>
        )}
      </div>
      <div class="two-right">
        <div id="findings" tabIndex={-1}>
          <Findings findings={findings} />
        </div>
        <h2 class="group-head">Chosen for you, and yours to change</h2>
        {grouped(INPUT_GROUPS, names, "The rest").map((group) => (
          <Choices calculation="sizing"
            key={group.title}
            title={group.title}
            fields={fields.filter((field) => group.names.includes(field.name))}
            answer={sizing.answer}
            faults={sizing.faults}
          />
        ))}
        {sizing.answer && (
          <>
            <h2 class="group-head">Drawings and charts</h2>
            <div class="card drawings">
              {DRAWINGS.filter(([, , turns]) => turns === 0 || turns === (chosenType === "plain" ? 1 : 2)).map(([part, title]) => (
                <Drawing key={part} part={part} title={title} />
              ))}
            </div>
            <h2 class="group-head">All figures</h2>
            {grouped(FIGURE_GROUPS, Object.keys(sizing.answer.figures), "Hot, and the rest").map((group) => (
              <details class="card" key={group.title} open={group.title === FIGURE_GROUPS[0]!.title}>
                <summary>
                  <h3>{group.title}</h3>
                </summary>
                <FigureRows figures={sizing.answer!.figures} names={group.names} stale={sizing.stale} />
              </details>
            ))}
            {isKnown("spread") && <WhatMatters />}
            <Cautions cautions={sizing.answer.cautions} />
          </>
        )}
      </div>
    </div>
  );
}

function pressurePlaceholder(answer: ReturnType<typeof inView>["answer"]): string {
  const choice = answer?.chosen.find((each) => each.input === "steam_pressure");
  return typeof choice?.value === "number" ? "as chosen" : "";
}

/** The fragment of the address says which screen is open, so the jump is made by hand. */
function toFindings(event: Event): void {
  event.preventDefault();
  const target = document.getElementById("findings");
  const still = matchMedia("(prefers-reduced-motion: reduce)").matches;
  target?.scrollIntoView({ behavior: still ? "auto" : "smooth", block: "start" });
  target?.focus({ preventScroll: true });
}
