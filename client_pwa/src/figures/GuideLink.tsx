/** From a word to what the guide says of it. */

import type { ComponentChildren } from "preact";
import { addressOf } from "../base/routes";
import { job } from "../sheet/sheet";

interface Props {
  topic: string;
  onClick?(): void;
  children: ComponentChildren;
}

export function GuideLink({ topic, onClick, children }: Props) {
  return (
    <a class="guide-link" href={addressOf("guide", job.value.id, topic)} {...(onClick ? { onClick } : {})}>
      {children}
    </a>
  );
}
