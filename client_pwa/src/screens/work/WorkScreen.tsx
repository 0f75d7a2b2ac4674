/** The route card one operation a screen: its picture, its sizes large, tool and speed, what to beware of, what was
 * measured and what that says. On by thumb, by a swipe, or by the arrow keys. */

import { useEffect, useRef } from "preact/hooks";
import { Picture } from "../../drawings/Drawing";
import type { Operation } from "../../engine/answers";
import { GuideLink } from "../../figures/GuideLink";
import { inView } from "../../figures/results";
import { Status } from "../../figures/Status";
import { isTypedIn } from "../../sheet/history";
import { addressOf } from "../../base/routes";
import { change, job } from "../../sheet/sheet";
import { Facts } from "./Facts";
import { atWork, setAtWork } from "./place";
import { SizesToWork } from "./SizesToWork";
import { SoakTimer } from "./SoakTimer";
import { lit, useLitScreen } from "./wake";

const SWIPE_PX = 70;

export function WorkScreen() {
  useLitScreen();
  const view = inView("route");
  const operations = (view.answer?.operations ?? []) as Operation[];
  const { id, done } = job.value;
  const left = atWork(id);
  const open = operations.findIndex((each) => !done.includes(each.key));
  const kept = operations.findIndex((each) => each.key === left.operation);
  const at = kept >= 0 ? kept : Math.max(0, open);
  const operation = operations[at];
  const top = useRef<HTMLHeadingElement>(null);
  const rings = Math.max(1, Number(ringsOf(view.answer?.chosen)) || 1);

  const go = (to: number): void => {
    const next = operations[to];
    if (!next) return;
    setAtWork(id, { operation: next.key });
    scrollTo(0, 0);
    top.current?.focus({ preventScroll: true });
  };
  const finish = (): void => {
    if (operation && !done.includes(operation.key)) change({ done: [...done, operation.key] });
    go(at + 1);
  };
  useSwipe((step) => go(at + step));

  if (!operation) return <Status result={view.result} calculation="route" />;
  const isDone = done.includes(operation.key);
  const last = at === operations.length - 1;
  const ring = operation.each_ring ? Math.min(left.ring, rings) : 1;
  const soak = operation.sizes.find((size) => size.name === "soak_time");
  return (
    <article class={view.stale ? "work stale" : "work"}>
      <header class="work-head">
        <p>
          <b>{operation.number}</b> of {operations.length}
          {isDone && ", done"}
        </p>
        <progress max={operations.length} value={operations.filter((each) => done.includes(each.key)).length} aria-label="Operations done" />
        <a href={addressOf("route", id)}>Whole card</a>
      </header>
      <h2 ref={top} tabIndex={-1}>
        <GuideLink topic={`operation-${operation.key}`}>{operation.title}</GuideLink>
      </h2>
      <Picture part={`operation:${operation.key}:${ring}`} />
      {operation.each_ring && rings > 1 && (
        <div class="work-rings" role="group" aria-label="Which ring">
          {Array.from({ length: rings }, (_each, index) => (
            <button key={index} type="button" aria-pressed={left.ring === index + 1} onClick={() => setAtWork(id, { ring: index + 1 })}>
              Ring {index + 1}
            </button>
          ))}
        </div>
      )}
      <SizesToWork
        operation={operation}
        ring={ring}
        rings={view.answer?.rings}
      />
      {soak && <SoakTimer hours={soak.value} />}
      <Facts operation={operation} />
      {operation.cautions.length > 0 && (
        <ul class="operation-cautions" aria-label="Take care">
          {operation.cautions.map((caution) => (
            <li key={caution.key}>{caution.text}</li>
          ))}
        </ul>
      )}
      <p class="work-lit">{lit.value === "yes" ? "The screen stays on while this is open." : "This browser lets the screen go dark; touch it now and then."}</p>
      <nav class="work-foot" aria-label="Operations">
        <button type="button" disabled={at === 0} onClick={() => go(at - 1)}>
          Back
        </button>
        <button type="button" class="main-action" onClick={last ? finish : isDone ? () => go(at + 1) : finish}>
          {isDone && !last ? "Next" : last ? (isDone ? "All done" : "Done") : "Done, next"}
        </button>
        <button type="button" disabled={last} onClick={() => go(at + 1)}>
          Skip
        </button>
      </nav>
    </article>
  );
}

/** How many rings are made: entered, or chosen. */
function ringsOf(chosen: readonly { input: string; value: unknown }[] | undefined): unknown {
  const given = job.value.inputs.rings;
  return typeof given === "string" ? given : chosen?.find((choice) => choice.input === "rings")?.value;
}

/** Calls back with -1 or 1 for a swipe across the screen or an arrow key. */
function useSwipe(go: (step: number) => void): void {
  const newest = useRef(go);
  newest.current = go;
  useEffect(() => {
    let from: { x: number; y: number } | undefined;
    const begin = (event: TouchEvent): void => {
      const [touch] = event.touches;
      const held = (event.target as Element | null)?.closest("input, select, textarea, .pad, .work-rings");
      from = touch && event.touches.length === 1 && !held ? { x: touch.clientX, y: touch.clientY } : undefined;
    };
    const end = (event: TouchEvent): void => {
      const [touch] = event.changedTouches;
      if (!from || !touch) return;
      const across = touch.clientX - from.x;
      if (Math.abs(across) > SWIPE_PX && Math.abs(across) > 2 * Math.abs(touch.clientY - from.y)) newest.current(across < 0 ? 1 : -1);
      from = undefined;
    };
    const key = (event: KeyboardEvent): void => {
      if (isTypedIn(event.target) || event.altKey || event.ctrlKey || event.metaKey || document.querySelector("dialog[open]")) return;
      if (event.key === "ArrowRight") newest.current(1);
      if (event.key === "ArrowLeft") newest.current(-1);
    };
    addEventListener("touchstart", begin, { passive: true });
    addEventListener("touchend", end, { passive: true });
    addEventListener("keydown", key);
    return () => {
      removeEventListener("touchstart", begin);
      removeEventListener("touchend", end);
      removeEventListener("keydown", key);
    };
  }, []);
}
