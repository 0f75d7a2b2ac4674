/** A symbol as it is printed: U_2 and d1 with the index below the line, alpha_r with the Greek letter, m_r/m as two
 * symbols and a bar. */

import type { JSX } from "preact";
import { partsOf } from "./formula_words";

export function Symbol({ text }: { text: string }): JSX.Element {
  return (
    <>
      {text.replaceAll(" - ", " \u2212 ").split(/([A-Za-z]+\d*(?:_[A-Za-z0-9]+)*'*)/).map((part, index) => {
        const { letter, below, dashes } = partsOf(part);
        return (
          <span key={index}>
            {letter}
            {below.length > 0 && <sub>{below.join("")}</sub>}
            {"′".repeat(dashes.length)}
          </span>
        );
      })}
    </>
  );
}
