/** What is wrong with text that is no quantity, and what to write instead: in the words of the service. */

import { kindOf, LEADING } from "./kinds";
import quantity from "./quantity.json";

export interface Refusal {
  ok: false;
  code: string;
  message: string;
  remedy: string;
}

type Code = keyof typeof quantity.refusals;
type Parts = Record<string, string>;

const TWO_READINGS = new RegExp(quantity.twoReadings);
const MORE_MARKS = new RegExp(quantity.moreMarks);
const ANY_SPACE = new RegExp(quantity.space, "g");
const UNPRINTABLE = new RegExp(quantity.unprintable, "gu");
const AROUND = new RegExp(`^${quantity.space}+|${quantity.space}+$`, "g");

export function refusalOf(kind: string, text: string, unit: string): Refusal {
  const { core, how } = kindOf(kind);
  const taken = unit || core;
  const parts: Parts = {
    text: quoted(text),
    length: String([...text].length),
    // "A number in in" is a riddle.
    how: how.replace("{in_unit}", taken === "1" ? "" : ` in ${taken === "in" ? "inches" : taken}`),
  };
  const code = reasonOf(kind, text, parts);
  const [message, remedy] = quantity.refusals[code] as [string, string];
  return { ok: false, code, message: filled(message, parts), remedy: filled(remedy, parts) };
}

/** The code of what is wrong; puts what its words need into `parts`. */
function reasonOf(kind: string, text: string, parts: Parts): Code {
  if ([...text].length > quantity.longest) return "measure-long";
  const two = TWO_READINGS.exec(text);
  if (two) {
    const [all, sign = "", whole = "", three = ""] = two;
    const rest = printable(text.slice(all.length));
    parts.point = `${sign}${whole}.${three}${rest}`;
    parts.plain = `${sign}${whole}${three}${rest}`;
    return "decimal-comma";
  }
  if (MORE_MARKS.test(text)) return "decimal-marks";
  const lead = LEADING.exec(text)?.[0];
  if (lead === undefined) return "measure";
  const after = text.slice(lead.length);
  const rest = after.replace(AROUND, "");
  parts.number = printable(lead.replace(AROUND, ""));
  const { names, spelled } = kindOf(kind);
  if (rest === "") {
    [parts.first = "", parts.second = ""] = names;
    return "unit-missing";
  }
  if (rest.startsWith("/") && spelled.has("1" + rest)) {
    parts.rest = rest;
    return "unit-apart";
  }
  if (/^[0-9]/.test(rest)) return after === rest || after.startsWith(rest.charAt(0)) ? "number-range" : "measure-two";
  parts.rest = quoted(rest);
  if (names.length === 0) return "unit-unwanted";
  const low = rest.toLowerCase();
  const meant = [...spelled.keys()].find((name) => name.toLowerCase() === low && name !== rest);
  if (meant !== undefined) {
    parts.meant = meant;
    return "unit-capitals";
  }
  return "unit-unknown";
}

function filled(words: string, parts: Parts): string {
  return words.replace(/\{(\w+)\}/g, (_all, name: string) => parts[name] ?? "");
}

function printable(text: string): string {
  return text.replace(ANY_SPACE, " ").replace(UNPRINTABLE, "?");
}

function quoted(text: string): string {
  const letters = [...text];
  return `'${printable(letters.length > 40 ? letters.slice(0, 40).join("") + "..." : text)}'`;
}
