/** Taking a job in that somebody handed on: from a pasted link or text, whatever address it came from, or from a
 * code by the camera where the browser can read one. */

import { useEffect, useRef, useState } from "preact/hooks";
import { said } from "../../base/said";
import { readFileText } from "../../book/files";
import { copyOf } from "../../book/job";
import type { JobReading } from "../../book/job";
import { unpackJob } from "../../book/share";
import { addJob } from "../../sheet/session";

const PACKED = /\/s\/([A-Za-z0-9_-]+)/;

export function TakeIn({ tell }: { tell(message: string): void }) {
  const [text, setText] = useState("");
  const [looking, setLooking] = useState(false);
  const take = async (given: string): Promise<void> => {
    setLooking(false);
    const readings = await jobsIn(given);
    const [first] = readings;
    if (!first) return tell("There is no job in this. Paste the whole link, or the whole text of a job file.");
    if (!first.ok) return tell(`This cannot be taken in: ${first.reasons.join("; ")}.`);
    for (const reading of readings.slice(1)) if (reading.ok) await addJob(copyOf(reading.job, reading.job.name), "book");
    await addJob(copyOf(first.job, first.job.name), "book");
    said.value = { text: readings.length === 1 ? `"${first.job.name}" is in the book, and open.` : `${readings.length} jobs are in the book.` };
    setText("");
    tell("");
  };
  return (
    <details class="card">
      <summary>
        <h2>Take in a job from somebody</h2>
      </summary>
      <label class="share-link">
        <span>Link or text</span>
        <textarea rows={3} value={text} onInput={(event) => setText(event.currentTarget.value)} />
      </label>
      <div class="book-actions">
        <button type="button" class="main-action" disabled={text.trim() === ""} onClick={() => void take(text)}>
          Take it in
        </button>
        {"BarcodeDetector" in globalThis && (
          <button type="button" onClick={() => setLooking(!looking)}>
            {looking ? "Stop the camera" : "Read a code with the camera"}
          </button>
        )}
      </div>
      {looking && <Camera found={(code) => void take(code)} failed={(words) => (setLooking(false), tell(words))} />}
    </details>
  );
}

/** The jobs in a link or in the text of a file. */
async function jobsIn(given: string): Promise<JobReading[]> {
  const link = PACKED.exec(given);
  if (link?.[1]) return [await unpackJob(link[1])];
  const file = readFileText(given.trim());
  return file.ok ? file.readings : [];
}

interface Detector {
  detect(image: HTMLVideoElement): Promise<{ rawValue: string }[]>;
}

declare const BarcodeDetector: new (options: { formats: string[] }) => Detector;

const LOOK_MS = 250;

function Camera({ found, failed }: { found(code: string): void; failed(words: string): void }) {
  const video = useRef<HTMLVideoElement>(null);
  useEffect(() => {
    let stream: MediaStream | undefined;
    let timer: ReturnType<typeof setTimeout> | undefined;
    let over = false;
    const detector = new BarcodeDetector({ formats: ["qr_code"] });
    const look = async (): Promise<void> => {
      const codes = await detector.detect(video.current!).catch(() => []);
      const code = codes.find((each) => PACKED.test(each.rawValue));
      if (over) return;
      if (code) found(code.rawValue);
      else timer = setTimeout(() => void look(), LOOK_MS);
    };
    navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } }).then(
      async (given) => {
        stream = given;
        if (over) return given.getTracks().forEach((track) => track.stop());
        video.current!.srcObject = given;
        await video.current!.play();
        void look();
      },
      () => failed("The camera could not be opened: allow it for this page, or paste the link."),
    );
    return () => {
      over = true;
      clearTimeout(timer);
      stream?.getTracks().forEach((track) => track.stop());
    };
  }, []);
  return <video class="camera" ref={video} muted playsInline aria-label="What the camera sees" />;
}
