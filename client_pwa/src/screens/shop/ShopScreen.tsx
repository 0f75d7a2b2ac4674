/** My shop: what the shop has, once, for all jobs. */

import type { CalculationName, InputName } from "../../engine/names";
import { useRef, useState } from "preact/hooks";
import type { Input, Inputs } from "../../book/job";
import { saveOut } from "../../book/files";
import { OF_A_LATHE, readShop, readShopText, SHELF, shop, shopFileText } from "../../book/shop";
import type { Shop } from "../../book/shop";
import { fieldNamed, fieldsOf } from "../../engine/tables";
import type { Field } from "../../engine/tables";
import { labelOf } from "../../engine/labels";
import { FieldEntry } from "../../fields/FieldEntry";
import { ListEntry } from "../../fields/ListEntry";
import { faultsIn } from "./faults";
import { keepShop, sayGoneFromShop } from "../../sheet/keep_shop";

const GROUPS: readonly { title: string; words?: string; names: readonly InputName[] }[] = [
  { title: "Sizes of new jobs", words: "Fractions of an inch and thou, in place of millimetres. Jobs in the book keep the sizes they have.", names: ["inch_sizes"] },
  { title: "Saws and cutters", names: ["end_kerf", "slit_width", "cutter_diameter", "cutter_collar", "slit_on_stick", "table_grip", "parting_width", "saw_width"] },
  { title: "Bars and prices", names: ["ring_material", "bar_form", "bar_sizes", "bar_length", "bar_price", "spares", "usable_offcut"] },
  { title: "Gauges, and how far work may stray", names: ["gauge_uncertainty", "bore_spread", "outside_spread", "thickness_spread", "kerf_spread", "tool_spread"] },
];
const FROM: readonly CalculationName[] = ["stock", "route", "tooling", "bore-survey", "spread"];
const BARS = fieldsOf("stock").find((field) => field.name === "bars");
const PRICES = fieldsOf("stock").find((field) => field.name === "metal_prices");
const LATHE_FIELDS = OF_A_LATHE.flatMap((name) => fieldNamed(name, FROM) ?? []);
const DIAMETER: Field = { name: "shelf", kind: "length", unit: "mm", lowest: 1, highest: 1100 };

export function ShopScreen() {
  const sheet = shop.value;
  const set = (change: Partial<Shop>): void => keepShop({ ...sheet, ...change });
  const setInput = (name: string, value: Input | undefined): void => {
    const inputs = { ...sheet.inputs };
    if (value === undefined || value === "" || (Array.isArray(value) && value.length === 0)) delete inputs[name];
    else inputs[name] = value;
    set({ inputs });
  };
  return (
    <div class="shop">
      <p class="shop-words">Said once, for all jobs. A job that says otherwise itself goes by its own.</p>
      <section class="card" aria-label="Whose shop">
        <label class="job-name">
          <span>Workshop or club</span>
          <input type="text" maxLength={120} value={sheet.name} onInput={(event) => set({ name: event.currentTarget.value })} />
        </label>
        <Exchange sheet={sheet} />
      </section>
      <Lathes sheet={sheet} set={set} />
      {BARS && (
        <section class="card" aria-label="Bars in the rack">
          <ListEntry Entry={FieldEntry} field={BARS} label="Bars in the rack" rowName="Bar" gone={sayGoneFromShop} value={sheet.inputs.bars} faults={faultsIn(BARS, sheet.inputs.bars)} path={["bars"]} onChange={(value) => setInput("bars", value)} />
        </section>
      )}
      {PRICES && (
        <section class="card" aria-label="Price of each metal">
          <ListEntry Entry={FieldEntry} field={PRICES} label="Price of each metal" rowName="Metal" gone={sayGoneFromShop} value={sheet.inputs.metal_prices} faults={faultsIn(PRICES, sheet.inputs.metal_prices)} path={["metal_prices"]} onChange={(value) => setInput("metal_prices", value)} />
        </section>
      )}
      <section class="card" aria-label="On the shelf">
        <h2>On the shelf</h2>
        <p>Diameters of what you have. The tools of a job offer one that comes near.</p>
        {Object.entries(SHELF).map(([name, title]) => (
          <ListEntry
            key={name}
            Entry={FieldEntry}
            field={{ name, kind: "records", items: [{ ...DIAMETER, name: "" }] }}
            label={title}
            rowName="Diameter"
            gone={sayGoneFromShop}
            value={sheet.shelf[name] ?? []}
            faults={faultsIn({ name, kind: "records", items: [{ ...DIAMETER, name: "" }] }, sheet.shelf[name])}
            path={[name]}
            onChange={(value) => set({ shelf: { ...sheet.shelf, [name]: (Array.isArray(value) ? value : []).filter((each): each is string => typeof each === "string") } })}
          />
        ))}
      </section>
      {GROUPS.map((group) => (
        <section class="card" key={group.title} aria-label={group.title}>
          <h2>{group.title}</h2>
          {group.words && <p>{group.words}</p>}
          <div class="top-entries">
            {group.names.map((name) => {
              const field = fieldNamed(name, FROM);
              if (!field) return null;
              return (
                <FieldEntry key={name} field={field} label={labelOf(name)} value={sheet.inputs[name]} faults={faultsIn(field, sheet.inputs[name])} path={[name]} onChange={(value) => setInput(name, value)} />
              );
            })}
          </div>
        </section>
      ))}
    </div>
  );
}

