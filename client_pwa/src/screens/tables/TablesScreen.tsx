/** What the figures rest on, to look up: pairings and materials, other sealings, bars, formulas and sources. */

import type { Key } from "../../engine/tables";
import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";
import type { Outcome, Quantity } from "../../engine/answers";
import { choiceWords, labelOf } from "../../engine/labels";
import { Mark, WORD } from "../../figures/Findings";
import { Formula } from "../../figures/Formula";
import { MethodGrounds } from "../../figures/MethodGrounds";
import { basisWords, needReference, reference } from "../../figures/reference";
import { inView } from "../../figures/results";
import { Status } from "../../figures/Status";
import { alsoWant } from "../../sheet/sheet";
import { system } from "../../base/settings";
import { shown } from "../../units/show";

interface Pairing {
  ring: string;
  cylinder: string;
  outcome: Outcome;
  why: string;
  remedy: string;
}

interface Material {
  key: string;
  title: string;
  note: string;
  properties: Record<string, Quantity & { source: string; basis: string }>;
}

interface Sealing {
  key: string;
  title: string;
  what: string;
  suits: string;
  against: string;
  reckoned: string;
  not_reckoned: string;
  basis: string;
  hottest?: Quantity;
}

interface Bar {
  label: string;
  as_cast_diameter: Quantity;
  as_cast_bore?: Quantity;
}

export function TablesScreen() {
  const { result, answer } = inView("materials");
  return (
    <div class="tables">
      <Status result={result} />
      <Pairings pairings={(answer?.pairings ?? []) as Pairing[]} />
      <Fold title="Other ways to seal a piston">{() => <Sealings />}</Fold>
      <Fold title="Materials">{() => <Materials materials={(answer?.materials ?? []) as Material[]} />}</Fold>
      <Fold title="Bars of iron">{() => <Bars metal="iron" />}</Fold>
      <Fold title="Bars of bronze">{() => <Bars metal="bronze" />}</Fold>
      <Fold title="Formulas and sources">{() => <Methods />}</Fold>
    </div>
  );
}

/** Asks for what it holds only once it is opened. */
function Fold({ title, children }: { title: string; children(): ComponentChildren }) {
  const [open, setOpen] = useState(false);
  return (
    <details class="card" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <h2>{title}</h2>
      </summary>
      {open && children()}
    </details>
  );
}

const metalWords = (family: string): string => (family === "plastic" ? "Filled PTFE" : choiceWords(family));

function Pairings({ pairings }: { pairings: readonly Pairing[] }) {
  if (pairings.length === 0) return null;
  const rings = [...new Set(pairings.map((each) => each.ring))];
  const cylinders = [...new Set(pairings.map((each) => each.cylinder))];
  const of = (ring: string, cylinder: string): Pairing => pairings.find((each) => each.ring === ring && each.cylinder === cylinder)!;
  return (
    <section class="card" aria-labelledby="pairings">
      <h2 id="pairings">Which ring in which cylinder</h2>
      <div class="sizes-room">
        <table class="plain pairings">
          <caption class="unseen">Outcome by metal of cylinder and ring</caption>
          <thead>
            <tr>
              <th scope="col">Cylinder</th>
              {rings.map((ring) => (
                <th scope="col" key={ring}>
                  {metalWords(ring)} ring
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {cylinders.map((cylinder) => (
              <tr key={cylinder}>
                <th scope="row">{metalWords(cylinder)}</th>
                {rings.map((ring) => (
                  <td key={ring} data-ring={`${metalWords(ring)} ring`}>
                    <Mark outcome={of(ring, cylinder).outcome} />
                    {WORD[of(ring, cylinder).outcome]}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {rings.map((ring) => (
        <details class="drawing" key={ring}>
          <summary>
            <span>{metalWords(ring)} ring: why</span>
          </summary>
          {cylinders.map((cylinder) => {
            const { outcome, why, remedy } = of(ring, cylinder);
            return (
              <div class="finding" key={cylinder}>
                <Mark outcome={outcome} />
                <div>
                  <p>
                    <b>{metalWords(cylinder)} cylinder.</b> {why}
                  </p>
                  {remedy && (
                    <p class="finding-remedy">
                      <b>Do:</b> {remedy}
                    </p>
                  )}
                </div>
              </div>
            );
          })}
        </details>
      ))}
      <p>Basis: {basisWords("practice")}.</p>
    </section>
  );
}

function Sealings() {
  useEffect(() => alsoWant("sealings"), []);
  const { result, answer } = inView("sealings");
  return (
    <>
      <Status result={result} />
      <div class="sealings">
        {((answer?.sealings ?? []) as Sealing[]).map((each) => (
        <section key={each.key} aria-label={each.title}>
          <h3>{each.title}</h3>
          <p>{each.what}</p>
          <p>
            <b>Suits:</b> {each.suits}
          </p>
          <p>
            <b>Against it:</b> {each.against}
          </p>
          {each.hottest && (
            <p>
              <b>Steam up to {words(each.hottest, "")}</b>
            </p>
          )}
          <p>
            <b>Worked out here:</b> {each.reckoned} <b>Not:</b> {each.not_reckoned}
          </p>
          <p>Basis: {basisWords(each.basis)}.</p>
        </section>
        ))}
      </div>
    </>
  );
}

function Materials({ materials }: { materials: readonly Material[] }) {
  useEffect(needReference, []);
  const sources = reference.value?.sources;
  return materials.map((each) => (
    <details class="drawing" key={each.key}>
      <summary>
        <span>{each.title}</span>
      </summary>
      <p>{each.note}</p>
      <table class="plain">
        <caption class="unseen">Properties of {each.title}</caption>
        <tbody>
          {Object.entries(each.properties).map(([name, property]) => (
            <tr key={name}>
              <th scope="row">
                {labelOf(name)}
                <small>
                  {sources?.get(property.source)?.title ?? property.source} ({basisWords(property.basis)})
                </small>
              </th>
              <td>{words(property, name)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  ));
}

function Bars({ metal }: { metal: string }) {
  const key: Key = `bars@${metal}`;
  useEffect(() => alsoWant(key), []);
  const { result, answer } = inView(key);
  return (
    <>
      <Status result={result} />
      {answer && <p>{String(answer.note)}</p>}
      <table class="plain">
        <thead>
          <tr>
            <th scope="col">Ask for</th>
            <th scope="col">Measures, skin on</th>
          </tr>
        </thead>
        <tbody>
          {([...((answer?.solid ?? []) as Bar[]), ...((answer?.cored ?? []) as Bar[])]).map((bar) => (
            <tr key={bar.label}>
              <th scope="row">{bar.label}</th>
              <td>
                {words(bar.as_cast_diameter, "")}
                {bar.as_cast_bore && <>, bore {words(bar.as_cast_bore, "")}</>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

function Methods() {
  useEffect(needReference, []);
  if (!reference.value) return <p class="status">Reading the formulas…</p>;
  return [...reference.value.methods.values()].map((method) => (
    <details class="drawing" key={method.key}>
      <summary>
        <span>{method.title}</span>
      </summary>
      <Formula text={method.formula} />
      <MethodGrounds method={method} />
    </details>
  ));
}

function words(quantity: Quantity, name: string): string {
  const text = shown(quantity.value, quantity.unit, system.value, name);
  return `${text.text} ${text.unit}`;
}
