/** A figure's rule with the numbers put in, and what comes of it. */

import { system } from "../base/settings";
import type { Figure } from "../engine/answers";
import { Nodes } from "./Formula";
import { putInShown } from "./put_in_shown";
import { Symbol } from "./Symbol";

export function WithNumbers({ formula, name, figure }: { formula: string; name: string; figure: Figure }) {
  const found = putInShown(formula, name, figure, system.value);
  if (!found) return null;
  const several = /[;,:]/.test(formula);
  return (
    <div class="put-in">
      <h3>With the numbers put in</h3>
      <p class="formula">
        {figure.symbol && <Symbol text={figure.symbol} />}
        {several && figure.symbol && <> = <Nodes nodes={found.rule} /></>}
      </p>
      <p class="formula">
        = <Nodes nodes={found.numbers} />
      </p>
      <p class="formula">
        = <b>{found.result}</b>
      </p>
      {found.units.length > 0 && <p>Numbers in {found.units.join(", ")}.</p>}
    </div>
  );
}
