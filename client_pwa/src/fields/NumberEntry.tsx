/** One measure: a number as people write it, its unit, what it comes to in the other units, and what is
 * wrong with it if it cannot be read. */

import { useEffect, useRef, useState } from "preact/hooks";
import type { Fault } from "../engine/answers";
import type { Field } from "../engine/tables";
import { keypad, system } from "../shell/settings";
import { shownUnit, unitsOf } from "../units/kinds";
import { fieldParts, joinText, parseQuantity, splitText } from "../units/parse";
import { unitNamed } from "../units/kinds";
import { shown } from "../units/show";
import { sentence } from "./labels";
import { padTarget } from "./pad";

interface Props {
  id: string;
  field: Field;
  label: string;
  value: string;
  fault: Fault | undefined;
  onChange(text: string): void;
  describedBy?: string;
  placeholder?: string;
  hideLabel?: boolean;
}

export function NumberEntry({ id, field, label, value, fault, onChange, describedBy, placeholder, hideLabel }: Props) {
  const box = useRef<HTMLInputElement>(null);
  const [draft, setDraft] = useState<string | undefined>(undefined);
  // The unit that waits for a number is no part of the job yet.
  const [waitingUnit, setWaitingUnit] = useState<string | undefined>(undefined);
  const units = unitsOf(field.kind);
  const parts = fieldParts(field.kind, value, system.value);
  const typedUnit = draft === undefined ? undefined : unitNamed(field.kind, splitText(draft).unit)?.name;
  const unit = typedUnit ?? (value === "" ? (waitingUnit ?? parts.unit) : parts.unit);
  const text = draft ?? parts.number;

  const write = (number: string): void => {
    setDraft(number);
    // Rubbed out and typed anew, it is in the unit it was in before.
    setWaitingUnit(unit);
    onChange(joinText(number, unit));
  };
  const setUnit = (name: string): void => {
    setWaitingUnit(name);
    const number = splitText(text).number;
    if (draft !== undefined) setDraft(number);
    if (number !== "") onChange(joinText(number, name));
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
  useEffect(
    () => () => {
      if (padTarget.peek()?.element === box.current) padTarget.value = undefined;
    },
    [],
  );

  // A figure in the empty place of an entry is not yours: it says so.
  const echo = value === "" && /\d/.test(placeholder ?? "") ? "chosen" : echoOf(field, value, unit);
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
          placeholder={placeholder ?? ""}
          aria-invalid={fault ? "true" : undefined}
          aria-describedby={notes || undefined}
          aria-required={field.required ? "true" : undefined}
          onFocus={(event) => {
            setDraft(parts.number);
            offer();
            // The next key replaces what was there, as a gloved hand would want it.
            event.currentTarget.select();
          }}
          onBlur={() => {
            setDraft(undefined);
            if (padTarget.peek()?.element === box.current) padTarget.value = undefined;
          }}
          onKeyDown={(event) => {
            if (event.key === "Enter") box.current?.blur();
          }}
          onInput={(event) => write(event.currentTarget.value)}
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
      {fault && <FaultWords id={`${id}-fault`} fault={fault} />}
    </div>
  );
}

export function FaultWords({ id, fault }: { id?: string; fault: Fault }) {
  return (
    <span class="fault" id={id} role="alert">
      <b>{sentence(fault.message)}</b> {sentence(fault.remedy)}
    </span>
  );
}

/** The measure in the units it was not typed in, so that a slip of the unit is seen at once. */
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
