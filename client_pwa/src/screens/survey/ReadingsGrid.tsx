/** Gauge readings, one box a cell: heights down, directions across. The keypad steps from box to box, the unit is
 * said once, and a reading may be given as the last one and so many thou. */

import { useRef, useState } from "preact/hooks";
import type { Input } from "../../book/job";
import type { Fault } from "../../engine/answers";
import { fieldsOf } from "../../engine/tables";
import { FieldEntry } from "../../fields/FieldEntry";
import { ListEntry } from "../../fields/ListEntry";
import { FaultWords } from "../../fields/NumberEntry";
import { likelyUnit, unitToBeginWith, unitUsed } from "../../fields/units_used";
import { said } from "../../base/said";
import { sayGone, undo } from "../../sheet/undo";
import { inputs, setInput } from "../../sheet/sheet";
import { unitNamed } from "../../units/kinds";
import { joinText, splitText } from "../../units/parse";
import { GridCell } from "./GridCell";
import { gridOf, listOf, pasted, stepped, usualGrid } from "./readings";
import type { GridUnit, Laid } from "./readings";

const FIELD = fieldsOf("bore-survey").find((field) => field.name === "readings")!;
const DIAMETER = FIELD.items!.find((item) => item.name === "diameter")!;
const LABEL = "Readings";

export function ReadingsGrid({ faults }: { faults: readonly Fault[] }) {
  const readings = inputs.value.readings;
  const [unit, setUnit] = useState<GridUnit>(() => unitOf(readings) ?? (unitToBeginWith(DIAMETER) === "in" ? "in" : "mm"));
  const [laid, setLaid] = useState<Laid>(() =>
    Array.isArray(readings) && readings.length > 0 ? { heights: [], directions: [] } : usualGrid(inputs.value.stroke, unit),
  );
  const [asList, setAsList] = useState(false);
  const last = useRef("");
  const boxes = useRef<(HTMLInputElement | null)[]>([]);
  const grid = gridOf(readings, laid);
  if (!grid || asList) {
    return (
      <>
        <ListEntry Entry={FieldEntry} field={FIELD} label={LABEL} rowName="Reading" value={readings} faults={faults} path={["readings"]} onChange={(next) => setInput("readings", next)} />
        {grid && (
          <button type="button" class="small-words" onClick={() => setAsList(false)}>
            Enter them in a grid
          </button>
        )}
      </>
    );
  }
  const { heights, directions } = grid.laid;
  const count = heights.length * directions.length;
  const textAt = (height: number, direction: number): string => grid.cells.get(`${height}/${direction}`)?.text ?? "";
  const keep = (next: Laid, text: (height: number, direction: number) => string): void => {
    setLaid(next);
    setInput("readings", listOf(next, text));
  };

  /** A typed reading as it is kept; the first one settles the unit of all. */
  const readingOf = (typed: string, from: string): string => {
    const step = stepped(typed, from, unit);
    if (step !== undefined) return step;
    const text = typed.trim();
    if (text === "" || unitNamed("length", splitText(text).unit)) return text;
    return joinText(text, likelyUnit(DIAMETER, text, [unit, "mm", "in"]) ?? unit);
  };
  const take = (text: string): void => {
    if (text === "") return;
    last.current = text;
    const used = unitOf([{ diameter: text }]);
    if (used) {
      setUnit(used);
      unitUsed(DIAMETER, used);
    }
  };
  const write = (height: number, direction: number, typed: string): void => {
    const text = readingOf(typed, lastBefore(height, direction));
    take(text);
    if (text !== textAt(height, direction)) keep(grid.laid, (at, beside) => (at === height && beside === direction ? text : textAt(at, beside)));
  };
  const lastBefore = (height: number, direction: number): string => {
    if (last.current !== "") return last.current;
    for (let at = height * directions.length + direction - 1; at >= 0; at -= 1) {
      const text = textAt(Math.floor(at / directions.length), at % directions.length);
      if (text !== "") return text;
    }
    return "";
  };
  const paste = (height: number, direction: number, text: string): boolean => {
    const block = pasted(text);
    if (!block) return false;
    const across = block.directions ?? widened(directions, direction + Math.max(...block.rows.map((row) => row.length)), (at) => String(at * 45));
    const down = block.heights?.map((each) => joinText(each, unit)) ?? widened(heights, height + block.rows.length, (at) => `${at * 50} ${unit === "in" ? "mm" : unit}`);
    const [top, left] = block.heights ? [0, 0] : [height, direction];
    let brought = 0;
    const next = down.map((_height, at) =>
      across.map((_direction, beside) => {
        const cell = block.rows[at - top]?.[beside - left];
        if (cell === undefined || cell === "") return block.heights ? "" : textAt(at, beside);
        brought += 1;
        return readingOf(cell, "");
      }),
    );
    take(next.flat().find((each) => each !== "") ?? "");
    keep({ heights: down, directions: across }, (at, beside) => next[at]![beside]!);
    said.value = { text: brought === 1 ? "One reading was pasted." : `${brought} readings were pasted.`, action: { label: "Undo", run: undo } };
    return true;
  };
  const takeOut = (height: number): void => {
    const had = directions.some((_each, direction) => textAt(height, direction) !== "");
    const kept = heights.map((_each, at) => at).filter((at) => at !== height);
    keep({ ...grid.laid, heights: kept.map((at) => heights[at]!) }, (at, beside) => textAt(kept[at]!, beside));
    if (had) sayGone(`Height ${height + 1}`);
  };
  const rename = (part: "heights" | "directions", at: number, text: string): void => {
    const next: Laid = { ...grid.laid, [part]: grid.laid[part].map((each, index) => (index === at ? text : each)) };
    keep(next, textAt);
  };
  const own = faults.find((fault) => fault.path.length === 1 && fault.path[0] === "readings");
  return (
    <fieldset class="grid">
      <legend>{LABEL}</legend>
      <div class="grid-top">
        <p>Heights along the bore, directions round it: 0° along the crankshaft, 90° across.</p>
        <label class="grid-unit">
          <span class="unseen">Unit of all readings</span>
          <select value={unit} onChange={(event) => setUnit(event.currentTarget.value as GridUnit)}>
            <option value="mm">mm</option>
            <option value="in">in</option>
          </select>
        </label>
      </div>
      {own && <FaultWords fault={own} />}
      <table class="grid-table">
        <caption class="unseen">Readings by height and direction</caption>
        <thead>
          <tr>
            {directions.map((direction, at) => (
              <th scope="col" key={at}>
                <HeadBox label={`Direction ${at + 1}, degrees`} value={splitText(direction).number} unit="°" onChange={(text) => rename("directions", at, text)} />
              </th>
            ))}
          </tr>
        </thead>
        {heights.map((height, at) => (
          <tbody key={at}>
            <tr>
              <th scope="rowgroup" colSpan={directions.length}>
                <span class="grid-height">
                  <HeadBox label={`Height ${at + 1}`} value={height} unit="" onChange={(text) => rename("heights", at, joinText(text, splitText(height).unit || "mm"))} />
                  <button type="button" class="small grid-out" aria-label={`Take out height ${at + 1}`} onClick={() => takeOut(at)}>
                    ✕
                  </button>
                </span>
              </th>
            </tr>
            <tr>
              {directions.map((direction, beside) => {
                const number = at * directions.length + beside;
                const cell = grid.cells.get(`${at}/${beside}`);
                const fault = cell && faults.find((each) => each.path[0] === "readings" && each.path[1] === cell.row);
                return (
                  <td key={beside}>
                    <GridCell
                      id={`reading-${number}`}
                      label={`Reading at ${height}, ${splitText(direction).number}°`}
                      unit={unit}
                      text={cell?.text ?? ""}
                      last={lastBefore(at, beside)}
                      fault={fault}
                      box={(element) => (boxes.current[number] = element)}
                      write={(text) => write(at, beside, text)}
                      paste={(text) => paste(at, beside, text)}
                      setUnit={(name) => setUnit(name === "mm" ? "mm" : "in")}
                      move={(step) => moveTo(boxes.current, number + step, count)}
                      across={directions.length}
                      isLast={number === count - 1}
                    />
                  </td>
                );
              })}
            </tr>
          </tbody>
        ))}
      </table>
      <FaultLines faults={faults} />
      <div class="grid-more">
        <button type="button" onClick={() => setLaid({ ...grid.laid, heights: widened(heights, heights.length + 1, (at) => `${at * 50} mm`) })}>
          Add a height
        </button>
        <button type="button" onClick={() => setLaid({ ...grid.laid, directions: widened(directions, directions.length + 1, (at) => String(at * 45)) })}>
          Add a direction
        </button>
        <button type="button" class="small-words" onClick={() => setAsList(true)}>
          Enter them as a list
        </button>
      </div>
    </fieldset>
  );
}

