/** A job as a link and as a code to photograph. Both carry the whole job; no server is told anything. */

import { Dialog } from "../../base/Dialog";
import { said } from "../../base/said";
import type { Job } from "../../book/job";
import { Code, useLink } from "../../figures/JobCode";

export function ShareDialog({ sheet, onClose }: { sheet: Job | undefined; onClose(): void }) {
  const link = useLink(sheet);
  return (
    <Dialog open={sheet !== undefined} title={sheet ? `Hand on: ${sheet.name}` : ""} onClose={onClose}>
      <p>
        The link and the code carry the whole job in themselves. Nothing is sent to any server: whoever opens it has a copy, and yours stays
        as it is.
      </p>
      {link && (
        <>
          <Code text={link} />
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

async function copyLink(link: string): Promise<void> {
  try {
    await navigator.clipboard.writeText(link);
    said.value = { text: "The link is copied." };
  } catch {
    said.value = { text: "This browser does not let the app copy. Mark the link and copy it by hand." };
  }
}
