/** The sizes of one operation, large, each with the place for what was measured and its verdict at once. */

import type { Operation, Outcome, RingSoFar, Size } from "../../engine/answers";
import { isOfTool } from "../../engine/tables";
import { sentence } from "../../engine/labels";
import { NumberEntry } from "../../fields/NumberEntry";
import { Mark, WORD } from "../../figures/Findings";
import { aim, aimShown, limitsOf } from "../../figures/SizeTable";
import { measure, ofFirstRing, placeOf } from "../../sheet/measured";
import { system } from "../../base/settings";
import { job } from "../../sheet/sheet";
import { parseQuantity } from "../../units/parse";
import { shown } from "../../units/show";
import { kindOf, verdictOn } from "./verdict";

/** The core's word for what is set and not measured. */
const SET = "set, not measured";

interface Props {
  operation: Operation;
  ring: number;
  rings: unknown;
}

export function SizesToWork({ operation, ring, rings }: Props) {
  const soFar = (Array.isArray(rings) ? (rings as RingSoFar[]) : []).find((each) => each.ring === ring);
  return (
    <>
      <ul class="work-sizes">
        {operation.sizes.map((size) => {
          const worked = soFar?.sizes.find((each) => each.operation === operation.key && each.name === size.name);
          return (
            <OneSize
              key={`${size.name}/${ring}`}
              operation={operation}
              size={worked ? { ...size, ...worked, label: size.label } : size}
              changed={worked !== undefined && worked.measured === undefined && differs(worked, size)}
              outcome={worked?.outcome === "watch" && soFar?.outcome === "stop" ? undefined : worked?.outcome}
              cost={worked?.cost}
              ring={ring}
            />
          );
        })}
      </ul>
      {soFar && operation.each_ring && (
        <p class={`work-verdict work-ring finding-${soFar.outcome}`} role="status">
          <Mark outcome={soFar.outcome} />
          <span>
            <b>{WORD[soFar.outcome]}:</b> {sentence(soFar.why)} {soFar.remedy && sentence(soFar.remedy)}
          </span>
        </p>
      )}
    </>
  );
}

/** Whether this ring's size is another, as read, than the card's for all rings. */
function differs(own: Size, card: Size): boolean {
  const read = (size: Size): string => shown(aim(size), size.unit, system.value, "limit").text;
  return read(own) !== read(card);
}

interface OneSizeProps {
  operation: Operation;
  size: Size;
  ring: number;
  changed: boolean;
  outcome: Outcome | undefined;
  cost: string | undefined;
}

function OneSize({ operation, size, ring, changed, outcome, cost }: OneSizeProps) {
  const where = `route/${operation.key}`;
  const name = size.name ?? size.label;
  const place = placeOf(where, name, ring);
  const text = aimShown(size);
  const limits = limitsOf(size);
  const kind = kindOf(size.unit);
  const typed = job.value.measured[place] ?? "";
  // One tool serves all rings: measured once.
  const served = isOfTool(name) ? ofFirstRing(job.value.measured, where, name) : "";
  const read = typed || served;
  const parsed = read === "" ? undefined : parseQuantity(kind, read, "");
  const own = parsed?.ok ? verdictOn(size, parsed.reading.value, system.value) : undefined;
  const verdict = own && outcome && outcome !== own.outcome ? { ...own, outcome } : own;
  return (
    <li class="work-size">
      <p class="work-label">{size.label}</p>
      <p class="work-value">
        <b>{text.text}</b> {text.unit}
        {limits && (
          <small>
            {limits.lower} to {limits.upper}
          </small>
        )}
      </p>
      {changed && <p class="work-reading">To suit this ring as it was measured.</p>}
      {size.reading && size.reading !== SET && <p class="work-reading">By {size.reading}.</p>}
      {kind !== "number" && size.reading !== SET && (
        <NumberEntry
          id={`measured-${place.replace(/[^a-z0-9]+/gi, "-")}`}
          field={{ name: `measured ${size.unit}`, kind, unit: size.unit, lowest: 0 }}
          label={`Measured ${size.label}`}
          hideLabel
          placeholder={served || "measured"}
          value={typed}
          fault={typed && parsed && !parsed.ok ? { path: [], code: "unreadable", message: parsed.message, remedy: parsed.remedy } : undefined}
          onChange={(next) => measure(place, next)}
        />
      )}
      {verdict && (
        <p class="work-verdict" role="status">
          {verdict.outcome && <Mark outcome={verdict.outcome} />}
          <span>
            {verdict.outcome && <b>{WORD[verdict.outcome]}: </b>}
            {verdict.words} {cost && sentence(cost)}
          </span>
        </p>
      )}
    </li>
  );
}
