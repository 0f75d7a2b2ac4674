/** What the checks found, worst first: a word and a shape, never a colour alone, and what to do. */

import type { Choice, Finding, Outcome, Quantity } from "../engine/answers";
import { labelOf, sentence } from "../engine/labels";
import type { CalculationName } from "../engine/names";
import { said } from "../base/said";
import { system } from "../base/settings";
import { unitToBeginWith } from "../fields/units_used";
import { inputs, setInputs } from "../sheet/sheet";
import { undo } from "../sheet/undo";
import { GuideLink } from "./GuideLink";
import { remedyOf } from "./remedy";
import { inView } from "./results";
import { inPercent, shown } from "../units/show";
import type { Shown } from "../units/show";

const ORDER: Readonly<Record<Outcome, number>> = { stop: 0, watch: 1, good: 2 };
export const WORD: Readonly<Record<Outcome, string>> = { stop: "Stop", watch: "Watch", good: "Good" };

export function Mark({ outcome }: { outcome: Outcome }) {
  // An octagon, a triangle, a disc: told apart without colour.
  return (
    <svg class={`mark mark-${outcome}`} viewBox="0 0 24 24" width="24" height="24" aria-hidden="true">
      {outcome === "stop" && <path d="M8 2h8l6 6v8l-6 6H8l-6-6V8z" />}
      {outcome === "watch" && <path d="M12 2 23 21H1z" />}
      {outcome === "good" && <circle cx="12" cy="12" r="10" />}
      {outcome === "stop" && <path class="mark-line" d="M7 12h10" />}
      {outcome === "watch" && <path class="mark-line" d="M12 9v6M12 17v2" />}
      {outcome === "good" && <path class="mark-line" d="m7 12 4 4 6-8" />}
    </svg>
  );
}

interface Props {
  findings: readonly Finding[];
  title?: string;
  /** Whose they are, where what clears them may be put on the open sheet. */
  of?: CalculationName;
}

export function Findings({ findings, title = "What the checks say", of }: Props) {
  if (findings.length === 0) return null;
  const sorted = findings.map((finding, index) => ({ finding, index }));
  sorted.sort((one, other) => ORDER[one.finding.outcome] - ORDER[other.finding.outcome] || one.index - other.index);
  const open = sorted.filter(({ finding }) => finding.outcome !== "good");
  const good = sorted.filter(({ finding }) => finding.outcome === "good");
  return (
    <section class="card findings" aria-label={title}>
      <h2 tabIndex={-1}>{title}</h2>
      <p class="findings-sum" role="status">
        {summary(findings)}
      </p>
      <ul class="finding-list">
        {open.map(({ finding, index }, at) => (
          <OneFinding key={index} finding={finding} again={open[at - 1]?.finding.remedy === finding.remedy} {...(of && { of })} />
        ))}
      </ul>
      {good.length > 0 && (
        <details>
          <summary>
            <Mark outcome="good" /> {good.length === 1 ? "One check is good" : `${good.length} checks are good`}
          </summary>
          <ul class="finding-list">
            {good.map(({ finding, index }) => (
              <OneFinding key={index} finding={finding} />
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

/** again: its remedy stands with the one before. */
function OneFinding({ finding, of, again }: { finding: Finding; of?: CalculationName; again?: boolean }) {
  const [seen, limit] = shownAlike(finding.value, finding.limit, finding.check);
  // "Now 3" alone is a riddle: what is counted stands in the sentence.
  const value = limit || seen?.unit ? seen : undefined;
  return (
    <li class={`finding finding-${finding.outcome}`}>
      <Mark outcome={finding.outcome} />
      <div>
        <p class="finding-head">
          <b>{WORD[finding.outcome]}</b>: <GuideLink topic={`check-${finding.check}`}>{labelOf(finding.check)}</GuideLink>
        </p>
        <p>{sentence(finding.why)}</p>
        {(value || limit) && (
          <p class="finding-numbers">
            {value && (
              <>
                Now {numberWords(value)}
              </>
            )}
            {value && limit && ", "}
            {limit && (
              <>
                {value ? "limit" : "Limit"} {numberWords(limit)}
              </>
            )}
          </p>
        )}
        {finding.remedy && (
          <p class="finding-remedy">
            <b>Do:</b> {again ? "as above." : sentence(finding.remedy)}
          </p>
        )}
        {of && !again && finding.apply && <TakeRemedy of={of} apply={finding.apply} />}
      </div>
    </li>
  );
}

/** Puts on the sheet what clears the finding; one step, to be taken back like any other. */
function TakeRemedy({ of, apply }: { of: CalculationName; apply: readonly Choice[] }) {
  const remedy = remedyOf(apply, of, inputs.value, { chosen: inView(of).answer?.chosen ?? [], unitOf: unitToBeginWith });
  if (!remedy) return null;
  const take = (event: Event): void => {
    // The button goes with its finding: eye and voice stay with the checks.
    (event.currentTarget as Element).closest("section")?.querySelector("h2")?.focus({ preventScroll: true });
    setInputs(remedy.changes);
    said.value = { text: `${remedy.words}: done.`, action: { label: "Undo", run: undo } };
  };
  return (
    <button type="button" class="finding-take" onClick={take}>
      {remedy.words}
    </button>
  );
}

const numberWords = ({ text, unit }: Shown): string => `${text} ${unit}`.trim();

/** Value and limit in one measure: "1.856, limit 90 %" is a riddle. */
function shownAlike(value: Quantity | undefined, limit: Quantity | undefined, name: string): [Shown | undefined, Shown | undefined] {
  const one = (quantity: Quantity | undefined): Shown | undefined => quantity && shown(quantity.value, quantity.unit, system.value, name);
  const pair: [Shown | undefined, Shown | undefined] = [one(value), one(limit)];
  const [first, second] = pair;
  if (!first || !second || !value || !limit) return pair;
  // "Now 0.288, limit 0.288" is another.
  if (first.text === second.text && value.value !== limit.value) return [shown(value.value, value.unit, system.value, "limit"), shown(limit.value, limit.unit, system.value, "limit")];
  if (first.unit === second.unit) return pair;
  if (first.unit !== "%" && second.unit !== "%") return pair;
  const share = (quantity: Quantity): Shown => inPercent(quantity.value);
  return [share(value), share(limit)];
}

export function summary(findings: readonly Finding[]): string {
  const stops = findings.filter((finding) => finding.outcome === "stop").length;
  const watches = findings.filter((finding) => finding.outcome === "watch").length;
  if (stops === 0 && watches === 0) return "Every check is good.";
  const parts: string[] = [];
  if (stops > 0) parts.push(stops === 1 ? "1 stop" : `${stops} stops`);
  if (watches > 0) parts.push(`${watches} to watch`);
  return parts.join(", ") + ".";
}

export function worst(findings: readonly Finding[]): Outcome {
  if (findings.some((finding) => finding.outcome === "stop")) return "stop";
  return findings.some((finding) => finding.outcome === "watch") ? "watch" : "good";
}
