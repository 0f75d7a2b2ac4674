/** What this device's owner prefers, what stands ready, and what the app does and does not do. */

import { useEffect, useState } from "preact/hooks";
import { ForOthers } from "./ForOthers";
import { ChoiceBar } from "../../fields/FieldEntry";
import { handOn } from "../../book/hand_on";
import { GuideLink } from "../../figures/GuideLink";
import { lookForFiles } from "../../offline/register";
import { install, installOffer, onApplePhone, opensAsApp, opensWithoutSignal, standingWords } from "../../offline/standing";
import { changeSystem, keypad, system, theme } from "../../base/settings";
import type { Theme } from "../../base/settings";

export function SettingsScreen() {
  const [storage, setStorage] = useState("");
  const [refused, setRefused] = useState("");
  const give = (): Promise<void> =>
    handOn().then(
      () => setRefused(""),
      () => setRefused("Part of the app is missing on this device: open it once where there is a signal, then try again."),
    );
  useEffect(() => void storageWords().then(setStorage), []);
  useEffect(() => void lookForFiles(), []);
  return (
    <div class="settings">
      <section class="card" aria-label="Look">
        <h2>Look</h2>
        <ChoiceBar name="theme" label="Look of the app" choices={["auto", "light", "dark", "sunlight"]} chosen={theme.value} onChange={(choice) => (theme.value = choice as Theme)} />
        <p>Sunlight is black on white with heavy lines and larger figures, for outdoors. Auto follows the phone.</p>
      </section>
      <section class="card" aria-label="Results">
        <h2>Results in</h2>
        <ChoiceBar name="system" label="Units of results" choices={["metric", "inch"]} chosen={system.value} onChange={(choice) => changeSystem(choice === "inch" ? "inch" : "metric")} />
        <p>Each entry takes its own unit whatever is chosen here: 80, 3.125 in, 3 1/8 in, 125 thou, 120 psi, 8,3 bar.</p>
      </section>
      <section class="card" aria-label="Keypad">
        <h2>Keypad</h2>
        <label class="check">
          <input type="checkbox" checked={keypad.value} onChange={(event) => (keypad.value = event.currentTarget.checked)} />
          Use the large keypad of this app, with fractions, in place of the phone's
        </label>
      </section>
      <section class="card" aria-label="On this device">
        <h2>On this device</h2>
        <p role="status" data-ready={opensWithoutSignal.value ? "yes" : "no"}>
          {standingWords.value.text} {standingWords.value.remedy}
        </p>
        {installOffer.value && (
          <button type="button" onClick={() => void install()}>
            Add to the home screen
          </button>
        )}
        {onApplePhone && !opensAsApp() && opensWithoutSignal.value && (
          <p>To have it on the home screen: in Safari tap the share button, then Add to Home Screen.</p>
        )}
        <p>{storage}</p>
        <h3>Give this app to someone</h3>
        <p>
          The whole app as one file of about 0.8 MB: by share sheet, Bluetooth, cable or memory card. It opens from the file in Chrome, Edge and Firefox with no
          network. An iPhone shows such a file but does not run it: give it the address instead.
        </p>
        <button type="button" onClick={() => void give()}>
          Give this app
        </button>
        <p role="alert">{refused}</p>
        <p>
          <b>This device is not a backup.</b> Save your job book as a file now and then, and keep the file somewhere else.
        </p>
      </section>
      <ForOthers />
      <section class="card" aria-label="How to use it">
        <h2>How to use it</h2>
        <ul>
          <li>Enter a bore and a steam pressure under Ring: everything else is chosen, shown with its reason, and yours to change.</li>
          <li>
            <GuideLink topic="gauge">The guide</GuideLink> shows how to gauge a bore, which gap is which, and what each operation, check and figure is.
          </li>
          <li>Tap any figure for its formula, the numbers put in, the range in which it holds and its source.</li>
          <li>Sizes are rounded to what a lathe can hold; the full value stands behind each figure.</li>
          <li>One job sheet runs through all stages. A change anywhere is seen everywhere.</li>
          <li>These figures are design aids. Measure the engine in front of you; a cylinder is part of a pressure system and belongs to a competent person under your local rules.</li>
        </ul>
      </section>
    </div>
  );
}

async function storageWords(): Promise<string> {
  const persisted = await navigator.storage?.persisted?.().catch(() => false);
  return persisted
    ? "The browser has promised to keep the job book until you clear it yourself."
    : "The browser may clear the job book when the device runs short of room.";
}
