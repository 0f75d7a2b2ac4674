/** One measure: a number as people write it, its unit, what it comes to in the other units, and what is
 * wrong with it if it cannot be read. */

import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import type { Fault } from "../engine/answers";
import type { Field } from "../engine/tables";
import { keypad, system } from "../base/settings";
import { keyTyped, typingEnded } from "../sheet/typing";
import { shownUnit, unitNamed, unitsOf } from "../units/kinds";
import type { Unit } from "../units/kinds";
import { fieldParts, joinText, parseQuantity, splitText } from "../units/parse";
import { shown } from "../units/show";
import { fit } from "./fit";
import { sentence } from "../engine/labels";
import { padTarget } from "./pad";
import { likelyUnit, unitToBeginWith, unitUsed } from "./units_used";

interface Props {
  id: string;
  field: Field;
  label: string;
  value: string;
  fault: Fault | undefined;
  onChange(text: string): void;
  describedBy?: string;
  placeholder?: string;
  taken?: number;
  hideLabel?: boolean;
}

export function NumberEntry({ id, field, label, value, fault: found, onChange, describedBy, placeholder, taken, hideLabel }: Props) {
  const box = useRef<HTMLInputElement>(null);
  const [draft, setDraft] = useState<string | undefined>(undefined);
  // The unit of a bare number: chosen from the list, or there when the entry was first seen. One that is typed
  // with a number goes with that number only.
  const [own, setOwn] = useState<string | undefined>(undefined);
  const written = value === "" ? undefined : fieldParts(field.kind, value, system.value);
  const bareUnit = own ?? unitToBeginWith(field);
  const typedUnit = draft === undefined ? undefined : unitNamed(field.kind, splitText(draft).unit)?.name;
  const unit = typedUnit ?? (value === "" ? bareUnit : (written?.unit ?? bareUnit));
  const units = listed(field.kind, unit);
  const text = draft ?? (value === "" ? "" : (written?.number ?? value.trim()));

  // What comes from elsewhere (a job opened, a step taken back) brings its unit with it.
  const lastWritten = useRef<string | undefined>(undefined);
  useEffect(() => {
    if (value !== lastWritten.current && value !== "") setOwn(written?.unit);
    lastWritten.current = value;
  }, [value]);
  const put = (next: string): void => {
    lastWritten.current = next;
    onChange(next);
  };
  /** Of the number that is being typed: its own as long as it is mended, that of a bare one when it is another. */
  const inForce = useRef(bareUnit);
  const write = (number: string, change: string): void => {
    if (isAnother(number, draft ?? "", change)) inForce.current = bareUnit;
    setDraft(number);
    keyTyped();
    put(joinText(number, inForce.current));
  };
  const leave = (): void => {
    typingEnded();
    setDraft(undefined);
    if (padTarget.peek()?.element === box.current) padTarget.value = undefined;
    if (draft === undefined || value === "") return;
    const bare = splitText(draft).unit === "" ? splitText(draft).number : undefined;
    const likely = bare === undefined ? undefined : likelyUnit(field, bare, [inForce.current, bareUnit, ...(lastTyped.current ? [lastTyped.current] : [])]);
    if (likely !== undefined && likely !== unit) put(joinText(bare!, likely));
    lastTyped.current = typedUnit ?? lastTyped.current;
    unitUsed(field, likely ?? unit);
  };
  const lastTyped = useRef<string | undefined>(undefined);
  const setUnit = (name: string): void => {
    setOwn(name);
    inForce.current = name;
    unitUsed(field, name);
    const number = splitText(text).number;
    if (draft !== undefined) setDraft(number);
    if (number !== "") put(joinText(number, name));
  };
  const offer = (): void => {
    if (!box.current) return;
    padTarget.value = {
      element: box.current,
      label,
      kind: field.kind,
      units: units.map((each) => ({ name: each.name, shown: shownUnit(each.name) })),
      unit,
      setUnit,
    };
  };
  useEffect(() => {
    if (padTarget.peek()?.element === box.current && box.current) offer();
  }, [unit, text]);
  useLayoutEffect(() => fit(box.current!), [text]);
  useEffect(() => {
    const element = box.current!;
    return () => {
      if (padTarget.peek()?.element !== element) return;
      // Gone with its screen: nothing is typed any more, and no key may write to it.
      padTarget.value = undefined;
      typingEnded();
    };
  }, []);

  // What cannot be read is told in the unit that a bare number has here.
  const reading = found && parseQuantity(field.kind, value, unit);
  const fault = reading && !reading.ok ? { ...found, message: reading.message, remedy: reading.remedy } : found;
  // A figure in the empty place of an entry is not yours: it says so.
  const empty = taken === undefined ? (placeholder ?? "") : inUnit(field, taken, unit);
  const echo = value === "" && taken !== undefined ? "chosen" : echoOf(field, value, unit);
  const notes = [fault ? `${id}-fault` : "", echo ? `${id}-echo` : "", describedBy ?? ""].filter(Boolean).join(" ");
  return (
    <div class={fault ? "entry entry-faulty" : "entry"}>
      <span class={hideLabel ? "entry-words unseen" : "entry-words"}>
        <label for={id}>{label}</label>
        {echo && (
          <span class="entry-echo" id={`${id}-echo`}>
            {echo}
          </span>
        )}
      </span>
      <span class="entry-line">
        <input
          ref={box}
          id={id}
          class="entry-number"
          type="text"
          inputMode={keypad.value ? "none" : field.kind === "length" ? "text" : "decimal"}
          autocomplete="off"
          autocapitalize="off"
          spellcheck={false}
          enterkeyhint="done"
          maxLength={40}
          value={text}
          placeholder={empty}
          aria-invalid={fault ? "true" : undefined}
          aria-describedby={notes || undefined}
          aria-required={field.required ? "true" : undefined}
          onFocus={(event) => {
            setDraft(text);
            inForce.current = unit;
            offer();
            // The next key replaces what was there, as a gloved hand would want it.
            event.currentTarget.select();
          }}
          onBlur={leave}
          onKeyDown={(event) => {
            if (event.key === "Enter") box.current?.blur();
          }}
          onInput={(event) => write(event.currentTarget.value, (event as InputEvent).inputType ?? "")}
        />
        {units.length > 1 ? (
          <select
            class="entry-unit"
            aria-label={`Unit of ${label}`}
            value={unit}
            onChange={(event) => setUnit(event.currentTarget.value)}
          >
            {units.map((each) => (
              <option key={each.name} value={each.name}>
                {shownUnit(each.name)}
              </option>
            ))}
          </select>
        ) : (
          units.length === 1 && units[0]!.name !== "" && <span class="entry-unit entry-unit-only">{shownUnit(units[0]!.name)}</span>
        )}
      </span>
      {fault && <FaultWords id={`${id}-fault`} fault={fault} take={put} />}
    </div>
  );
}

