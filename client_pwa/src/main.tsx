import "./styles/index.css";
import { render } from "preact";
import { firstAnswer, warmUp } from "./engine/client";
import { registerOffline } from "./offline/register";
import { App } from "./shell/App";
import { keptAll, start } from "./sheet/session";

warmUp();
void start();
// In a task of its own, while the book is read.
setTimeout(() => render(<App />, document.getElementById("app")!));
// The figures come first; keeping the app for later can wait until they stand.
addEventListener("load", () => void registerOffline(keptAll, firstAnswer));
