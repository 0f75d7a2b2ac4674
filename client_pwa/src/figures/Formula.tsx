/** A formula as it is set in print. */

import { createElement } from "preact";
import type { ComponentChild } from "preact";
import { formulaNodes, formulaPieces } from "./formula";
import type { MathNode } from "./formula";

export function Formula({ text }: { text: string }) {
  return (
    <p class="formula">
      <Nodes nodes={formulaNodes(text)} />
    </p>
  );
}

/** Part of a formula, formed already. */
export function Nodes({ nodes }: { nodes: readonly MathNode[] }) {
  return <>{formulaPieces(nodes).map((piece, at) => [at > 0 && piece !== "," && piece !== ";" && " ", drawn(piece)])}</>;
}

function drawn(piece: MathNode | string): ComponentChild {
  return typeof piece === "string" ? piece : createElement(piece.tag, null, ...piece.kids.map(drawn));
}
