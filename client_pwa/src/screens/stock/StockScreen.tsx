/** The bar to buy, what it weighs and wastes, and how to cut it from what lies in the rack. */

import type { FigureName, InputName } from "../../engine/names";
import type { Answer } from "../../engine/answers";
import type { Cut } from "../../book/rack";
import { shop } from "../../book/shop";
import { fieldsOf } from "../../engine/tables";
import { SheetEntry } from "../../fields/SheetEntry";
import { Choices } from "../../figures/Choices";
import { FigureRows, FigureTile } from "../../figures/Figures";
import { Findings } from "../../figures/Findings";
import { inView, isOf } from "../../figures/results";
import { Status } from "../../figures/Status";
import { addressOf } from "../../base/routes";
import { inputs, job } from "../../sheet/sheet";
import { CutList } from "../../figures/CutList";

interface StockSet {
  bar: string;
  blanks: number;
  sticks: number;
  blanks_per_stick: number;
}

const ON_TOP: readonly (InputName | "")[] = ["rings", "spares", "bars"];
/** Of the bar that would be bought: nothing to the purpose where all is cut from the rack. */
const OF_THE_BAR_TO_BUY = new Set<FigureName>(["bar_diameter", "bar_length", "mass", "swarf_share"]);
const LARGE: readonly FigureName[] = ["bar_diameter", "bar_length", "mass", "swarf_share"];

export function StockScreen() {
  const view = inView("job");
  const stock = view.answer?.stock as (Answer & { cut_list?: Cut[]; sets?: StockSet[] }) | undefined;
  const elsewhere = new Set([...fieldsOf("tooling"), ...fieldsOf("route")].map((field) => field.name));
  const own = fieldsOf("job").filter((field) => !elsewhere.has(field.name) && !ON_TOP.includes(field.name));
  const fromRack = (stock?.cut_list ?? []).length > 0 && stock!.cut_list!.every((cut) => cut.have);
  // What was chosen for the stock is listed with the whole job's choices.
  const answer = stock && view.answer ? { ...stock, chosen: view.answer.chosen } : undefined;
  return (
    <div class="two">
      <div class="two-left">
        <form class="card top-entries" onSubmit={(event) => event.preventDefault()}>
          <SheetEntry name="rings" calculation="job" faults={view.faults} placeholder="chosen for you" />
          <SheetEntry name="spares" calculation="job" faults={view.faults} placeholder="chosen for you" />
          <SheetEntry name="bars" calculation="job" faults={view.faults} label="Bars for this job alone" rowName="Bar" />
          <p>
            {inputs.value.bars === undefined && Array.isArray(shop.value.inputs.bars) ? "Cut from the rack of your shop. " : "The rack of your shop is kept once, for all jobs. "}
            <a href={addressOf("shop", job.value.id)}>My shop</a> <a href={addressOf("cut", job.value.id)}>Several jobs, one bar</a>
          </p>
        </form>
        <Status result={view.result} shownAt={(fault) => isOf(ON_TOP, fault)} />
        {stock && (
          <section class={view.stale ? "plate stale" : "plate"} aria-label="The bar">
            {stock.sets?.[0] && (
              <p class="plate-words">
                <b>{fromWords(stock.cut_list ?? [], stock.sets[0].bar)}</b>, {stock.sets[0].blanks} blanks, {stock.sets[0].blanks_per_stick} to a
                stick
              </p>
            )}
            {LARGE.filter((name) => !fromRack || !OF_THE_BAR_TO_BUY.has(name)).map((name) => {
              const figure = stock.figures[name];
              return figure ? <FigureTile key={name} name={name} figure={figure} /> : null;
            })}
          </section>
        )}
        <CutList cuts={stock?.cut_list ?? []} />
      </div>
      <div class="two-right">
        <Findings findings={stock?.findings ?? []} />
        {stock && (
          <section class="card" aria-label="Figures">
            <h2>{fromRack ? "If the bar were bought" : "Figures"}</h2>
            <FigureRows figures={stock.figures} stale={view.stale} />
          </section>
        )}
        <Choices calculation="job" title="Chosen, yours to change" fields={own} answer={answer} faults={view.faults} />
      </div>
    </div>
  );
}

/** What it is cut from, as the cut list has it. */
function fromWords(cuts: readonly Cut[], toBuy: string): string {
  const names = (have: boolean): string => [...new Set(cuts.filter((cut) => cut.have === have).map((cut) => cut.bar))].join(", ");
  const [rack, bought] = [names(true), names(false)];
  if (rack === "" && bought === "") return toBuy;
  return [rack && `From the rack: ${rack}`, bought && `${rack ? "to buy" : "To buy"}: ${bought}`].filter(Boolean).join("; ");
}
