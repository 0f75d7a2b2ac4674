/** What has to be said about the sheet as a whole: kept or not, shared, damaged, a newer version. */

import { signal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { fileName, fileText, saveOut } from "../book/files";
import { said } from "../base/said";
import { isBefore, loadAnew, newVersion, takenElsewhere, tryNewest, useNewVersion } from "../offline/register";
import { keptFiles, way } from "../offline/standing";
import { inchSizesOpen, job, setInput } from "../sheet/sheet";
import { place } from "../base/routes";
import { cleared, fromLink, keepLinked, keepMine, keeping, nameForEngine, onceKept, saveNow, startJob, takeTheirs, unnamed } from "../sheet/session";

/** Said until it is understood, once a visit. */
const plainHttpSeen = signal(false);

export function Banners() {
  return (
    <aside class="banners" aria-label="Notices">
      {newVersion.value && (
        <Banner kind="note">
          <p>A newer version of this app is ready. Your entries are kept.</p>
          <button type="button" onClick={() => void onceKept(useNewVersion)}>
            Use it now
          </button>
          <button type="button" class="quiet" onClick={() => (newVersion.value = undefined)}>
            Later
          </button>
        </Banner>
      )}
      {takenElsewhere.value && (
        <Banner kind="note">
          <p>Another page of this app now uses a newer version. Your entries here are kept.</p>
          <button type="button" onClick={() => void onceKept(loadAnew)}>
            Use it here too
          </button>
        </Banner>
      )}
      {isBefore.value && (
        <Banner kind="watch">
          <p>
            <b>The newest version of this app did not start on this device.</b> This is the one before it. Your jobs are all here.
          </p>
          <button type="button" onClick={() => void onceKept(tryNewest)}>
            Try the newest again
          </button>
          <button type="button" class="quiet" onClick={() => (isBefore.value = false)}>
            Go on with this one
          </button>
        </Banner>
      )}
      {way === "plain" && keptFiles.value === "cannot" && !plainHttpSeen.value && place.value.screen !== "settings" && (
        <Banner kind="note">
          <p>This address cannot be kept for use without signal.</p>
          <button type="button" onClick={() => (location.hash = `#/settings/${job.value.id}`)}>
            What to do
          </button>
          <button type="button" class="quiet" onClick={() => (plainHttpSeen.value = true)}>
            Understood
          </button>
        </Banner>
      )}
      {fromLink.value && (
        <Banner kind="note">
          <p>This job came in a link. It is not in your job book yet.</p>
          <button type="button" onClick={() => void keepLinked()}>
            Keep it
          </button>
        </Banner>
      )}
      {keeping.value === "full" && (
        <Banner kind="stop">
          <p>
            <b>The storage of this device is full: the last changes are not kept.</b> They are still on the screen. Save the job out as a file
            now, then make room and try again.
          </p>
          <button type="button" onClick={() => saveOut(fileName(job.value), fileText([job.value]))}>
            Save as a file
          </button>
          <button type="button" class="quiet" onClick={() => void saveNow(true)}>
            Try again
          </button>
        </Banner>
      )}
      {keeping.value === "no-book" && (
        <Banner kind="watch">
          <p>
            <b>This browser keeps nothing for this app</b> (a private window, or storage is switched off). Everything works, but the job is
            gone when the page closes. Save it out as a file.
          </p>
          <button type="button" onClick={() => saveOut(fileName(job.value), fileText([job.value]))}>
            Save as a file
          </button>
        </Banner>
      )}
      {cleared.value && (
        <Banner kind="watch">
          <p>
            <b>The browser has cleared the job book of this device.</b> The open job is put back. If you have saved your jobs out, bring the
            file in again from the job book.
          </p>
          <button type="button" onClick={() => (cleared.value = false)}>
            Understood
          </button>
        </Banner>
      )}
      {keeping.value === "conflict" && (
        <Banner kind="watch">
          <p>
            <b>This job was changed in another tab while you changed it here.</b> Neither is lost: choose which one to go on with; the other
            stays in the job book.
          </p>
          <button type="button" onClick={() => void keepMine()}>
            Go on with this one, as a copy
          </button>
          <button type="button" class="quiet" onClick={() => void takeTheirs()}>
            Show the other, keep this as a copy
          </button>
        </Banner>
      )}
      {inchSizesOpen.value && (
        <Banner kind="note">
          <p>This job is in inches, its sizes are in millimetres.</p>
          <button type="button" onClick={() => setInput("inch_sizes", true)}>
            Take inch sizes
          </button>
          <button type="button" class="quiet" onClick={() => setInput("inch_sizes", false)}>
            Keep them
          </button>
        </Banner>
      )}
      {/* The book has a button of its own for a new job. */}
      {job.value.demo && place.value.screen !== "book" && (
        <Banner kind="demo">
          <p>
            <b>Demo:</b> an invented engine.
          </p>
          <button type="button" onClick={() => void startJob()}>
            New job
          </button>
        </Banner>
      )}
      {unnamed.value === job.value.id && (
        <Banner kind="note">
          <label class="banner-entry">
            <span>For which engine is this?</span>
            <input type="text" class="entry-text" maxLength={80} autocomplete="off" onInput={(event) => nameForEngine(event.currentTarget.value)} />
          </label>
          <button type="button" onClick={() => (unnamed.value = "")}>
            Done
          </button>
        </Banner>
      )}
    </aside>
  );
}

function Banner({ kind, children }: { kind: "note" | "watch" | "stop" | "demo"; children: ComponentChildren }) {
  return (
    <section class={`banner banner-${kind}`} role={kind === "stop" ? "alert" : undefined}>
      {children}
    </section>
  );
}

/** One line at the foot, read out once: what just happened, with its undo. */
export function Said() {
  const now = said.value;
  return (
    <div class="said" role="status" aria-live="polite">
      {now && (
        <div class="said-line">
          <span>{now.text}</span>
          {now.action && (
            <button type="button" onClick={now.action.run}>
              {now.action.label}
            </button>
          )}
          <button type="button" class="quiet" aria-label="Close this line" onClick={() => (said.value = undefined)}>
            ✕
          </button>
        </div>
      )}
    </div>
  );
}
