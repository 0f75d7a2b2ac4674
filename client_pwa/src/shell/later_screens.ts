/** The screens that nobody needs for the first figures, in one file of their own. */

export { BookScreen } from "../screens/book/BookScreen";
export { CompareScreen } from "../screens/compare/CompareScreen";
export { CutScreen } from "../screens/cut/CutScreen";
export { FittingScreen } from "../screens/fitting/FittingScreen";
export { GrooveScreen } from "../screens/groove/GrooveScreen";
export { GuideScreen } from "../screens/guide/GuideScreen";
export { LabelScreen } from "../screens/label/LabelScreen";
export { PackScreen } from "../screens/pack/PackScreen";
export { SettingsScreen } from "../screens/settings/SettingsScreen";
export { ShopScreen } from "../screens/shop/ShopScreen";
export { SoakScreen } from "../screens/soak/SoakScreen";
export { TablesScreen } from "../screens/tables/TablesScreen";
export { ThumbScreen } from "../screens/thumb/ThumbScreen";
export { UnheatedScreen } from "../screens/unheated/UnheatedScreen";
export { WorkScreen } from "../screens/work/WorkScreen";