/** The units to choose from, with the one in force where it is typed but seldom used. */
/** Whether a key, or what was pasted, put another number in the place of the one before instead of mending it. */
function isAnother(number: string, before: string, change: string): boolean {
  if (number === "" || before === "") return true;
  if (change.startsWith("delete")) return false;
  // What is put in makes a number longer, unless it takes the place of all of it.
  return number.length < before.length || (!number.startsWith(before[0]!) && !number.endsWith(before.at(-1)!));
}

function listed(kind: string, unit: string): readonly Unit[] {
  const offered = unitsOf(kind);
  const typed = unitNamed(kind, unit);
  return typed === undefined || offered.some((each) => each.name === typed.name) ? offered : [...offered, typed];
}

/** What is wrong and what to do; with `take`, what is offered can be put in at a touch. */
export function FaultWords({ id, fault, take }: { id?: string; fault: Fault; take?: (text: string) => void }) {
  const { offer } = fault;
  return (
    <span class="fault" id={id} role="alert">
      <b>{sentence(fault.message)}</b> {sentence(fault.remedy)}
      {take && offer !== undefined && (
        <button type="button" class="fault-offer" onClick={() => take(offer)}>
          Make it {offer}
        </button>
      )}
    </span>
  );
}

/** The measure in the units it was not typed in, so that a slip of the unit is seen at once. */
/** A value of the core's as the number that would be typed in that unit: as figures are shown where that is their unit. */
function inUnit(field: Field, value: number, unit: string): string {
  for (const each of ["metric", "inch"] as const) {
    const usual = shown(value, field.unit ?? "1", each, field.name);
    if (usual.unit === shownUnit(unit)) return usual.text;
  }
  const own = unitNamed(field.kind, unit);
  return own ? String(Number(((value - own.zero) / own.scale).toPrecision(3))) : String(value);
}

function echoOf(field: Field, value: string, unit: string): string {
  if (value === "" || field.unit === undefined || field.unit === "1") return "";
  const parsed = parseQuantity(field.kind, value, unit);
  if (!parsed.ok) return "";
  const inch = ["in", "thou", "psi", "degF", "lbf", "lb", "ft/min", "hp", "in2", "lb/in3", "1/degF", "money/lb"].includes(
    parsed.reading.unit,
  );
  const other = shown(parsed.reading.value, field.unit, inch ? "metric" : "inch", field.name);
  if (other.unit === shownUnit(parsed.reading.unit)) return "";
  return `= ${other.text} ${other.unit}`;
}
