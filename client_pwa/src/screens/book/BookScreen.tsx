/** The job book of this device: open, rename, copy, delete, save out, bring in, hand on. */

import { useEffect, useRef, useState } from "preact/hooks";
import { addressOf } from "../../base/routes";
import { said } from "../../base/said";
import { change, job } from "../../sheet/sheet";
import { addJob, damagedOpen, deletedEntries, entries, liveEntries, openById, rename, refreshBook, saveNow, startJob, throwAway } from "../../sheet/session";
import { fileName, fileText, readFileText, saveOut } from "../../book/files";
import { demoJob, DEMO_ID } from "../../book/demo";
import { copyOf, newJob } from "../../book/job";
import { dayWords } from "../../book/names";
import type { Job } from "../../book/job";
import { jobBegins } from "../../book/shop";
import { dropPhotosBut } from "../../book/photos";
import { FindBar, sorted } from "./FindBar";
import type { Order } from "./FindBar";
import { Photos } from "./Photos";
import { ShareDialog } from "./ShareDialog";
import { TakeIn } from "./TakeIn";
import { emptyDeleted, entryWith, save, setDeleted } from "../../book/store";
import type { BookEntry } from "../../book/store";

/** A book of no more needs no search. */
const FEW = 6;
/** Drawn at once: a thousand jobs must be as quick as ten. */
const AT_ONCE = 30;

export function BookScreen() {
  const [sharing, setSharing] = useState<Job | undefined>(undefined);
  const [message, setMessage] = useState("");
  const file = useRef<HTMLInputElement>(null);
  useEffect(() => void saveNow().then(refreshBook), []);
  const [find, setFind] = useState("");
  const [sort, setSort] = useState<Order>("changed");
  const [most, setMost] = useState(AT_ONCE);
  const found = sorted(liveEntries.value, find, sort, job.value.id);
  const sound = liveEntries.value.flatMap((entry) => (entry.reading.ok ? [entry.reading.job] : []));
  return (
    <div class="book">
      <div class="book-actions">
        <button type="button" class="main-action" onClick={() => void startJob()}>
          New job
        </button>
        <button type="button" onClick={() => file.current?.click()}>
          Bring in a file
        </button>
        <input
          ref={file}
          class="unseen"
          type="file"
          accept=".json,application/json,.pdf,application/pdf"
          aria-label="Job file to bring in"
          tabIndex={-1}
          onChange={(event) => void bringIn(event.currentTarget, setMessage)}
        />
        {sound.length > 0 && (
          <button type="button" onClick={() => saveOut("job-book.ringwright.json", fileText(sound))}>
            Save the whole book as a file
          </button>
        )}
      </div>
      <p class="not-a-backup">
        <b>This device is not a backup.</b> A lost, broken or cleaned-out phone takes the book with it. Save it as a file now and then, and
        keep the file somewhere else.
      </p>
      {message && (
        <p class="status" role="status">
          {message}
        </p>
      )}
      {damagedOpen.value && <Damaged reasons={damagedOpen.value.reasons} name={damagedOpen.value.name} raw={damagedOpen.value.raw} />}
      <TakeIn tell={setMessage} />
      {liveEntries.value.length > FEW && <FindBar find={find} setFind={setFind} sort={sort} setSort={setSort} found={found.length} />}
      <ul class="jobs">
        {found.slice(0, most).map((entry) => (
          <li key={entry.id} class={entry.id === job.value.id ? "job job-open" : "job"}>
            {entry.reading.ok ? (
              <SoundJob entry={entry} sheet={entry.reading.job} share={setSharing} />
            ) : (
              <>
                <Damaged reasons={entry.reading.reasons} name={entry.reading.name} raw={entry.reading.raw} />
                <button type="button" class="small-words" onClick={() => void throwAway(entry)}>
                  Delete
                </button>
              </>
            )}
          </li>
        ))}
      </ul>
      {found.length > most && (
        <button type="button" class="add" onClick={() => setMost(most + AT_ONCE)}>
          Show {Math.min(AT_ONCE, found.length - most)} more of {found.length - most}
        </button>
      )}
      <Deleted />
      {!liveEntries.value.some((entry) => entry.id === DEMO_ID) && (
        <button type="button" class="small-words" onClick={() => void bringBackDemo()}>
          Bring back the demonstration
        </button>
      )}
      <ShareDialog sheet={sharing} onClose={() => setSharing(undefined)} />
    </div>
  );
}

