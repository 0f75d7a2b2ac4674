import { GenericScreen } from "../figures/GenericScreen";

export function RunScreen() {
  return <GenericScreen calculation="running" />;
}
