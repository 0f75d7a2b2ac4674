/** A drawing that the core makes for the guide, of a sample ring: nothing of it is stored, nothing of the job is needed. */

import { useEffect, useState } from "preact/hooks";
import { system } from "../../base/settings";
import { Markup } from "../../drawings/Markup";
import type { DrawnSheet } from "../../engine/answers";
import { ask, drop } from "../../engine/client";
import type { Sample } from "./samples";

interface Props {
  ring: Sample;
  part: string;
  operation?: string;
}

export function GuidePicture({ ring, part, operation = "" }: Props) {
  const [sheets, setSheets] = useState<DrawnSheet[]>();
  const [failed, setFailed] = useState(false);
  const dimensions = system.value;
  useEffect(() => {
    const key = `guide@${part}@${operation}`;
    ask(key, "drawing", { ...ring, part, ...(operation && { operation }), paper: "screen", dimensions }, (outcome) => {
      if (outcome.state === "answer") setSheets((outcome.answer.sheets ?? []) as DrawnSheet[]);
      else setFailed(true);
    });
    return () => drop(key);
  }, [ring, part, operation, dimensions]);
  if (failed) return <p class="status">This picture could not be drawn. Open the guide again.</p>;
  if (!sheets) return <p class="status">Drawing…</p>;
  return (
    <>
      {sheets.map((sheet) => (
        <Markup key={sheet.sheet} svg={sheet.svg} label={`${sheet.title}. ${sheet.about}`} />
      ))}
    </>
  );
}
