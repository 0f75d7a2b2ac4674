/** The head of the sheet: which job this is, in which units results are shown, and the way to the rest. */

import { canUndo } from "../sheet/history";
import { job } from "../sheet/sheet";
import { changeSystem, system } from "../base/settings";
import { addressOf, place } from "../base/routes";
import { keeping, started } from "../sheet/session";
import { undo } from "../sheet/undo";

const KEEPING_WORDS = {
  kept: "kept on this device",
  keeping: "keeping…",
  full: "not kept: no room",
  conflict: "not kept: see below",
  "no-book": "not kept on this device",
} as const;

export function Header() {
  const inBook = place.value.screen === "book";
  const inSettings = place.value.screen === "settings";
  return (
    <header class="head">
      <a class="head-job" href={addressOf(inBook ? "ring" : "book", job.value.id)}>
        <RingMark />
        <span class="head-names">
          <b>{job.value.name}</b>
          <span class="unseen">{inBook ? "Back to the ring of this job." : "Open the job book."}</span>
          <small>{started.value ? KEEPING_WORDS[keeping.value] : "opening the job book…"}</small>
        </span>
      </a>
      <button type="button" class="head-undo" aria-label="Undo" disabled={!canUndo.value} onClick={undo}>
        <svg viewBox="0 0 24 24" width="26" height="26" aria-hidden="true">
          <path d="M9 5 4 10l5 5M4 10h9a6 6 0 0 1 0 12h-2" />
        </svg>
      </button>
      <button
        type="button"
        class="head-units"
        onClick={() => changeSystem(system.value === "metric" ? "inch" : "metric")}
      >
        <span class="unseen">Results in</span>
        <span class={system.value === "metric" ? "unit-on" : ""}>mm</span>
        <span class={system.value === "inch" ? "unit-on" : ""}>in</span>
        <span class="unseen">{system.value === "metric" ? "now metric, press for inch" : "now inch, press for metric"}</span>
      </button>
      <a class="head-more" href={addressOf(inSettings ? "ring" : "settings", job.value.id)} aria-label={inSettings ? "Close settings" : "Settings and help"}>
        <svg viewBox="0 0 24 24" width="26" height="26" aria-hidden="true">
          <path d="M4 7h9M19 7h1M4 17h1M11 17h9" />
          <circle cx="16" cy="7" r="2.6" />
          <circle cx="8" cy="17" r="2.6" />
        </svg>
      </a>
    </header>
  );
}

/** Two turns, seen a little from above, each with its scarfed gap on another side. */
export function RingMark() {
  return (
    <svg class="ring-mark" viewBox="0 0 64 64" width="40" height="40" aria-hidden="true">
      <path d="M37 16.4C49 17.6 58 22 58 27.500c0 6.300-11.600 11.500-26 11.500S6 33.800 6 27.500C6 22 15 17.400 27.500 16.200" />
      <path d="M6 36.500c0 6.300 11.600 11.500 26 11.500 4.200 0 8.200-.4 11.700-1.200M52 44.300c3.800-2.100 6-4.800 6-7.800" />
    </svg>
  );
}
