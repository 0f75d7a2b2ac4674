/** One reading of the grid: kept when it is left, stepped to by the keypad, the Enter key and the arrows. */

import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import type { Fault } from "../../engine/answers";
import { fit } from "../../fields/fit";
import { padTarget } from "../../fields/pad";
import { keypad } from "../../base/settings";
import { splitText } from "../../units/parse";
import type { GridUnit } from "./readings";

interface Props {
  id: string;
  label: string;
  unit: GridUnit;
  text: string;
  /** What "the same" means here. */
  last: string;
  fault: Fault | undefined;
  across: number;
  isLast: boolean;
  box(element: HTMLInputElement | null): void;
  write(text: string): void;
  paste(text: string): boolean;
  setUnit(unit: string): void;
  /** Goes so many boxes on; false where there is none. */
  move(step: number): boolean;
}

const UNITS = [
  { name: "mm", shown: "mm" },
  { name: "in", shown: "in" },
];

export function GridCell({ id, label, unit, text, last, fault, across, isLast, box, write, paste, setUnit, move }: Props) {
  const element = useRef<HTMLInputElement>(null);
  const [draft, setDraft] = useState<string | undefined>(undefined);
  const parts = splitText(text);
  // A reading in another unit than the rest says so.
  const number = parts.unit === unit ? text.slice(0, text.length - parts.unit.length).trim() : text;
  const shown = draft ?? number;
  const next = (): void => {
    if (!move(1)) element.current?.blur();
  };
  const offer = (): void => {
    if (!element.current) return;
    const step = unit === "in" ? "thou" : "hundredths";
    padTarget.value = {
      element: element.current,
      label,
      kind: "reading",
      units: UNITS,
      unit,
      setUnit,
      next: { label: isLast ? "Done" : "Next", run: next },
      steps: last === "" ? [] : [
        { shown: "Same again", said: `Same again: ${last}`, text: "=", goOn: true },
        { shown: `+ ${step}`, said: `The last one and so many ${step}`, text: "+", goOn: false },
        { shown: `− ${step}`, said: `The last one less so many ${step}`, text: "-", goOn: false },
      ],
    };
  };
  useEffect(() => {
    if (padTarget.peek()?.element === element.current && element.current) offer();
  }, [unit, last, isLast]);
  useLayoutEffect(() => fit(element.current!), [shown]);
  useLayoutEffect(() => {
    const here = element.current!;
    box(here);
    return () => {
      box(null);
      if (padTarget.peek()?.element === here) padTarget.value = undefined;
    };
  }, []);
  return (
    <input
      ref={element}
      id={id}
      class={fault ? "entry-number grid-cell grid-faulty" : "entry-number grid-cell"}
      type="text"
      aria-label={label}
      aria-invalid={fault ? "true" : undefined}
      inputMode={keypad.value ? "none" : "decimal"}
      autocomplete="off"
      spellcheck={false}
      maxLength={24}
      enterkeyhint={isLast ? "done" : "next"}
      value={shown}
      onFocus={(event) => {
        setDraft(number);
        offer();
        event.currentTarget.select();
      }}
      onInput={(event) => setDraft(event.currentTarget.value)}
      onBlur={(event) => {
        // What stands in the box, drawn again or not.
        const typed = event.currentTarget.value;
        if (typed !== number) write(typed);
        setDraft(undefined);
        if (padTarget.peek()?.element === element.current) padTarget.value = undefined;
      }}
      onPaste={(event) => {
        if (!paste(event.clipboardData?.getData("text/plain") ?? "")) return;
        event.preventDefault();
        setDraft(undefined);
        element.current?.blur();
      }}
      onKeyDown={(event) => {
        const step = { Enter: 1, ArrowDown: across, ArrowUp: -across }[event.key];
        if (step === undefined) return;
        event.preventDefault();
        if (event.key === "Enter") next();
        else move(step);
      }}
    />
  );
}
