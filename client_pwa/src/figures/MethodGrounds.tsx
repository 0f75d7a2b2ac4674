/** The range in which a method holds, and who says so. */

import type { Method } from "../engine/answers";
import { basisWords, reference } from "./reference";

export function MethodGrounds({ method }: { method: Method }) {
  return (
    <>
      {method.validity && (
        <>
          <h3>Where it holds</h3>
          <p>{method.validity}</p>
        </>
      )}
      {method.sources.length > 0 && (
        <>
          <h3>Source</h3>
          <ul class="sources">
            {method.sources.map((entry) => {
              const where = reference.value?.sources.get(entry.key)?.where;
              return (
                <li key={entry.key}>
                  {entry.title}
                  {where && `: ${where}`}. <b>Basis: {basisWords(entry.basis)}.</b>
                </li>
              );
            })}
          </ul>
        </>
      )}
    </>
  );
}
