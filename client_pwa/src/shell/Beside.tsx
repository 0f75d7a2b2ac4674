/** The way to what is no stage of the ring's job, at the foot of every screen. */

import { job } from "../sheet/sheet";
import { addressOf, place } from "../base/routes";
import { BESIDE } from "./screens";

export function Beside() {
  return (
    <nav class="beside" aria-label="Beside the ring">
      {BESIDE.map((screen) => (
        <a key={screen.key} href={addressOf(screen.key, job.value.id)} aria-current={screen.key === place.value.screen ? "page" : undefined}>
          {screen.title}
        </a>
      ))}
    </nav>
  );
}
