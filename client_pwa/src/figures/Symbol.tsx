/** A symbol as it is printed: U_2 with its index below the line, m_r/m as two symbols and a bar. */

import type { JSX } from "preact";

export function Symbol({ text }: { text: string }): JSX.Element {
  return (
    <>
      {text.split(/(_(?:\{[^}]*\}|[A-Za-z0-9]+))/).map((part, index) =>
        part.startsWith("_") ? <sub key={index}>{part.replace(/^_|[{}]/g, "")}</sub> : part,
      )}
    </>
  );
}
