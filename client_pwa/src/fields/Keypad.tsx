/** A keypad large enough for gloves, with the marks that a phone's number pad lacks. */

import { useLayoutEffect, useRef } from "preact/hooks";
import { eraseIn, padTarget, typeFraction, typeInto } from "./pad";
import { keypad } from "../base/settings";

const KEYS = ["7", "8", "9", "4", "5", "6", "1", "2", "3", "0", ".", "/"] as const;
const FRACTIONS = ["1/16", "1/8", "3/16", "1/4", "5/16", "3/8", "7/16", "1/2", "9/16", "5/8", "11/16", "3/4", "13/16", "7/8", "15/16"];
const SAID: Readonly<Record<string, string>> = { ".": "decimal point", "/": "fraction line" };

export function Keypad() {
  const target = padTarget.value;
  const pad = useRef<HTMLDivElement>(null);
  const shown = keypad.value ? target?.element : undefined;
  useLayoutEffect(() => {
    if (pad.current && shown) bringIntoSight(shown, pad.current);
  }, [shown]);
  if (!target || !keypad.value) return null;
  const { element } = target;
  // The entry keeps the focus: a key takes the press without taking the focus.
  const keep = (event: Event): void => event.preventDefault();
  const fractions = target.kind === "length" && target.unit === "in";
  return (
    <div class="pad" ref={pad} role="group" aria-label={`Keypad for ${target.label}`} onPointerDown={keep} onMouseDown={keep}>
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
      {target.steps && target.steps.length > 0 && (
        <div class="pad-fractions" role="group" aria-label="From the last one">
          {target.steps.map((step) => (
            <button
              key={step.text}
              type="button"
              tabIndex={-1}
              aria-label={step.said}
              onClick={() => {
                typeInto(element, step.text);
                if (step.goOn) target.next?.run();
              }}
            >
              {step.shown}
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
        <button type="button" tabIndex={-1} class="pad-done" onClick={target.next?.run ?? (() => element.blur())}>
          {target.next?.label ?? "Done"}
        </button>
      </div>
    </div>
  );
}

/** Scrolls until the entry stands clear of the keypad, which lies below it or, on a phone held sideways, beside it. */
function bringIntoSight(entry: HTMLElement, pad: HTMLElement): void {
  const place = pad.getBoundingClientRect();
  const below = place.left < 10;
  document.documentElement.style.setProperty("--pad", below ? `${Math.ceil(place.height)}px` : "0px");
  const room = below ? place.top : innerHeight;
  // With its name above it where that fits, else the box alone.
  const whole = (entry.closest(".entry") ?? entry).getBoundingClientRect();
  const box = entry.getBoundingClientRect();
  const top = whole.height <= room - 16 ? Math.min(whole.top, box.top) : box.top;
  const bottom = whole.height <= room - 16 ? Math.max(whole.bottom, box.bottom) : box.bottom;
  if (top < 8 || bottom > room - 8) scrollBy({ top: (top + bottom) / 2 - room / 2, behavior: "instant" });
}
