/** A job in a link, and the link as a code to photograph. */

import { useEffect, useState } from "preact/hooks";
import { correction, generate } from "lean-qr";
import type { Inputs, Job } from "../book/job";
import { shopInputs } from "../book/shop";
import { packJob } from "../book/share";

// A code of more letters than this has squares too small for a phone's camera at arm's length.
const MOST_IN_CODE = 1600;

/** The link of a job, with what it takes from this shop, bars apart, so that its figures are the same where it goes.
 * Empty until it is made. leftOut: inputs that it does without. */
export function useLink(sheet: Job | undefined, leftOut: readonly string[] = []): string {
  const [link, setLink] = useState("");
  useEffect(() => {
    setLink("");
    let old = false;
    if (sheet) {
      const { bars: _rack, ...taken } = shopInputs.peek();
      const inputs: Inputs = { ...taken, ...sheet.inputs };
      for (const name of leftOut) delete inputs[name];
      void packJob({ ...sheet, inputs }).then((packed) => {
        if (!old) setLink(`${location.href.split("#")[0]}#ring/s/${packed}`);
      });
    }
    return () => {
      old = true;
    };
  }, [sheet]);
  return link;
}

export function Code({ text }: { text: string }) {
  if (text.length > MOST_IN_CODE) return <p class="status">This job is too large for a code. Use the link, or save it as a file.</p>;
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
