/** Sizes to work to, with their limits and a place for what was measured: on the screen to type in, on paper
 * to write in. */

import type { Size } from "../engine/answers";
import { isOfTool } from "../engine/tables";
import { system } from "../base/settings";
import { measure, placeOf } from "../sheet/measured";
import { job } from "../sheet/sheet";
import { limitShown, shown } from "../units/show";
import type { Shown } from "../units/show";

interface Props {
  sizes: readonly Size[];
  /** Where the sizes stand, so that a measured one is kept with its place. */
  place: string;
  caption: string;
  /** A size as it is for each ring that was measured, by the ring's number; none where nothing was. */
  own?: (size: Size) => ReadonlyMap<number, Size>;
}

interface Row {
  size: Size;
  label: string;
  /** 0: of the card, for every ring. */
  ring: number;
}

export function SizeTable({ sizes, place, caption, own }: Props) {
  if (sizes.length === 0) return null;
  return (
    // The roles are said outright: stacked on a narrow screen it is a table still.
    <div class="sizes-room">
    <table class="sizes" role="table">
      <caption class="unseen">{caption}</caption>
      <thead role="rowgroup">
        <tr role="row">
          <th scope="col" role="columnheader">Size</th>
          <th scope="col" role="columnheader">Make it</th>
          <th scope="col" role="columnheader">Measured</th>
        </tr>
      </thead>
      <tbody role="rowgroup">{sizes.flatMap((size) => rowsOf(size, own?.(size), place)).map((row) => <OneRow key={`${row.size.name}/${row.ring}`} place={place} {...row} />)}</tbody>
    </table>
    </div>
  );
}

/** One row for all rings where they are to be made alike, or on one tool, and only the first was measured; else one for each. */
function rowsOf(size: Size, own: ReadonlyMap<number, Size> | undefined, place: string): Row[] {
  const rings = [...(own ?? [])];
  const measuredOf = (ring: number): string | undefined => job.value.measured[placeOf(place, size.name ?? size.label, ring)];
  const alike = (each: Size): boolean => isOfTool(size.name ?? "") || read(each) === read(size);
  if (rings.every(([ring, each]) => alike(each) && (ring === 1 || !measuredOf(ring)))) return [{ size, label: size.label, ring: 0 }];
  return rings.map(([ring, each]) => ({ size: { ...size, ...each }, label: `${size.label}, ring ${ring}`, ring }));
}

const read = (size: Size): string => {
  const limits = limitsOf(size);
  return [shown(aim(size), size.unit, system.value, "limit").text, limits?.lower, limits?.upper].join(" ");
};

function OneRow({ size, label, ring, place }: Row & { place: string }) {
  const text = aimShown(size);
  const limits = limitsOf(size);
  const key = placeOf(place, size.name ?? size.label, ring || 1);
  return (
    <tr role="row">
      <th scope="row" role="rowheader">{label}</th>
      <td class="sizes-value" role="cell">
        <b>{text.text}</b> {text.unit}
        {limits && (
          <small>
            {limits.lower} to {limits.upper}
          </small>
        )}
      </td>
      <td class="sizes-measured" role="cell">
        <input
          type="text"
          inputMode="decimal"
          maxLength={40}
          aria-label={`Measured ${label}`}
          value={job.value.measured[key] ?? ""}
          onInput={(event) => measure(key, event.currentTarget.value)}
        />
      </td>
    </tr>
  );
}

/** What to make it: the basic size, or where a fit leaves that outside its limits, the middle of them. */
export function aim({ value, limits }: Size): number {
  if (!limits) return value;
  const { lower, upper } = limits;
  return value < lower.value || value > upper.value ? (lower.value + upper.value) / 2 : value;
}

/** The size as it is read; never outside its limits as they are read. */
export function aimShown(size: Size): Shown {
  const limits = limitsOf(size);
  const { text, unit } = shown(aim(size), size.unit, system.value, limits ? "limit" : (size.name ?? size.label));
  if (!limits) return { text, unit };
  return { text: Number(text) < Number(limits.lower) ? limits.lower : Number(text) > Number(limits.upper) ? limits.upper : text, unit };
}

/** The limits of a size as they are read, if it has any. */
export function limitsOf({ limits }: Size): { lower: string; upper: string } | undefined {
  if (!limits) return undefined;
  const { lower, upper } = limits;
  return {
    lower: limitShown(lower.value, lower.unit, system.value, false),
    upper: limitShown(upper.value, upper.unit, system.value, true),
  };
}
