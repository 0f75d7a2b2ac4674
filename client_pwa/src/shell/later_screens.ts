/** The screens that nobody needs for the first figures, in one file of their own. */

export { CutScreen } from "../screens/cut/CutScreen";
export { ShopScreen } from "../screens/shop/ShopScreen";
export { WorkScreen } from "../screens/work/WorkScreen";
