import type { FunctionComponent } from "preact";
import type { StageOfYard } from "../../addin/actions/stage-standing.ts";
import { AsBuiltForm } from "../build/as-built-form.tsx";
import { DigDayForm } from "../build/dig-day-form.tsx";
import { PlantedForm } from "../build/planted-form.tsx";
import { CareView } from "../care/care-view.tsx";
import type { ViewProps } from "../view.ts";

/** What a stage records on a sheet of its own. A look writes the stage's steps too, so it stands in their place. */
interface StageForm {
  readonly form: FunctionComponent<ViewProps>;
  readonly writesSteps: boolean;
}

const look: StageForm = { form: CareView, writesSteps: true };

export const stageForms: Partial<Record<StageOfYard["stage"]["id"], StageForm>> = {
  "dig-day": { form: DigDayForm, writesSteps: false },
  planting: { form: PlantedForm, writesSteps: false },
  "as-built": { form: AsBuiltForm, writesSteps: false },
  week: look,
  month: look,
  year: look,
};
