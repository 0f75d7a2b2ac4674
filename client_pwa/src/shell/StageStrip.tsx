/** The stages of the job as one strip of metal with scarfed joints, always at hand. */

import { useEffect, useRef } from "preact/hooks";
import { job } from "../sheet/sheet";
import { addressOf, place } from "../base/routes";
import { SCREENS } from "./screens";

export function StageStrip() {
  const strip = useRef<HTMLOListElement>(null);
  const here = place.value.screen;
  useEffect(() => {
    strip.current?.querySelector("[aria-current]")?.scrollIntoView({ block: "nearest", inline: "center" });
  }, [here]);
  return (
    <nav class="strip" aria-label="Stages of the job">
      <ol ref={strip}>
        {SCREENS.map((screen) => (
          <li key={screen.key}>
            <a href={addressOf(screen.key, job.value.id)} aria-current={screen.key === here ? "page" : undefined}>
              <span>{screen.label}</span>
            </a>
          </li>
        ))}
      </ol>
    </nav>
  );
}
