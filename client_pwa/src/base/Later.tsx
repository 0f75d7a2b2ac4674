/** A part of a screen that may come a moment after what the eye is on. Each such part is drawn in a task of
 * its own, in the order of the page, so that no first figure and no keystroke waits for all of them; a
 * change reaches it in the same way. While any of them waits, the root element has "data-drawing". On paper
 * nothing may be missing: before printing all are drawn at once. */

import { Component, options } from "preact";
import type { ComponentChildren } from "preact";

interface Props {
  /** At once the first time; only a change comes later. */
  now?: boolean;
  children: ComponentChildren;
}

const waiting = new Set<Later>();
let next: ReturnType<typeof setTimeout> | undefined;

export class Later extends Component<Props> {
  private begun = this.props.now;

  override componentDidMount(): void {
    if (!this.begun) wait(this);
  }

  override componentWillUnmount(): void {
    waiting.delete(this);
    plan();
  }

  override shouldComponentUpdate(): boolean {
    wait(this);
    return false;
  }

  draw(): void {
    this.begun = true;
    // Past shouldComponentUpdate, with the newest of what the screen gave.
    this.forceUpdate();
  }

  override render(): ComponentChildren {
    return this.begun ? this.props.children : null;
  }
}

function wait(part: Later): void {
  waiting.add(part);
  plan();
}

/** So long the first part waits for the screen above it to be painted; a page that is not in view paints nothing. */
const PAINT_MS = 100;
let drawing = false;

function plan(): void {
  document.documentElement.toggleAttribute("data-drawing", waiting.size > 0);
  if (waiting.size === 0) drawing = false;
  else if (drawing) next ??= setTimeout(drawNext);
  else if (next === undefined) {
    next = setTimeout(drawNext, PAINT_MS);
    requestAnimationFrame(() => {
      if (drawing || waiting.size === 0) return;
      clearTimeout(next);
      next = setTimeout(drawNext);
    });
  }
}

function drawNext(): void {
  next = undefined;
  drawing = true;
  const [part] = waiting;
  if (!part) return;
  waiting.delete(part);
  part.draw();
  plan();
}

addEventListener("beforeprint", () => {
  const usual = options.debounceRendering;
  options.debounceRendering = (render) => render();
  for (const part of waiting) {
    waiting.delete(part);
    part.draw();
  }
  if (usual) options.debounceRendering = usual;
  else delete options.debounceRendering;
  plan();
});
