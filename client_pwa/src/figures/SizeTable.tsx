/** Sizes to work to, with their limits and a place for what was measured: on the screen to type in, on paper
 * to write in. */

import type { Size } from "../engine/answers";
import { system } from "../base/settings";
import { measure } from "../sheet/measured";
import { job } from "../sheet/sheet";
import { shown } from "../units/show";

interface Props {
  sizes: readonly Size[];
  /** Where the sizes stand, so that a measured one is kept with its place. */
  place: string;
  caption: string;
}

export function SizeTable({ sizes, place, caption }: Props) {
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
      <tbody role="rowgroup">
        {sizes.map((size, index) => {
          const text = shown(aim(size), size.unit, system.value, size.limits ? "limit" : (size.name ?? size.label));
          const limits = limitsOf(size);
          const key = `${place}/${size.name ?? size.label}`;
          return (
            <tr key={index} role="row">
              <th scope="row" role="rowheader">{size.label}</th>
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
                  aria-label={`Measured ${size.label}`}
                  value={job.value.measured[key] ?? ""}
                  onInput={(event) => measure(key, event.currentTarget.value)}
                />
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
    </div>
  );
}

/** What to make it: the basic size, or where a fit leaves that outside its limits, the middle of them. */
export function aim({ value, limits }: Size): number {
  if (!limits) return value;
  const { lower, upper } = limits;
  return value < lower.value || value > upper.value ? (lower.value + upper.value) / 2 : value;
}

/** The limits of a size as they are read, if it has any. */
export function limitsOf({ limits }: Size): { lower: string; upper: string } | undefined {
  if (!limits) return undefined;
  const { lower, upper } = limits;
  return {
    lower: shown(lower.value, lower.unit, system.value, "limit").text,
    upper: shown(upper.value, upper.unit, system.value, "limit").text,
  };
}
