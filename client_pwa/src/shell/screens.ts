/** The places of the app are the places of the work, in the order of the job. */

import type { ComponentType } from "preact";
import type { FigureName, InputName } from "../engine/names";
import { isKnown } from "../engine/tables";
import type { Key } from "../engine/tables";
import { CheckScreen } from "../screens/check/CheckScreen";
import { RingScreen } from "../screens/ring/RingScreen";
import { RouteScreen } from "../screens/route/RouteScreen";
import { RunScreen } from "../screens/run/RunScreen";
import { StockScreen } from "../screens/stock/StockScreen";
import { SurveyScreen } from "../screens/survey/SurveyScreen";
import { ToolingScreen } from "../screens/tooling/ToolingScreen";
import { PortPicture } from "../screens/valve/PortPicture";
import { lazy } from "./lazy";
import { plain } from "../screens/plain";

export interface Screen {
  key: string;
  label: string;
  title: string;
  /** What the engine is asked for while this screen is in view (see sheet/feeds.ts for names with "@"). */
  uses: readonly Key[];
  view: ComponentType;
}

const ALL: readonly Screen[] = [
  { key: "survey", label: "Survey", title: "Survey of the bore", uses: ["bore-survey"], view: SurveyScreen },
  { key: "ring", label: "Ring", title: "The ring", uses: ["sizing", "tooling", "job"], view: RingScreen },
  { key: "tools", label: "Tools", title: "Tooling", uses: ["tooling"], view: ToolingScreen },
  { key: "stock", label: "Stock", title: "Stock", uses: ["job"], view: StockScreen },
  { key: "route", label: "Route", title: "Route card", uses: ["route"], view: RouteScreen },
  { key: "check", label: "Check", title: "Check the ring", uses: ["inspection", "wall-pressure@cold", "wall-pressure@steam"], view: CheckScreen },
  { key: "run", label: "Run", title: "The running engine", uses: ["running"], view: RunScreen },
];

const VALVE_ENTRIES: readonly InputName[] = ["bore", "port_width", "steam_pressure", "port_bars", "port_bar_width", "joint_pinned"];
const VALVE_FIGURES: readonly FigureName[] = ["free_gap", "closed_gap", "bulge", "free_end", "leak_rate", "friction_force"];

const ShopScreen = lazy("ShopScreen");
const CutScreen = lazy("CutScreen");

/** What is no stage of the ring's job. */
const SIDE: readonly Screen[] = [
  { key: "fitting", label: "Fitting", title: "Fitting card", uses: ["fitting"], view: lazy("FittingScreen") },
  { key: "groove", label: "Groove", title: "Worn groove", uses: ["groove-recut"], view: lazy("GrooveScreen") },
  { key: "pack", label: "How many", title: "How many rings", uses: ["ring-pack"], view: lazy("PackScreen") },
  { key: "valve", label: "Valve", title: "Piston valve", uses: ["piston-valve"], view: plain("piston-valve", VALVE_ENTRIES, VALVE_FIGURES, PortPicture) },
  { key: "expander", label: "Expander", title: "Spring expander", uses: ["expander"], view: plain("expander", ["bore", "radial_thickness", "ring_width", "groove_depth", "expander_pressure", "expander_kind"], ["total_wall_pressure", "strip_stress", "wave_height", "strip_length", "wire_stress", "coil_length", "coil_free_length"]) },
  { key: "soak", label: "Heat", title: "Heat without a pyrometer", uses: ["soak"], view: lazy("SoakScreen") },
  { key: "thumb", label: "Thumb rules", title: "What the thumb rules would do", uses: ["thumb-rules"], view: lazy("ThumbScreen") },
  { key: "unheated", label: "No heat", title: "Ring without heat", uses: ["ring-without-heat"], view: lazy("UnheatedScreen") },
  { key: "tables", label: "Tables", title: "Reference tables", uses: ["materials"], view: lazy("TablesScreen") },
  { key: "guide", label: "Guide", title: "Guide", uses: [], view: lazy("GuideScreen") },
  { key: "shop", label: "Shop", title: "My shop", uses: [], view: ShopScreen },
  { key: "compare", label: "Compare", title: "Two designs side by side", uses: [], view: lazy("CompareScreen") },
  { key: "cut", label: "Cut", title: "Several jobs, one bar", uses: [], view: CutScreen },
];

/** Reached from a stage, with the whole screen to itself. */
const ALONE: readonly Screen[] = [
  { key: "work", label: "Work", title: "Work through it", uses: ["route"], view: lazy("WorkScreen") },
  { key: "label", label: "Label", title: "Label for the box", uses: ["sizing"], view: lazy("LabelScreen") },
];

/** Only the places whose figures the core can give. */
const given = (screens: readonly Screen[]): readonly Screen[] => screens.filter((screen) => screen.uses.length === 0 || screen.uses.some((key) => isKnown(key.split("@")[0]!)));

export const SCREENS = given(ALL);
export const BESIDE = given(SIDE);

export function screenWith(key: string): Screen | undefined {
  return [...SCREENS, ...BESIDE, ...ALONE].find((screen) => screen.key === key);
}
