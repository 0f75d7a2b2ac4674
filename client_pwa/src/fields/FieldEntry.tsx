/** An entry for any input that a calculation declares, by its kind. */

import type { Fault } from "../engine/answers";
import { choiceWords, labelOf } from "../engine/labels";
import { samePath } from "./entry";
import type { FieldEntryProps } from "./entry";
import { ListEntry, ObjectEntry } from "./ListEntry";
import { FaultWords, NumberEntry } from "./NumberEntry";

export function FieldEntry(props: FieldEntryProps) {
  const { field, value, faults, path, onChange } = props;
  const id = "in-" + path.join("-");
  const label = props.label ?? labelOf(field.name);
  const fault = faults.find((each) => samePath(each.path, path));
  switch (field.kind) {
    case "choice":
      return <ChoiceEntry {...props} id={id} label={label} fault={fault} />;
    case "flag":
      return (
        <div class="entry entry-flag">
          <label for={id}>
            <input id={id} type="checkbox" checked={value === true} onChange={(event) => onChange(event.currentTarget.checked)} />
            {label}
          </label>
          {fault && <FaultWords fault={fault} />}
        </div>
      );
    case "text":
      return (
        <div class="entry">
          <label for={id} class={props.hideLabel ? "unseen" : undefined}>
            {label}
          </label>
          <input
            id={id}
            class="entry-text"
            type="text"
            maxLength={200}
            value={typeof value === "string" ? value : ""}
            aria-invalid={fault ? "true" : undefined}
            onInput={(event) => onChange(event.currentTarget.value)}
          />
          {fault && <FaultWords fault={fault} />}
        </div>
      );
    case "records":
      return <ListEntry {...props} label={label} Entry={FieldEntry} />;
    case "object":
      return <ObjectEntry {...props} label={label} Entry={FieldEntry} />;
    default:
      return (
        <NumberEntry
          id={id}
          field={field}
          label={label}
          value={typeof value === "string" ? value : ""}
          fault={fault}
          onChange={onChange}
          {...(props.placeholder === undefined ? {} : { placeholder: props.placeholder })}
          {...(props.taken === undefined ? {} : { taken: props.taken })}
          {...(props.hideLabel === undefined ? {} : { hideLabel: props.hideLabel })}
        />
      );
  }
}

/** Few choices lie open side by side; more are a list. The first words are always "as usual". */
function ChoiceEntry(props: FieldEntryProps & { id: string; label: string; fault: Fault | undefined }) {
  const { field, value, onChange, id, label, fault } = props;
  const choices = field.choices ?? [];
  const chosen = typeof value === "string" ? value : "";
  return (
    <div class={fault ? "entry entry-faulty" : "entry"}>
      <label for={id} class={props.hideLabel ? "unseen" : undefined}>
        {label}
      </label>
      <select id={id} class="entry-choice" value={chosen} onChange={(event) => onChange(event.currentTarget.value || undefined)}>
        {!field.required && <option value="">{props.placeholder ? `Chosen for you: ${choiceWords(props.placeholder)}` : "Choose for me"}</option>}
        {field.required && chosen === "" && <option value="">Choose</option>}
        {choices.map((choice) => (
          <option key={choice} value={choice}>
            {choiceWords(choice)}
          </option>
        ))}
      </select>
      {fault && <FaultWords fault={fault} />}
    </div>
  );
}

/** Two or three choices as large buttons, one of which is always in force. */
export function ChoiceBar(props: { name: string; label: string; choices: readonly string[]; chosen: string; onChange(choice: string): void }) {
  return (
    <fieldset class="bar">
      <legend class="unseen">{props.label}</legend>
      {props.choices.map((choice) => (
        <label key={choice} class={choice === props.chosen ? "bar-choice bar-chosen" : "bar-choice"}>
          <input
            type="radio"
            name={props.name}
            value={choice}
            checked={choice === props.chosen}
            onChange={() => props.onChange(choice)}
          />
          <span>{choiceWords(choice)}</span>
        </label>
      ))}
    </fieldset>
  );
}
