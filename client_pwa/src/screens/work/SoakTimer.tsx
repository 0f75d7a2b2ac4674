/** How long the ring still has to stay at heat. It counts by the clock and not by ticks, so that it is right
 * when the phone slept meanwhile. */

import { useEffect, useState } from "preact/hooks";
import { job } from "../../sheet/sheet";
import { atWork, setAtWork } from "./place";

export function SoakTimer({ hours }: { hours: number }) {
  const { soakEnds } = atWork(job.value.id);
  const [now, setNow] = useState(Date.now());
  const over = soakEnds > 0 && now >= soakEnds;
  useEffect(() => {
    if (soakEnds === 0) return undefined;
    const look = (): void => setNow(Date.now());
    look();
    const ticking = setInterval(look, 500);
    document.addEventListener("visibilitychange", look);
    return () => {
      clearInterval(ticking);
      document.removeEventListener("visibilitychange", look);
    };
  }, [soakEnds]);
  useEffect(() => {
    if (over) navigator.vibrate?.([400, 200, 400, 200, 400]);
  }, [over]);
  const start = (): void => {
    setNow(Date.now());
    setAtWork(job.value.id, { soakEnds: Date.now() + hours * 3_600_000 });
  };
  const clock = new Intl.DateTimeFormat(undefined, { timeStyle: "short" });
  return (
    <section class={over ? "soak soak-over" : "soak"} aria-label="Timer for the soak">
      {soakEnds === 0 ? (
        <button type="button" class="main-action" onClick={start}>
          The ring is at heat: start {minutesWords(hours * 60)}
        </button>
      ) : (
        <>
          <p role="timer" class="soak-left">
            <b>{over ? "Soak is over" : leftWords(soakEnds - now)}</b>{" "}
            <span>
              {over ? `since ${clock.format(soakEnds)}, ${minutesWords(Math.floor((now - soakEnds) / 60_000))} ago` : `until ${clock.format(soakEnds)}`}
            </span>
          </p>
          <p>The clock runs on while the phone sleeps, but a sleeping phone does not call you.</p>
          <button type="button" onClick={() => setAtWork(job.value.id, { soakEnds: 0 })}>
            Stop the timer
          </button>
        </>
      )}
    </section>
  );
}

/** "1:04:09" or "12:30" of what is left. */
function leftWords(milliseconds: number): string {
  const seconds = Math.ceil(milliseconds / 1000);
  const parts = [Math.floor(seconds / 3600), Math.floor((seconds % 3600) / 60), seconds % 60];
  const shown = parts[0]! > 0 ? parts : parts.slice(1);
  return shown.map((part, at) => (at === 0 ? String(part) : String(part).padStart(2, "0"))).join(":");
}

function minutesWords(minutes: number): string {
  if (minutes < 60) return `${Math.round(minutes)} min`;
  const rest = Math.round(minutes % 60);
  return `${Math.floor(minutes / 60)} h${rest > 0 ? ` ${rest} min` : ""}`;
}
