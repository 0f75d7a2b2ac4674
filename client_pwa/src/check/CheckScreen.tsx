import { GenericScreen } from "../figures/GenericScreen";

export function CheckScreen() {
  return <GenericScreen calculation="inspection" />;
}
