/** A tool of the shop's shelf that comes near the one this ring wants, offered for this job. */

import { SHELF, shop } from "../../book/shop";
import type { Answer } from "../../engine/answers";
import { inputs, setInput } from "../../sheet/sheet";
import { parseQuantity } from "../../units/parse";

/** Per tool: the input that takes one from the shelf, and the figure that says what is wanted. */
const WANTED: Readonly<Record<string, readonly [input: string, figure: string]>> = {
  former: ["shelf_former", "former_diameter"],
  pot: ["shelf_pot", "pot_bore"],
  "closing-ring": ["shelf_closing_ring", "closing_ring_bore"],
  "clamp-mandrel": ["shelf_clamp_mandrel", "clamp_mandrel_diameter"],
};
/** Beyond this share of its size a tool is another tool. */
const NEAR = 0.015;

export function OnTheShelf({ tool, answer }: { tool: string; answer: Answer | undefined }) {
  const [input, figure] = WANTED[tool] ?? [];
  if (input === undefined || figure === undefined) return null;
  const taken = inputs.value[input];
  if (typeof taken === "string") {
    return (
      <p class="shelf">
        Worked for the one of {taken} from the shelf.{" "}
        <button type="button" onClick={() => setInput(input, undefined)}>
          Make one instead
        </button>
      </p>
    );
  }
  const wanted = answer?.figures[figure as keyof Answer["figures"]]?.value;
  if (wanted === undefined) return null;
  const near = (shop.value.shelf[input] ?? []).flatMap((text) => {
    const parsed = parseQuantity("length", text, "mm");
    return parsed.ok && Math.abs(parsed.reading.value / wanted - 1) <= NEAR ? [{ text, off: Math.abs(parsed.reading.value - wanted) }] : [];
  });
  near.sort((one, other) => one.off - other.off);
  const [best] = near;
  if (!best) return null;
  return (
    <p class="shelf">
      {SHELF[input]} on your shelf: one of {best.text} comes near.{" "}
      <button type="button" onClick={() => setInput(input, best.text)}>
        Use it for this job
      </button>
    </p>
  );
}
