/** The guide: how to gauge and measure, every operation, check and figure, and the trade's words. */

import type { ComponentChildren } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { addressOf, cameFrom, place } from "../../base/routes";
import { labelOf, sentence } from "../../engine/labels";
import type { FigureName } from "../../engine/names";
import { figureGroups } from "../../engine/tables";
import { GuideLink } from "../../figures/GuideLink";
import { needReference, reference } from "../../figures/reference";
import { Symbol } from "../../figures/Symbol";
import { job } from "../../sheet/sheet";
import { Find } from "./Find";
import { GuidePicture } from "./GuidePicture";
import { needOperations, operations } from "./operations";
import type { Shown } from "./operations";
import { DOUBLE, PLAIN } from "./samples";
import { ARTICLES, EXPLAINED, GAPS, GAUGING, PARTS, topicOfWord, TWO_GAPS, WORDS } from "./texts";

export function GuideScreen() {
  const root = useRef<HTMLDivElement>(null);
  const { topic } = place.value;
  const [wanted, setWanted] = useState("");
  /** Counts what was opened out of the list of what was found. */
  const [opened, setOpened] = useState(0);
  const open = (): void => {
    setWanted("");
    setOpened(opened + 1);
  };
  const ready = reference.value !== undefined && operations.value.length > 0;
  useEffect(() => {
    needReference();
    needOperations();
  }, []);
  // Once what it leads to stands there: the way to it opened, and the eye and a reader's voice on it.
  useEffect(() => {
    if (topic) requestAnimationFrame(() => show(root.current, topic));
  }, [topic, ready, opened]);
  const from = topic && cameFrom.value;
  return (
    <div class="guide" ref={root} data-ready={ready ? "yes" : "no"}>
      {from && (
        <a class="button guide-back" href={addressOf(from, job.value.id, from === "route" ? topic : undefined)}>
          Back to where you were
        </a>
      )}
      <Find wanted={wanted} setWanted={setWanted} open={open} />
      <div hidden={wanted.trim() !== ""}>
        <Parts />
      </div>
    </div>
  );
}

function Parts() {
  return (
    <>
      <p>Pictures are drawn here, of sample rings. Each figure and each check of the app leads to its entry.</p>
      <Part topic="gauge" title={ARTICLES.gauge}>
        <GuidePicture ring={DOUBLE} part="operation" operation="survey" />
        <ol>
          {GAUGING.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ol>
      </Part>
      <Part topic="gaps" title={ARTICLES.gaps}>
        <GuidePicture ring={PLAIN} part="gaps" />
        <ul>
          {GAPS.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
        <GuidePicture ring={DOUBLE} part="ring-closed" />
        <p>{TWO_GAPS}</p>
      </Part>
      <Part topic="operations" title={PARTS.operations}>
        <p>Your own card has those that your ring needs, with its sizes. Local rules and a competent person come before this guide.</p>
        {operations.value.map((each) => (
          <OneOperation key={each.operation.key} {...each} />
        ))}
      </Part>
      <Part topic="checks" title={PARTS.checks}>
        <p>
          <b>Good</b>: go on. <b>Watch</b>: it can be made or run, but read why first. <b>Stop</b>: do not make or run it so; do what the check says.
        </p>
        <Checks />
      </Part>
      <Part topic="figures" title={PARTS.figures}>
        <FiguresTold />
      </Part>
      <Part topic="words" title={PARTS.words}>
        <dl>
          {Object.entries(WORDS).map(([word, meaning]) => (
            <Entry key={word} topic={topicOfWord(word)} name={word}>
              {meaning}
            </Entry>
          ))}
        </dl>
      </Part>
    </>
  );
}

/** In which part of the guide an entry stands: "check-light" in that of the checks. */
function partOf(topic: string): string {
  const part = `${topic.split("-")[0]!}s`;
  return part in PARTS ? part : topic;
}

/** What is folded away is drawn when it is opened. */
function Part({ topic, title, children }: { topic: string; title: string; children: ComponentChildren }) {
  const [opened, setOpened] = useState(false);
  const wanted = place.value.topic;
  return (
    <details class="card" id={topic} onToggle={(event) => event.currentTarget.open && setOpened(true)}>
      <summary>
        <h2>{title}</h2>
      </summary>
      {(opened || (wanted !== undefined && partOf(wanted) === topic)) && children}
    </details>
  );
}

function OneOperation({ operation, ring }: Shown) {
  const [open, setOpen] = useState(false);
  return (
    <details class="drawing" id={`operation-${operation.key}`} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <span>{operation.title}</span>
      </summary>
      {open && <GuidePicture ring={ring} part="operation" operation={operation.key} />}
      <p>
        <b>With:</b> {sentence(operation.tool)}
      </p>
      <p>{operation.text}</p>
      <p>
        <b>Check:</b> {operation.check}
      </p>
      {operation.cautions.length > 0 && (
        <ul class="operation-cautions" aria-label="Take care">
          {operation.cautions.map((caution) => (
            <li key={caution.key}>{caution.text}</li>
          ))}
        </ul>
      )}
    </details>
  );
}

function Checks() {
  const checks = [...(reference.value?.checks ?? [])].map((each) => ({ ...each, name: labelOf(each.check) }));
  checks.sort((one, other) => one.name.localeCompare(other.name));
  return (
    <dl>
      {checks.map(({ check, name, judges }) => (
        <Entry key={check} topic={`check-${check}`} name={name}>
          Judges {sentence(judges).replace(/^./, (letter) => letter.toLowerCase())}
        </Entry>
      ))}
    </dl>
  );
}

function FiguresTold() {
  const told = new Map((reference.value?.figures ?? []).map((each) => [each.name as FigureName, each]));
  return (
    <>
      {figureGroups([...told.keys()]).map(({ title, names }) => (
        <section key={title} aria-label={title}>
          <h3>{title}</h3>
          <dl>
            {names.map((name) => {
              const { label, meaning, symbol, methods } = told.get(name)!;
              const [method = ""] = methods;
              const article = EXPLAINED[name];
              return (
                <Entry key={name} topic={`figure-${name}`} name={label} symbol={symbol}>
                  {meaning && sentence(meaning)} <b>Worked by:</b> {sentence(reference.value?.methods.get(method)?.title ?? "")}{" "}
                  {article && <GuideLink topic={article}>{ARTICLES[article]}</GuideLink>}
                </Entry>
              );
            })}
          </dl>
        </section>
      ))}
    </>
  );
}

function Entry({ topic, name, symbol = "", children }: { topic: string; name: string; symbol?: string; children: ComponentChildren }) {
  return (
    <div id={topic} class={place.value.topic === topic ? "guide-entry guide-here" : "guide-entry"}>
      <dt>
        <b>{name}</b>
        {symbol && <i class="row-symbol"> <Symbol text={symbol} /></i>}
      </dt>
      <dd>{children}</dd>
    </div>
  );
}

function show(root: HTMLElement | null, topic: string): void {
  const entry = root?.querySelector<HTMLElement>(`[id="${topic}"]`);
  if (!entry) return;
  for (let box: Element | null = entry; box; box = box.parentElement?.closest("details") ?? null) {
    if (box instanceof HTMLDetailsElement) box.open = true;
  }
  const focused = entry.querySelector("summary") ?? entry;
  if (focused === entry) entry.tabIndex = -1;
  focused.focus({ preventScroll: true });
  entry.scrollIntoView({ block: entry instanceof HTMLDetailsElement ? "start" : "center" });
}