function Lathes({ sheet, set }: { sheet: Shop; set(change: Partial<Shop>): void }) {
  const write = (at: number, name: string, value: Input | undefined): void => {
    const next: Inputs = { ...sheet.lathes[at] };
    if (value === undefined || value === "") delete next[name];
    else next[name] = value;
    set({ lathes: sheet.lathes.map((each, index) => (index === at ? next : each)) });
  };
  return (
    <section class="card" aria-label="Lathes">
      <h2>Lathes</h2>
      {sheet.lathes.map((lathe, at) => {
        const name = typeof lathe.name === "string" && lathe.name ? lathe.name : `Lathe ${at + 1}`;
        return (
          <fieldset class="list shop-lathe" key={at}>
            <legend>{name}</legend>
            <label class="check">
              <input type="radio" name="lathe" checked={at === sheet.lathe} onChange={() => set({ lathe: at })} />
              The card is worked for this one
            </label>
            <label class="job-name">
              <span>Name of lathe {at + 1}</span>
              <input type="text" maxLength={60} value={typeof lathe.name === "string" ? lathe.name : ""} onInput={(event) => write(at, "name", event.currentTarget.value)} />
            </label>
            {LATHE_FIELDS.map((field) => (
              <FieldEntry key={field.name} field={field} label={`${labelOf(field.name)}, ${name}`} value={lathe[field.name]} faults={faultsIn(field, lathe[field.name], ["lathes", at])} path={["lathes", at, field.name]} onChange={(value) => write(at, field.name, value)} />
            ))}
            <button
              type="button"
              class="small-words"
              onClick={() => keepShop({ ...sheet, lathes: sheet.lathes.filter((_each, index) => index !== at), lathe: 0 }, `${name} is taken out.`)}
            >
              Take out {name}
            </button>
          </fieldset>
        );
      })}
      <button type="button" class="add" onClick={() => set({ lathes: [...sheet.lathes, {}] })}>
        Add a lathe
      </button>
    </section>
  );
}

/** As a file, or from the service that this app came from. */
function Exchange({ sheet }: { sheet: Shop }) {
  const file = useRef<HTMLInputElement>(null);
  const [message, setMessage] = useState("");
  const take = (reading: ReturnType<typeof readShop>, from: string): void => {
    if (!reading.ok) return setMessage(`${reading.message} Your shop is as it was.`);
    keepShop(reading.shop, `Taken over from ${from}.`);
    setMessage("");
  };
  return (
    <>
      <div class="book-actions">
        <button type="button" onClick={() => void fromService().then((found) => (typeof found === "string" ? setMessage(found) : take(readShop(found), "the service")))}>
          Take over the club's shop
        </button>
        <button type="button" onClick={() => file.current?.click()}>
          Bring in a shop file
        </button>
        <input
          ref={file}
          class="unseen"
          type="file"
          accept=".json,application/json"
          aria-label="Shop file to bring in"
          tabIndex={-1}
          onChange={(event) => {
            const [chosen] = event.currentTarget.files ?? [];
            if (chosen) void chosen.text().then((text) => take(readShopText(text), "the file"));
            event.currentTarget.value = "";
          }}
        />
        <button type="button" onClick={() => saveOut("my-shop.ringwright.json", shopFileText(sheet))}>
          Save my shop as a file
        </button>
      </div>
      {message && (
        <p class="status" role="status">
          {message}
        </p>
      )}
    </>
  );
}

/** The profile that the service offers, or in words why there is none. */
async function fromService(): Promise<unknown> {
  try {
    const reply = await fetch(new URL("v1/shop", document.baseURI), { headers: { Accept: "application/json" } });
    if (reply.status === 404) return "The service that this app came from offers no shop of a club.";
    if (!reply.ok) return "The service could not give its club's shop just now.";
    return (await reply.json()) as unknown;
  } catch {
    return "The service that this app came from cannot be reached just now.";
  }
}

