/** Which figure's working lies open. */

import { signal } from "@preact/signals";
import type { Figure } from "../engine/answers";

export interface OpenFigure {
  name: string;
  label: string;
  figure: Figure;
}

export const openFigure = signal<OpenFigure | undefined>(undefined);
