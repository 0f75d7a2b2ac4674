import { GenericScreen } from "../figures/GenericScreen";

export function SurveyScreen() {
  return <GenericScreen calculation="bore-survey" />;
}
