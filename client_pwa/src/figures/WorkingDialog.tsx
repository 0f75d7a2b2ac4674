/** The working of one figure: formula, what was put in, range, source; the figure in full and in every unit. */

import { useEffect, useRef, useState } from "preact/hooks";
import { Dialog } from "../base/Dialog";
import { system } from "../base/settings";
import type { Figure } from "../engine/answers";
import { withWorking } from "../sheet/opened";
import { fractionWords, inFull, shown, thouWords } from "../units/show";
import { Formula } from "./Formula";
import { WithNumbers } from "./WithNumbers";
import { GuideLink } from "./GuideLink";
import { MethodGrounds } from "./MethodGrounds";
import { needReference, reference } from "./reference";
import { Symbol } from "./Symbol";
import { openFigure } from "./working";
import type { OpenFigure } from "./working";

export function WorkingDialog() {
  const open = openFigure.value;
  const last = useRef<OpenFigure | undefined>(undefined);
  if (open) last.current = open;
  useEffect(() => {
    if (open) needReference();
  }, [open]);
  const shownFigure = open ?? last.current;
  return (
    <Dialog open={open !== undefined} title={shownFigure?.label ?? ""} onClose={() => (openFigure.value = undefined)}>
      {shownFigure && <Working {...shownFigure} />}
    </Dialog>
  );
}

/** With what was put in, once it is there. */
function useWhole(figure: Figure): Figure | undefined {
  const [found, setFound] = useState<{ of: Figure; whole: Figure } | undefined>(undefined);
  useEffect(() => {
    void withWorking(figure).then((whole) => setFound({ of: figure, whole }));
  }, [figure]);
  return found?.of === figure ? found.whole : undefined;
}

function Working({ name, figure }: OpenFigure) {
  const whole = useWhole(figure);
  const method = whole && reference.value?.methods.get(figure.method);
  const main = shown(figure.value, figure.unit, system.value, name);
  const others = otherUnits(figure.value, figure.unit, name);
  return (
    <>
      <p class="working-figure">
        {figure.symbol && <span class="working-symbol"><Symbol text={figure.symbol} /> = </span>}
        <b>{main.text}</b> {main.unit}
      </p>
      <table class="plain">
        <caption class="unseen">The figure in full and in other units</caption>
        <tbody>
          {others.map(([label, text]) => (
            <tr key={label}>
              <th scope="row">{label}</th>
              <td>{text}</td>
            </tr>
          ))}
          {(figure.low !== undefined || figure.high !== undefined) && (
            <tr>
              <th scope="row">Could be</th>
              <td>
                {spread(figure.low, figure.unit, name)} to {spread(figure.high, figure.unit, name)}
              </td>
            </tr>
          )}
        </tbody>
      </table>
      <h3>How it is worked</h3>
      {method ? (
        <>
          <p>{method.title}</p>
          <Formula text={method.formula} />
          <WithNumbers formula={method.formula} name={name} figure={whole} />
        </>
      ) : (
        <p>{figure.method ? figure.method.replace(/-/g, " ") : "taken as given"}</p>
      )}
      {whole?.working && whole.working.length > 0 && (
        <>
          <h3>Put in</h3>
          <table class="plain">
            <caption class="unseen">Numbers put into the formula</caption>
            <tbody>
              {whole.working.map((entry, index) => {
                const value = shown(entry.value, entry.unit, system.value, entry.symbol);
                const full = inFull(entry.value, entry.unit, system.value, entry.symbol);
                return (
                  <tr key={index}>
                    <th scope="row"><Symbol text={entry.symbol} /></th>
                    <td>
                      {value.text} {value.unit}
                      {full.text !== value.text.replace(/\u202f/g, "").replace("−", "-") && <small> ({full.text})</small>}
                    </td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        </>
      )}
      {method && <MethodGrounds method={method} />}
      <p>
        <GuideLink topic={`figure-${name}`} onClick={() => (openFigure.value = undefined)}>
          What this figure is, in the guide
        </GuideLink>
      </p>
    </>
  );
}

function otherUnits(value: number, unit: string, name: string): [string, string][] {
  const full = inFull(value, unit, system.value, name);
  const other = shown(value, unit, system.value === "metric" ? "inch" : "metric", name);
  const rows: [string, string][] = [["In full", `${full.text} ${full.unit}`]];
  if (other.unit !== full.unit) rows.push([system.value === "metric" ? "Inch measure" : "Metric", `${other.text} ${other.unit}`]);
  if (unit === "mm") {
    if (Math.abs(value) >= 0.2) rows.push(["Nearest 64th", fractionWords(value)]);
    rows.push(["In thou", thouWords(value)]);
  }
  return rows;
}

function spread(value: number | undefined, unit: string, name: string): string {
  if (value === undefined) return "no bound";
  const text = shown(value, unit, system.value, name);
  return `${text.text} ${text.unit}`;
}
