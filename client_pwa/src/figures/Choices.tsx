/** Every input of a calculation that is not on the screen already: what was taken for it and why, or what
 * you gave. Each opens in its place to be changed. */

import { useEffect, useState } from "preact/hooks";
import type { Answer, Choice, Fault } from "../engine/answers";
import type { Field } from "../engine/tables";
import type { Input } from "../book/job";
import { shopInputs } from "../book/shop";
import { FieldEntry } from "../fields/FieldEntry";
import { choiceWords, labelOf, sentence } from "../engine/labels";
import { system } from "../base/settings";
import { inputFor, setInputFor } from "../sheet/sheet";
import { shown } from "../units/show";
import { needWords, wordsOf } from "./field_words";

interface Props {
  /** Whose words say what each input means. */
  calculation: string;
  title: string;
  fields: readonly Field[];
  answer: Answer | undefined;
  faults: readonly Fault[];
  open?: boolean;
}

export function Choices({ calculation, title, fields, answer, faults, open = false }: Props) {
  if (fields.length === 0) return null;
  const chosen = new Map<string, Choice>((answer?.chosen ?? []).map((choice) => [choice.input, choice]));
  const yours = fields.filter((field) => inputFor(calculation, field.name) !== undefined).length;
  const faulty = faults.some((fault) => fields.some((field) => field.name === fault.path[0]));
  return (
    <details class="card choices" open={open || faulty}>
      <summary>
        <h2>{title}</h2>
        <span class="choices-count">{yours > 0 ? `${yours} yours` : answer ? "all chosen for you" : ""}</span>
      </summary>
      <ul class="choice-list">
        {fields.map((field) => (
          <OneChoice key={field.name} calculation={calculation} field={field} choice={chosen.get(field.name)} faults={faults} />
        ))}
      </ul>
    </details>
  );
}

function OneChoice({ calculation, field, choice, faults }: { calculation: string; field: Field; choice: Choice | undefined; faults: readonly Fault[] }) {
  const given = inputFor(calculation, field.name);
  const ofShop = calculation === "piston-valve" ? undefined : shopInputs.value[field.name];
  const faulty = faults.some((fault) => fault.path[0] === field.name);
  const [open, setOpen] = useState(false);
  const shownOpen = open || faulty;
  const words = wordsOf(calculation, field.name);
  useEffect(() => {
    if (shownOpen) needWords();
  }, [shownOpen]);
  const id = `choice-${field.name}`;
  return (
    <li class={given === undefined ? "choice" : "choice choice-yours"}>
      <button type="button" class="choice-row" aria-expanded={shownOpen} aria-controls={id} onClick={() => setOpen(!shownOpen)}>
        <span class="choice-label">{labelOf(field.name, calculation)}</span>
        <span class="choice-value">
          <b>{given === undefined ? (ofShop === undefined ? chosenWords(choice) : givenWords(ofShop)) : givenWords(given)}</b>
          <small>{given === undefined ? (ofShop === undefined ? (choice ? "chosen" : "not given") : "my shop") : "yours"}</small>
        </span>
      </button>
      <div id={id} class="choice-open" hidden={!shownOpen}>
        {shownOpen && (
          <>
            <p class="choice-why">
              {words && sentence(words.meaning)} {choice && <>Taken: {sentence(choice.why)}</>}{" "}
              {!choice && words?.default && <>Not given: {sentence(words.default)}</>} {rangeWords(field)}
            </p>
            <FieldEntry
              field={field}
              value={given}
              faults={faults}
              path={[field.name]}
              label={labelOf(field.name, calculation)}
              onChange={(value) => setInputFor(calculation, field.name, value)}
              {...(typeof choice?.value === "string" ? { placeholder: choice.value } : {})}
            />
            {given !== undefined && (
              <button type="button" class="small-words" onClick={() => setInputFor(calculation, field.name, undefined)}>
                Let it be chosen again
              </button>
            )}
          </>
        )}
      </div>
    </li>
  );
}

function chosenWords(choice: Choice | undefined): string {
  if (!choice || choice.value === null) return "—";
  if (typeof choice.value === "number") {
    const text = shown(choice.value, choice.unit, system.value, choice.input);
    return `${text.text} ${text.unit}`.trim();
  }
  if (typeof choice.value === "boolean") return choice.value ? "Yes" : "No";
  return choiceWords(choice.value);
}

function givenWords(given: Input): string {
  if (typeof given === "string") return choiceWords(given);
  if (typeof given === "boolean") return given ? "Yes" : "No";
  return Array.isArray(given) ? (given.length === 1 ? "1 row" : `${given.length} rows`) : "given";
}

function rangeWords(field: Field): string {
  if (field.kind === "records" || field.unit === undefined) return "";
  const bound = (value: number): string => {
    const text = shown(value, field.unit!, system.value, field.name);
    return `${text.text} ${text.unit}`.trim();
  };
  if (field.lowest !== undefined && field.highest !== undefined) return `From ${bound(field.lowest)} to ${bound(field.highest)}.`;
  if (field.lowest !== undefined) return field.above_lowest ? `More than ${bound(field.lowest)}.` : `From ${bound(field.lowest)} up.`;
  return field.highest === undefined ? "" : `Up to ${bound(field.highest)}.`;
}
