/** A job as a link and as a code to photograph. Both carry the whole job; no server is told anything. */

import { useEffect, useState } from "preact/hooks";
import { correction, generate } from "lean-qr";
import { Dialog } from "../../base/Dialog";
import { said } from "../../base/said";
import type { Job } from "../../book/job";
import { shopInputs } from "../../book/shop";
import { packJob } from "../../book/share";

// A code of more letters than this has squares too small for a phone's camera at arm's length.
const MOST_IN_CODE = 1600;

export function ShareDialog({ sheet, onClose }: { sheet: Job | undefined; onClose(): void }) {
  const [link, setLink] = useState("");
  useEffect(() => {
    setLink("");
    if (sheet) void packJob(withShop(sheet)).then((packed) => setLink(`${location.href.split("#")[0]}#ring/s/${packed}`));
  }, [sheet]);
  return (
    <Dialog open={sheet !== undefined} title={sheet ? `Hand on: ${sheet.name}` : ""} onClose={onClose}>
      <p>
        The link and the code carry the whole job in themselves. Nothing is sent to any server: whoever opens it has a copy, and yours stays
        as it is.
      </p>
      {link && (
        <>
          {link.length <= MOST_IN_CODE ? (
            <Code text={link} />
          ) : (
            <p class="status">This job is too large for a code. Use the link, or save it as a file.</p>
          )}
          <label class="share-link">
            <span>Link</span>
            <textarea readOnly rows={3} value={link} onFocus={(event) => event.currentTarget.select()} />
          </label>
          <div class="book-actions">
            <button type="button" class="main-action" onClick={() => void copyLink(link)}>
              Copy the link
            </button>
            {"share" in navigator && (
              <button type="button" onClick={() => void navigator.share({ title: sheet?.name ?? "", url: link }).catch(() => undefined)}>
                Share…
              </button>
            )}
          </div>
        </>
      )}
    </Dialog>
  );
}

function Code({ text }: { text: string }) {
  const code = generate(text, { minCorrectionLevel: correction.L });
  const border = 4;
  const side = code.size + 2 * border;
  let path = "";
  for (let y = 0; y < code.size; y += 1) {
    for (let x = 0; x < code.size; x += 1) if (code.get(x, y)) path += `M${x + border} ${y + border}h1v1h-1z`;
  }
  return (
    <svg class="code" viewBox={`0 0 ${side} ${side}`} role="img" aria-label="Code with the link to this job" shape-rendering="crispEdges">
      <rect width={side} height={side} fill="#fff" />
      <path d={path} fill="#000" />
    </svg>
  );
}

/** The job with what it takes from this shop, bars apart, so that its figures are the same where it goes. */
function withShop(sheet: Job): Job {
  const { bars: _rack, ...taken } = shopInputs.peek();
  return { ...sheet, inputs: { ...taken, ...sheet.inputs } };
}

async function copyLink(link: string): Promise<void> {
  try {
    await navigator.clipboard.writeText(link);
    said.value = { text: "The link is copied." };
  } catch {
    said.value = { text: "This browser does not let the app copy. Mark the link and copy it by hand." };
  }
}
