/** Several jobs out of the bars in the rack: pick them, see the cut list, mark it as cut. */

import { useEffect, useMemo, useState } from "preact/hooks";
import type { Inputs, Job } from "../../book/job";
import { rackAfter } from "../../book/rack";
import type { Cut } from "../../book/rack";
import { jobBegins, namedBars, shop, shopInputs } from "../../book/shop";
import type { Answer } from "../../engine/answers";
import { sentence } from "../../engine/labels";
import { fieldsOf } from "../../engine/tables";
import { Findings } from "../../figures/Findings";
import { assemble } from "../../sheet/request";
import { jobsOfTheBook, replyTo, wordsOf, workedOf } from "../../sheet/other_jobs";
import { addressOf } from "../../base/routes";
import { job } from "../../sheet/sheet";
import { system } from "../../base/settings";
import { shown } from "../../units/show";
import { keepShop } from "../../sheet/keep_shop";
import { CutList } from "../../figures/CutList";

interface Order {
  set: string;
  blanks: number;
  length: { value: number; unit: string };
}

export function CutScreen() {
  const jobs = jobsOfTheBook();
  const [picked, setPicked] = useState<readonly string[]>([]);
  const [search, setSearch] = useState("");
  const chosen = jobs.filter((each) => picked.includes(each.id));
  const found = jobs.filter((each) => picked.includes(each.id) || each.name.toLowerCase().includes(search.trim().toLowerCase()));
  const rack = namedBars(shopInputs.value.bars);
  const plan = usePlan(chosen, rack);
  const toggle = (id: string): void => setPicked(picked.includes(id) ? picked.filter((each) => each !== id) : [...picked, id]);
  const cuts = (plan.answer?.cut_list ?? []) as Cut[];
  const order = (plan.answer?.to_order ?? []) as Order[];
  const markAsCut = (): void => {
    keepShop({ ...shop.peek(), inputs: { ...shop.peek().inputs, bars: rackAfter(rack, cuts) } }, "The rack is as it is after cutting.");
    setPicked([]);
  };
  return (
    <div class="two">
      <div class="two-left">
        <section class="card" aria-label="Jobs to cut">
          <h2>Jobs to cut</h2>
          {jobs.length > 8 && (
            <label class="job-name">
              <span>Find a job</span>
              <input type="text" value={search} onInput={(event) => setSearch(event.currentTarget.value)} />
            </label>
          )}
          {found.slice(0, 60).map((each) => (
            <label class="check" key={each.id}>
              <input type="checkbox" checked={picked.includes(each.id)} onChange={() => toggle(each.id)} />
              <span>
                {each.name}
                {typeof each.inputs.bore === "string" ? `, bore ${each.inputs.bore}` : ", no bore yet"}
              </span>
            </label>
          ))}
          <p>
            {rack.length === 0 ? "No bars in the rack yet. " : `${rack.length === 1 ? "One bar" : `${rack.length} bars`} in the rack. `}
            <a href={addressOf("shop", job.value.id)}>My shop</a>
          </p>
        </section>
        {plan.words.map((words) => (
          <p class="status status-fault" role="status" key={words}>
            {words}
          </p>
        ))}
        <CutList cuts={cuts} />
        {order.length > 0 && (
          <section class="card" aria-label="To order">
            <h2>To order, cut to length</h2>
            <ul>
              {order.map((each, at) => {
                const text = shown(each.length.value, each.length.unit, system.value);
                return (
                  <li key={at}>
                    {each.set}: {text.text} {text.unit} for {each.blanks} blanks
                  </li>
                );
              })}
            </ul>
          </section>
        )}
        {cuts.some((cut) => cut.have) && (
          <p>
            <button type="button" class="main-action print-button" onClick={markAsCut}>
              Mark as cut: change the rack
            </button>
          </p>
        )}
      </div>
      <div class="two-right">
        <Findings findings={plan.answer?.findings ?? []} />
      </div>
    </div>
  );
}

interface Plan {
  answer: Answer | undefined;
  words: readonly string[];
}

/** The cut list of these jobs out of this rack, asked for again when either changes. */
function usePlan(jobs: readonly Job[], rack: readonly Inputs[]): Plan {
  const [plan, setPlan] = useState<Plan>({ answer: undefined, words: [] });
  const question = JSON.stringify([jobs.map((each) => [each.name, each.inputs]), rack, shopInputs.value, jobBegins.value]);
  useEffect(() => {
    let old = false;
    void planned(jobs, rack).then((next) => {
      if (!old) setPlan(next);
    });
    return () => {
      old = true;
    };
  }, [question]);
  return useMemo(() => (jobs.length === 0 ? { answer: undefined, words: [] } : plan), [plan, jobs.length]);
}

async function planned(jobs: readonly Job[], rack: readonly Inputs[]): Promise<Plan> {
  const sets: unknown[] = [];
  const words: string[] = [];
  for (const each of jobs) {
    const { request, answer, words: why } = await workedOf(each, "tooling", `cut@${each.id}`);
    if (!answer) {
      words.push(`${each.name} cannot be cut yet: ${why}`);
      continue;
    }
    const { figures, chosen } = answer;
    const taken = (name: string): unknown => request[name] ?? chosen.find((choice) => choice.input === name)?.value ?? undefined;
    sets.push({
      name: each.name,
      outside_diameter: figures.rough_outside_diameter?.value,
      inside_diameter: figures.bored_inside_diameter?.value,
      part_length: figures.part_length?.value,
      cut_off_width: figures.cut_off_width?.value,
      table_grip: figures.table_grip?.value,
      count: taken("rings") ?? 1,
      material: taken("ring_material"),
    });
  }
  if (sets.length === 0) return { answer: undefined, words };
  const { request, faults } = assemble(fieldsOf("stock"), { ...shopInputs.peek(), ...jobBegins.peek(), bars: [...rack] });
  if (faults.length > 0) return { answer: undefined, words: [...words, `The rack: ${sentence(faults[0]!.message)} ${sentence(faults[0]!.remedy)}`] };
  const reply = await replyTo("cut", "stock", { ...request, sets });
  if (reply.state !== "answer") return { answer: undefined, words: [...words, wordsOf(reply)] };
  return { answer: reply.answer, words };
}
