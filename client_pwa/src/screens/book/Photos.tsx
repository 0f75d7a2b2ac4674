/** Photographs of the open job: taken in, looked at, taken out again. */

import { useEffect, useRef, useState } from "preact/hooks";
import { Dialog } from "../../base/Dialog";
import { said } from "../../base/said";
import { newId } from "../../book/job";
import { dayWords } from "../../book/names";
import { asKept, dropPhoto, keepPhoto, MOST_PHOTOS, photosOf } from "../../book/photos";
import type { Photo } from "../../book/photos";

interface Shown extends Photo {
  address: string;
}

export function Photos({ job }: { job: string }) {
  const [photos, setPhotos] = useState<readonly Shown[]>([]);
  const [large, setLarge] = useState<Shown | undefined>(undefined);
  const file = useRef<HTMLInputElement>(null);
  const [count, again] = useState(0);
  const look = (): void => again((before) => before + 1);
  useEffect(() => {
    let made: Shown[] = [];
    let gone = false;
    const show = (found: readonly Photo[]): void => {
      if (gone) return;
      made = found.map((photo) => ({ ...photo, address: URL.createObjectURL(photo.picture) }));
      setPhotos(made);
    };
    // Where the browser keeps nothing there are none.
    photosOf(job).then(show, () => show([]));
    return () => {
      gone = true;
      for (const each of made) URL.revokeObjectURL(each.address);
    };
  }, [job, count]);

  const takeOut = async (photo: Photo): Promise<void> => {
    setLarge(undefined);
    await dropPhoto(photo.id);
    look();
    const { id, job: of, taken, picture } = photo;
    const back = (): void => void keepPhoto({ id, job: of, taken, picture }).then(look);
    said.value = { text: "The photograph is taken out.", action: { label: "Undo", run: back } };
  };
  const room = MOST_PHOTOS - photos.length;
  return (
    <div class="photos">
      {photos.length > 0 && (
        <ul>
          {photos.map((each, at) => (
            <li key={each.id}>
              <button type="button" aria-label={`Photograph ${at + 1}, of ${dayWords(each.taken)}`} onClick={() => setLarge(each)}>
                <img src={each.address} alt="" />
              </button>
            </li>
          ))}
        </ul>
      )}
      {room > 0 && (
        <button type="button" onClick={() => file.current?.click()}>
          Add a photograph
        </button>
      )}
      <input
        ref={file}
        class="unseen"
        type="file"
        accept="image/*"
        multiple
        aria-label="Photographs to add"
        tabIndex={-1}
        onChange={(event) => void takeIn(event.currentTarget, job, room).then(look)}
      />
      <small>
        {room > 0 ? `Up to ${MOST_PHOTOS} of a job. ` : `${MOST_PHOTOS} is as many as a job has. `}
        They stay on this device: no link, code or file takes them along.
      </small>
      <Dialog open={large !== undefined} title={large ? `Photograph of ${dayWords(large.taken)}` : ""} onClose={() => setLarge(undefined)}>
        {large && (
          <>
            <img class="photo-large" src={large.address} alt={`Photograph of ${dayWords(large.taken)}`} />
            <p>
              <button type="button" onClick={() => void takeOut(large)}>
                Take it out
              </button>
            </p>
          </>
        )}
      </Dialog>
    </div>
  );
}

async function takeIn(input: HTMLInputElement, job: string, room: number): Promise<void> {
  const files = [...(input.files ?? [])];
  input.value = "";
  let words = files.length > room ? `A job has up to ${MOST_PHOTOS} photographs: the rest was left.` : "";
  for (const file of files.slice(0, room)) {
    const picture = await asKept(file).catch(() => undefined);
    if (!picture) words = `${file.name} is no picture that this browser can read. It was left.`;
    else if (!(await keepPhoto({ id: newId(), job, taken: Date.now(), picture }))) {
      words = "The storage of this device has no room for a photograph.";
      break;
    }
  }
  if (words) said.value = { text: words };
}
