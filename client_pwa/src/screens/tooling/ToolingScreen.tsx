/** Each tool of this ring: what it is, its sizes with limits, its material and why. */

import type { Tool } from "../../engine/answers";
import { fieldsOf } from "../../engine/tables";
import { Drawing } from "../../drawings/Drawing";
import { GenericScreen } from "../../figures/GenericScreen";
import { SizeTable } from "../../figures/SizeTable";
import { PrintButton } from "../../base/Print";
import { OnTheShelf } from "./OnTheShelf";

/** The tools that the core draws. */
const DRAWN = new Set(fieldsOf("drawing").find((field) => field.name === "part")?.choices);

export function ToolingScreen() {
  // What was measured of the rings is typed at the work itself.
  const shared = new Set([...fieldsOf("sizing").map((field) => field.name), "measured"]);
  const own = fieldsOf("tooling").filter((field) => !shared.has(field.name));
  const elsewhere = fieldsOf("tooling").filter((field) => shared.has(field.name)).map((field) => field.name);
  return (
    <GenericScreen calculation="tooling" elsewhere={own.length > 0 ? elsewhere : []} figuresTitle="All figures">
      {(view) => {
        const tools = (view.answer?.tools ?? []) as Tool[];
        return (
          <div class={view.stale ? "tools stale" : "tools"}>
            {tools.length > 0 && <PrintButton what="tool sheet" />}
            {tools.map((tool) => (
              <section class="card tool" key={tool.tool} aria-label={tool.title}>
                <h2>{tool.title}</h2>
                <OnTheShelf tool={tool.tool} answer={view.answer} />
                {tool.material && <p class="tool-material">{tool.material}</p>}
                <SizeTable sizes={tool.sizes} place={`tool/${tool.tool}`} caption={`Sizes of the ${tool.title}`} />
                {tool.why && <p class="tool-why">{tool.why}</p>}
                {DRAWN.has(tool.tool) && <Drawing part={tool.tool} title="Drawing" />}
              </section>
            ))}
          </div>
        );
      }}
    </GenericScreen>
  );
}