function FaultLines({ faults }: { faults: readonly Fault[] }) {
  const cells = faults.filter((fault) => fault.path[0] === "readings" && fault.path.length > 1);
  return (
    <>
      {cells.map((fault, index) => (
        <FaultWords key={index} fault={{ ...fault, message: `Reading ${Number(fault.path[1]) + 1}: ${fault.message}` }} />
      ))}
    </>
  );
}

/** A height or a direction, changed when it is left. */
function HeadBox({ label, value, unit, onChange }: { label: string; value: string; unit: string; onChange(text: string): void }) {
  return (
    <span class="grid-head">
      <input
        type="text"
        aria-label={label}
        value={value}
        maxLength={20}
        autocomplete="off"
        onFocus={(event) => event.currentTarget.select()}
        onKeyDown={(event) => event.key === "Enter" && event.currentTarget.blur()}
        onChange={(event) => event.currentTarget.value.trim() !== "" && onChange(event.currentTarget.value.trim())}
      />
      {unit}
    </span>
  );
}

function moveTo(boxes: (HTMLInputElement | null)[], number: number, count: number): boolean {
  if (number < 0 || number >= count) return false;
  boxes[number]?.focus();
  return true;
}

/** The unit of the first reading that says one. */
function unitOf(readings: Input | undefined): GridUnit | undefined {
  for (const each of Array.isArray(readings) ? readings : []) {
    const text = typeof each === "object" && !Array.isArray(each) ? each.diameter : undefined;
    const unit = typeof text === "string" ? unitNamed("length", splitText(text).unit)?.name : undefined;
    if (unit) return unit === "mm" ? "mm" : "in";
  }
  return undefined;
}

/** `places` with as many as wanted: each new one where the next number puts it, unless that is taken. */
function widened(places: readonly string[], wanted: number, make: (at: number) => string): string[] {
  const next = [...places];
  for (let at = 0; next.length < wanted; at += 1) if (!next.includes(make(at))) next.push(make(at));
  return next;
}
