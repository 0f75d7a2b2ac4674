/** The methods and sources of the core, asked for once, when first wanted. */

import { signal } from "@preact/signals";
import type { CheckTold, FigureTold, Method, Source } from "../engine/answers";
import { askOnce } from "../engine/client";
import { isKnown } from "../engine/tables";

export interface Reference {
  methods: Map<string, Method>;
  sources: Map<string, Source>;
  figures: readonly FigureTold[];
  checks: readonly CheckTold[];
}

export const reference = signal<Reference | undefined>(undefined);

let asked = false;

export function needReference(): void {
  if (asked || !isKnown("methods")) return;
  asked = true;
  askOnce("methods").then(
    (answer) => {
      const methods = (answer.methods ?? []) as Method[];
      const sources = (answer.sources ?? []) as Source[];
      reference.value = {
        methods: new Map(methods.map((method) => [method.key, method])),
        sources: new Map(sources.map((source) => [source.key, source])),
        figures: (answer.figures ?? []) as unknown as FigureTold[],
        checks: (answer.checks ?? []) as CheckTold[],
      };
    },
    () => {
      asked = false;
    },
  );
}

const BASIS: Readonly<Record<string, string>> = {
  read: "read in a copy of the source",
  run: "given by a general-purpose library that was run",
  memory: "from memory, not checked against a copy",
  practice: "common practice of the trade, no source",
  derived: "worked out for this project and checked by independent means",
};

export function basisWords(basis: string): string {
  return BASIS[basis] ?? basis;
}