function SoundJob({ entry, sheet, share }: { entry: BookEntry; sheet: Job; share(job: Job): void }) {
  const open = entry.id === job.value.id;
  const current = open ? job.value : sheet;
  return (
    <>
      {open ? (
        <>
          <label class="job-name">
            <span>Name of the open job</span>
            <input type="text" maxLength={120} value={current.name} onInput={(event) => rename(event.currentTarget.value)} />
          </label>
          <label class="job-name job-notes">
            <span>Notes</span>
            <textarea rows={3} maxLength={20_000} value={current.notes} onInput={(event) => change({ notes: event.currentTarget.value })} />
          </label>
          <Photos job={current.id} />
        </>
      ) : (
        <button type="button" class="job-open-button" onClick={() => void openById(entry.id, "ring")}>
          <b>{current.name}</b>
          <small>
            {current.demo && "Demonstration. "}
            {boreWords(current)} Changed {whenWords(current.changed)}.
          </small>
        </button>
      )}
      <div class="job-actions">
        {open && (
          <>
            <button type="button" onClick={() => void openById(entry.id, "ring")}>
              Go to the sheet
            </button>
            <a class="button" href={addressOf("label", current.id)}>
              Label for the box
            </a>
          </>
        )}
        <button type="button" aria-label={`Copy ${current.name}`} onClick={() => void copy(current)}>
          Copy
        </button>
        <button type="button" aria-label={`Link or code for ${current.name}`} onClick={() => share(current)}>
          Link or code
        </button>
        <button type="button" aria-label={`File of ${current.name}`} onClick={() => saveOut(fileName(current), fileText([current]))}>
          File
        </button>
        <button type="button" aria-label={`Delete ${current.name}`} onClick={() => void remove(entry, open)}>
          Delete
        </button>
      </div>
    </>
  );
}

function Damaged({ name, reasons, raw }: { name: string; reasons: readonly string[]; raw: unknown }) {
  const text = typeof raw === "string" ? raw : JSON.stringify(raw, null, 2);
  return (
    <section class="damaged" aria-label={`Damaged: ${name}`}>
      <p>
        <b>Damaged: {name}.</b> It cannot be opened because {reasons.join("; ")}. What there is of it is kept; save it out and it can be
        mended in a text editor.
      </p>
      <button type="button" onClick={() => saveOut("damaged-job.json", text ?? "")}>
        Save what there is
      </button>
    </section>
  );
}

function Deleted() {
  const gone = deletedEntries.value;
  if (gone.length === 0) return null;
  return (
    <details class="card">
      <summary>
        <h2>Deleted ({gone.length})</h2>
      </summary>
      <ul class="jobs">
        {gone.map((entry) => (
          <li key={entry.id} class="job">
            <span>{entry.reading.ok ? entry.reading.job.name : entry.reading.name}</span>{" "}
            <button type="button" onClick={() => void setDeleted(entry.id, 0).then(refreshBook)}>
              Put back
            </button>
          </li>
        ))}
      </ul>
      <button type="button" class="small-words" onClick={() => void removeForGood()}>
        Remove these for good
      </button>
    </details>
  );
}

async function removeForGood(): Promise<void> {
  await emptyDeleted();
  await refreshBook();
  await dropPhotosBut(new Set(entries.peek().map((entry) => entry.id))).catch(() => undefined);
}

async function copy(sheet: Job): Promise<void> {
  await addJob(copyOf(sheet, `${sheet.name}, copy`), "book");
  said.value = { text: `"${sheet.name}" is copied, and the copy is open.` };
}

async function remove(entry: BookEntry, open: boolean): Promise<void> {
  await saveNow();
  await throwAway((await entryWith(entry.id)) ?? entry);
  if (!open) return;
  const next = liveEntries.value.find((each) => each.reading.ok);
  if (next) await openById(next.id, "book");
  else await addJob(newJob("New job", jobBegins.peek()), "book");
}

async function bringBackDemo(): Promise<void> {
  const kept = await entryWith(DEMO_ID);
  await save(demoJob(), kept?.revision ?? 0);
  await refreshBook();
}

async function bringIn(input: HTMLInputElement, tell: (message: string) => void): Promise<void> {
  const [chosen] = input.files ?? [];
  input.value = "";
  if (!chosen) return;
  if (chosen.size > 5_000_000) {
    tell("This file is far larger than any job book. Nothing was brought in.");
    return;
  }
  const read = readFileText(await chosen.text());
  if (!read.ok) {
    tell(`${read.message} Nothing was brought in.`);
    return;
  }
  let brought = 0;
  const damaged: string[] = [];
  for (const reading of read.readings) {
    if (!reading.ok) {
      damaged.push(`"${reading.name}" (${reading.reasons.join("; ")})`);
      continue;
    }
    // One that is in the book already is put beside it, never over it.
    const held = await entryWith(reading.job.id);
    const sheet = held ? copyOf(reading.job, `${reading.job.name}, from a file`) : reading.job;
    const result = await save(sheet, 0);
    if (result.state === "full") {
      tell(`The storage of this device is full. ${brought} of ${read.readings.length} jobs were brought in; the file still holds them all.`);
      await refreshBook();
      return;
    }
    if (result.state === "saved") brought += 1;
  }
  await refreshBook();
  const left = damaged.length === 0 ? "" : `Damaged and left in the file: ${damaged.join(", ")}.`;
  const sum = brought === 1 ? "One job was brought in." : `${brought} jobs were brought in.`;
  tell(brought === 0 ? `${left} Nothing was brought in.`.trim() : `${sum} ${left}`.trim());
}

function boreWords(sheet: Job): string {
  return typeof sheet.inputs.bore === "string" ? `Bore ${sheet.inputs.bore}.` : "No bore yet.";
}

function whenWords(time: number): string {
  return time === 0 ? "at an unknown time" : dayWords(time);
}
