/** A keypad large enough for gloves, with the marks that a phone's number pad lacks. */

import { eraseIn, padTarget, typeFraction, typeInto } from "./pad";
import { keypad } from "../shell/settings";

const KEYS = ["7", "8", "9", "4", "5", "6", "1", "2", "3", "0", ".", "/"] as const;
const FRACTIONS = ["1/16", "1/8", "3/16", "1/4", "5/16", "3/8", "7/16", "1/2", "9/16", "5/8", "11/16", "3/4", "13/16", "7/8", "15/16"];
const SAID: Readonly<Record<string, string>> = { ".": "decimal point", "/": "fraction line" };

export function Keypad() {
  const target = padTarget.value;
  if (!target || !keypad.value) return null;
  const { element } = target;
  // The entry keeps the focus: a key takes the press without taking the focus.
  const keep = (event: Event): void => event.preventDefault();
  const fractions = target.kind === "length" && target.unit === "in";
  return (
    <div class="pad" role="group" aria-label={`Keypad for ${target.label}`} onPointerDown={keep} onMouseDown={keep}>
      {target.units.length > 1 && (
        <div class="pad-units" role="group" aria-label="Unit">
          {target.units.map((unit) => (
            <button
              key={unit.name}
              type="button"
              tabIndex={-1}
              aria-pressed={unit.name === target.unit}
              onClick={() => target.setUnit(unit.name)}
            >
              {unit.shown}
            </button>
          ))}
        </div>
      )}
      {fractions && (
        <div class="pad-fractions" role="group" aria-label="Fractions of an inch">
          {FRACTIONS.map((fraction) => (
            <button key={fraction} type="button" tabIndex={-1} onClick={() => typeFraction(element, fraction)}>
              {fraction}
            </button>
          ))}
        </div>
      )}
      <div class="pad-keys">
        {KEYS.map((key) => (
          <button key={key} type="button" tabIndex={-1} aria-label={SAID[key] ?? key} class={`key-${KEYS.indexOf(key)}`} onClick={() => typeInto(element, key)}>
            {key}
          </button>
        ))}
        <button type="button" tabIndex={-1} class="pad-erase" aria-label="Rub out one" onClick={() => eraseIn(element)}>
          ⌫
        </button>
        <button type="button" tabIndex={-1} class="pad-space" onClick={() => typeInto(element, " ")}>
          space
        </button>
        <button type="button" tabIndex={-1} class="pad-minus" aria-label="minus" onClick={() => typeInto(element, "-")}>
          −
        </button>
        <button type="button" tabIndex={-1} class="pad-done" onClick={() => element.blur()}>
          Done
        </button>
      </div>
    </div>
  );
}
