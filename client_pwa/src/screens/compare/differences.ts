/** Where two designs differ: entries, checks and figures, each as it is shown. */

import type { Input, Inputs } from "../../book/job";
import type { Answer, Finding } from "../../engine/answers";
import { labelOf } from "../../engine/labels";
import { figureLabel } from "../../engine/tables";
import type { FigureName } from "../../engine/names";
import type { System } from "../../base/settings";
import { shown } from "../../units/show";

export interface Row {
  label: string;
  left: string;
  right: string;
}

const NONE = "not given";

/** Entries of one or the other that are not the same, in their own words. names: those that count. */
export function entriesApart(left: Inputs, right: Inputs, names: readonly string[]): Row[] {
  return names
    .filter((name) => JSON.stringify(left[name]) !== JSON.stringify(right[name]))
    .map((name) => ({ label: labelOf(name), left: entryWords(left[name]), right: entryWords(right[name]) }));
}

function entryWords(input: Input | undefined): string {
  if (input === undefined) return NONE;
  if (input === true || input === false) return input ? "yes" : "no";
  if (Array.isArray(input)) return `${input.length} in a list`;
  return typeof input === "string" ? input.replace(/-/g, " ") : "of its own";
}

/** Checks whose outcome is not the same in both; one that was not made says so. */
export function checksApart(left: readonly Finding[], right: readonly Finding[], word: (finding: Finding) => string): Row[] {
  const names = [...new Set([...left, ...right].map((finding) => finding.check))];
  const said = (findings: readonly Finding[], check: string): string => {
    const found = findings.find((finding) => finding.check === check);
    return found ? word(found) : "not made";
  };
  return names
    .map((check) => ({ label: labelOf(check), left: said(left, check), right: said(right, check) }))
    .filter((row) => row.left !== row.right);
}

/** Every figure of one or the other: what differs as it is shown, and what does not. */
export function figuresOf(left: Answer, right: Answer, system: System): { apart: Row[]; alike: Row[] } {
  const names = [...new Set([...Object.keys(left.figures), ...Object.keys(right.figures)])] as FigureName[];
  const apart: Row[] = [];
  const alike: Row[] = [];
  for (const name of names) {
    const words = [left, right].map(({ figures }) => {
      const figure = figures[name];
      if (!figure) return "none";
      const { text, unit } = shown(figure.value, figure.unit, system, name);
      return `${text} ${unit}`.trim();
    });
    const row = { label: figureLabel(name), left: words[0]!, right: words[1]! };
    (row.left === row.right ? alike : apart).push(row);
  }
  return { apart, alike };
}
