/** What the shop has, said once for all jobs: lathes, saws, what stands on the shelf, bars in the rack, prices,
 * gauges. It lies on the device and travels as a file like a job; read back, it is a stranger's. */

import { computed, signal } from "@preact/signals";
import { readInputs } from "./job";
import type { Input, Inputs } from "./job";
import { isRecord } from "./versions";

export const SHOP_FORMAT = "ringwright-shop";
export const SHOP_VERSION = 1;

export interface Shop {
  /** Whose it is: a workshop or a club. */
  name: string;
  /** Each with the inputs that belong to a lathe: machine, tool_material, spindle_speeds, spindle_bore, name. */
  lathes: Inputs[];
  /** Which of them is used, from 0. */
  lathe: number;
  /** Diameters of what stands on the shelf, by the input that takes one: shelf_former and so on. */
  shelf: { [input: string]: string[] };
  /** All else that jobs take from the shop, bars in the rack among it. */
  inputs: Inputs;
}

export type ShopReading = { ok: true; shop: Shop } | { ok: false; message: string };

/** What a tool on the shelf is called, by the input that takes it. */
export const SHELF: Readonly<Record<string, string>> = {
  shelf_former: "Set formers",
  shelf_pot: "Facing pots",
  shelf_closing_ring: "Closing rings",
  shelf_clamp_mandrel: "Clamp mandrels",
};
export const OF_A_LATHE = ["machine", "tool_material", "spindle_speeds", "spindle_bore"] as const;

const KEY = "ringwright-shop";
const LONGEST = 300_000;
const MOST_LATHES = 20;
const MOST_ON_SHELF = 200;
const NO_SHOP: Shop = { name: "", lathes: [], lathe: 0, shelf: {}, inputs: {} };

export const shop = signal<Shop>(kept());

/** What every job takes from the shop unless it says otherwise itself. */
export const shopInputs = computed<Inputs>(() => {
  const { lathes, lathe, inputs } = shop.value;
  const used = lathes[lathe] ?? {};
  const own = Object.fromEntries(OF_A_LATHE.flatMap((name) => (used[name] === undefined ? [] : [[name, used[name]]])));
  const { inch_sizes: _begins, ...taken } = inputs;
  return { ...taken, ...own };
});

/** What a job begins with in this shop. It stands in the job from then on: one that was kept before must not
 * change its sizes because the shop changed its mind. */
export const jobBegins = computed<Inputs>(() => (shop.value.inputs.inch_sizes === true ? { inch_sizes: true } : {}));

/** False where the device keeps nothing. */
export function setShop(next: Shop): boolean {
  shop.value = next;
  try {
    localStorage.setItem(KEY, JSON.stringify(fileOf(next)));
    return true;
  } catch {
    return false;
  }
}

export function shopFileText(sheet: Shop): string {
  return JSON.stringify(fileOf(sheet), null, 2) + "\n";
}

function fileOf(sheet: Shop) {
  return { format: SHOP_FORMAT, version: SHOP_VERSION, ...sheet };
}

export function readShopText(text: string): ShopReading {
  if (text.length > LONGEST) return { ok: false, message: "This file is far larger than any shop's." };
  try {
    return readShop(JSON.parse(text));
  } catch {
    return { ok: false, message: "This is not a shop file: it is not written in JSON." };
  }
}

export function readShop(raw: unknown): ShopReading {
  if (!isRecord(raw) || raw.format !== SHOP_FORMAT) return { ok: false, message: "This is not a shop file: it does not say that it is one." };
  if (typeof raw.version !== "number" || raw.version > SHOP_VERSION) {
    return { ok: false, message: "This shop file was written by a newer version of this app." };
  }
  const reasons: string[] = [];
  const lathes = Array.isArray(raw.lathes) ? raw.lathes.slice(0, MOST_LATHES).map((each) => readInputs(each, reasons)) : [];
  const shelf: Shop["shelf"] = {};
  for (const name of Object.keys(SHELF)) {
    const list = isRecord(raw.shelf) ? raw.shelf[name] : undefined;
    if (Array.isArray(list)) shelf[name] = list.filter((each): each is string => typeof each === "string" && each.length < 60).slice(0, MOST_ON_SHELF);
  }
  const inputs = raw.inputs === undefined ? {} : readInputs(raw.inputs, reasons);
  if (reasons.length > 0) return { ok: false, message: `This shop file cannot be read: ${reasons.join("; ")}.` };
  const lathe = typeof raw.lathe === "number" && raw.lathe in lathes ? raw.lathe : 0;
  return { ok: true, shop: { name: typeof raw.name === "string" ? raw.name.slice(0, 120) : "", lathes, lathe, shelf, inputs } };
}

function kept(): Shop {
  try {
    const text = localStorage.getItem(KEY);
    const reading = text === null ? undefined : readShopText(text);
    return reading?.ok ? reading.shop : NO_SHOP;
  } catch {
    return NO_SHOP;
  }
}

/** Bars of the rack with a name each, by which a cut list can call them. */
export function namedBars(bars: Input | undefined): Inputs[] {
  const list = (Array.isArray(bars) ? bars : []).filter((bar): bar is Inputs => typeof bar === "object" && !Array.isArray(bar) && Object.keys(bar).length > 0);
  const taken = new Set<string>();
  return list.map((bar, at) => {
    const wanted = typeof bar.name === "string" && bar.name.trim() !== "" ? bar.name.trim() : `Bar ${at + 1}`;
    let name = wanted;
    for (let number = 2; taken.has(name); number += 1) name = `${wanted} (${number})`;
    taken.add(name);
    return { ...bar, name };
  });
}
