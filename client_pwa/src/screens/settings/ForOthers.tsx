/** The way to the pages for other tools, which the service has and no other host of the app. */

import { useState } from "preact/hooks";
import { way } from "../../offline/standing";

const OWN_HEADER = "Ringwright-Version";

export function ForOthers() {
  const [told, setTold] = useState("");
  const open = async (): Promise<void> => {
    const missing = await whyNot();
    setTold(missing);
    if (missing === "") location.assign("docs");
  };
  return (
    <section class="card" aria-label="For other tools">
      <h2>For other tools</h2>
      <p>
        The service behind this app gives the same figures to spreadsheets and programs. Its pages say how to begin, show every call with real answers, and list what
        has changed.
      </p>
      <button type="button" onClick={() => void open()}>
        Open the pages for other tools
      </button>
      <p role="status">{told}</p>
    </section>
  );
}

/** In words why the pages are not to be had; empty where they are. */
async function whyNot(): Promise<string> {
  if (way === "file") return "This is the app as one file; the pages are at a service's own address, under /docs.";
  try {
    // Past the service worker, which answers what is got. A host that gives its first page for every address has no such header.
    const reply = await fetch(new URL("docs", document.baseURI), { method: "HEAD" });
    if (reply.ok && reply.headers.has(OWN_HEADER)) return "";
    return "The host that this app came from serves the app alone; the pages are at a service's own address, under /docs.";
  } catch {
    return "The service that this app came from cannot be reached just now.";
  }
}
