/** The frame round every screen. */

import type { ComponentType } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { Keypad } from "../fields/Keypad";
import { padTarget } from "../fields/pad";
import { WorkingDialog } from "../figures/WorkingDialog";
import { want } from "../sheet/sheet";
import { Banners, Said } from "./Banners";
import { lazy } from "./lazy";
import { Beside } from "./Beside";
import { Header } from "./Header";
import { FIRST_SCREEN, place } from "../base/routes";
import { started } from "../sheet/session";
import { PrintHead } from "./PrintHead";
import { screenWith, SCREENS } from "./screens";
import { keypad } from "../base/settings";
import { StageStrip } from "./StageStrip";

const OTHERS: Readonly<Record<string, { title: string; view: ComponentType }>> = {
  book: { title: "Job book", view: lazy("BookScreen") },
  settings: { title: "Settings and help", view: lazy("SettingsScreen") },
};

export function App() {
  const key = place.value.screen;
  const screen = screenWith(key);
  const other = OTHERS[key];
  const main = useRef<HTMLElement>(null);
  const first = useRef(true);
  const shownScreen = screen ?? (other ? undefined : (screenWith(FIRST_SCREEN) ?? SCREENS[0]));
  const title = other?.title ?? shownScreen?.title ?? "";
  const View = other?.view ?? shownScreen?.view;

  useEffect(() => {
    document.title = `${title} · Ringwright`;
    want(shownScreen?.uses ?? []);
    // Another screen begins at its top, and a screen reader hears its name.
    if (!first.current) {
      scrollTo(0, 0);
      main.current?.focus({ preventScroll: true });
    }
    first.current = false;
  }, [title]);

  return (
    <div class={keypad.value && padTarget.value ? "app app-pad" : "app"} data-screen={key}>
      <a class="skip" href="#main" onClick={(event) => skipTo(event, main.current)}>
        Skip to the sheet
      </a>
      <Header />
      <StageStrip />
      <Banners />
      <main id="main" ref={main} tabIndex={-1} aria-label={title} hidden={!started.value}>
        <h1 class="unseen">{title}</h1>
        {shownScreen && <PrintHead title={title} />}
        {started.value && View && <View />}
      </main>
      {started.value && <Beside />}
      <Said />
      <Keypad />
      <WorkingDialog />
    </div>
  );
}

/** The fragment of the address says which screen is open, so the skip link must not change it. */
function skipTo(event: Event, target: HTMLElement | null): void {
  event.preventDefault();
  target?.focus();
}
