/** A dimensioned drawing from the core's own geometry: on the screen when it is opened, on paper at its scale. */

import type { ComponentChildren } from "preact";
import type { Key } from "../engine/tables";
import { useEffect, useState } from "preact/hooks";
import type { DrawnSheet } from "../engine/answers";
import { isKnown } from "../engine/tables";
import { inView } from "../figures/results";
import { alsoWant } from "../sheet/sheet";
import { Markup } from "./Markup";
import { printSheets } from "./paper";

interface Props {
  part: string;
  title: string;
  open?: boolean;
}

export function Drawing({ part, title, open = false }: Props) {
  const [shown, setShown] = useState(open);
  if (!isKnown("drawing")) return null;
  return (
    <details class="drawing" open={open} onToggle={(event) => setShown(event.currentTarget.open)}>
      <summary>
        <span>{title}</span>
      </summary>
      {shown && <Drawn part={part} />}
    </details>
  );
}

function Drawn({ part }: { part: string }) {
  return (
    <Picture part={part}>
      <div class="drawing-print">
        <button type="button" onClick={() => void printSheets(part, "A4")}>
          Print on A4
        </button>
        <button type="button" onClick={() => void printSheets(part, "Letter")}>
          Print on Letter
        </button>
      </div>
    </Picture>
  );
}

/** The drawing itself. part: of the core's catalogue, or "operation:", the key of an operation, and which ring's sizes. */
export function Picture({ part, children }: { part: string; children?: ComponentChildren }) {
  const key: Key = `drawing@${part}`;
  useEffect(() => alsoWant(key), [key]);
  const { answer, result, stale } = inView(key);
  const sheets = (answer?.sheets ?? []) as DrawnSheet[];
  if (result.state === "faults" || result.state === "broken") {
    return <p class="status">This cannot be drawn for the present entries.</p>;
  }
  if (!answer) {
    return (
      <p class="status" role="status">
        Drawing…
      </p>
    );
  }
  return (
    <div class={stale ? "stale" : ""}>
      {sheets.map((sheet) => (
        <Markup key={sheet.sheet} svg={sheet.svg} label={`${sheet.title}. ${sheet.about}`} />
      ))}
      {children}
    </div>
  );
}
