/** Prints drawings at their own size: the sheets stand alone on the page while the browser prints. */

import type { DrawnSheet } from "../engine/answers";
import { askOnce } from "../engine/client";
import { fieldsOf } from "../engine/tables";
import { said } from "../base/said";
import { assemble } from "../sheet/request";
import { variantOf } from "../sheet/feeds";
import { inputsWithShop } from "../sheet/sheet";
import { readDrawing } from "./Markup";

export async function printSheets(part: string, paper: "A4" | "Letter"): Promise<void> {
  const variant = variantOf(`drawing@${part}@${paper}`)!;
  const { request } = assemble(fieldsOf("drawing"), variant.with(inputsWithShop.value));
  try {
    const answer = await askOnce("drawing", request);
    const sheets = (answer.sheets ?? []) as DrawnSheet[];
    const place = document.createElement("div");
    place.className = `paper paper-${paper}`;
    for (const sheet of sheets) {
      const page = document.createElement("div");
      page.className = "paper-page";
      page.append(readDrawing(sheet.svg, sheet.title));
      place.append(page);
    }
    document.body.append(place);
    document.documentElement.classList.add("printing-sheets");
    addEventListener(
      "afterprint",
      () => {
        place.remove();
        document.documentElement.classList.remove("printing-sheets");
      },
      { once: true },
    );
    window.print();
  } catch {
    said.value = { text: "This cannot be drawn for the present entries." };
  }
}
