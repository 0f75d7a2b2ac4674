/** Lists of entries (readings, bars, ring sets) and entries of several parts. */

import type { ComponentType } from "preact";
import type { Input, Inputs } from "../book/job";
import type { Fault } from "../engine/answers";
import { isEmpty } from "../sheet/request";
import { sayGone } from "../sheet/undo";
import { samePath } from "./entry";
import type { FieldEntryProps } from "./entry";
import { FaultWords } from "./NumberEntry";

interface Props extends FieldEntryProps {
  label: string;
  /** Draws one part, which may be a list again. */
  Entry: ComponentType<FieldEntryProps>;
}

/** gone: says that a row was taken out, where the list is not the job's own. */
export function ListEntry(props: Props & { rowName?: string; gone?(what: string): void }) {
  const { field, value, faults, path, onChange, label, Entry } = props;
  const items = field.items ?? [];
  const single = items.length === 1 && items[0]!.name === "" ? items[0]! : undefined;
  const kept: Input[] = Array.isArray(value) ? value : [];
  const own = faults.find((each) => samePath(each.path, path));
  const row = props.rowName ?? "Row";
  const { gone } = props;
  const replace = (index: number, entry: Input): void => onChange(kept.map((each, at) => (at === index ? entry : each)));
  return (
    <fieldset class="list">
      <legend>{label}</legend>
      {own && <FaultWords fault={own} />}
      {kept.map((entry, index) => (
        <div class="list-row" key={index} role="group" aria-label={`${row} ${index + 1}`}>
          <div class="list-head">
            <span aria-hidden="true">
              {row} {index + 1}
            </span>
            <button
              type="button"
              class="small"
              aria-label={`Take out ${row.toLowerCase()} ${index + 1}`}
              onClick={() => {
                onChange(kept.filter((_each, at) => at !== index));
                if (!isEmpty(entry)) (gone ?? sayGone)(`${row} ${index + 1}`);
              }}
            >
              ✕
            </button>
          </div>
          <div class="list-entries">
            {single ? (
              <Entry
                field={single}
                label={`${label}, ${row.toLowerCase()} ${index + 1}`}
                hideLabel
                value={entry}
                faults={faults}
                path={[...path, index]}
                onChange={(next) => replace(index, next ?? "")}
              />
            ) : (
              items.map((item) => (
                <div key={item.name} class={item.required ? "list-entry list-needed" : "list-entry"}>
                  <Entry
                    field={item}
                    value={partOf(entry, item.name)}
                    faults={faults}
                    path={[...path, index, item.name]}
                    onChange={(next) => replace(index, withPart(entry, item.name, next))}
                  />
                </div>
              ))
            )}
          </div>
        </div>
      ))}
      <button type="button" class="add" onClick={() => onChange([...kept, single ? "" : {}])}>
        Add {row.toLowerCase()}
      </button>
    </fieldset>
  );
}

export function ObjectEntry(props: Props) {
  const { field, value, faults, path, onChange, label, Entry } = props;
  const entry: Input = value ?? {};
  return (
    <fieldset class="list">
      <legend>{label}</legend>
      {(field.items ?? []).map((item) => (
        <Entry
          key={item.name}
          field={item}
          value={partOf(entry, item.name)}
          faults={faults as Fault[]}
          path={[...path, item.name]}
          onChange={(next) => onChange(withPart(entry, item.name, next))}
        />
      ))}
    </fieldset>
  );
}

function partOf(entry: Input, name: string): Input | undefined {
  return typeof entry === "object" && !Array.isArray(entry) ? entry[name] : undefined;
}

function withPart(entry: Input, name: string, value: Input | undefined): Inputs {
  const next: Inputs = typeof entry === "object" && !Array.isArray(entry) ? { ...entry } : {};
  if (value === undefined) delete next[name];
  else next[name] = value;
  return next;
}
