/** A formula as it is set in print. */

import { createElement } from "preact";
import type { ComponentChild } from "preact";
import { formulaPieces } from "./formula";
import type { MathNode } from "./formula";

export function Formula({ text }: { text: string }) {
  return (
    <p class="formula">
      {formulaPieces(text).map((piece, at) => [at > 0 && piece !== "," && piece !== ";" && " ", drawn(piece)])}
    </p>
  );
}

function drawn(piece: MathNode | string): ComponentChild {
  return typeof piece === "string" ? piece : createElement(piece.tag, null, ...piece.kids.map(drawn));
}
