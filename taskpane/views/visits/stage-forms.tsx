import type { FunctionComponent } from "preact";
import type { StageOfYard } from "../../../addin/actions/visits/stage-standing.ts";
import { AsBuiltForm } from "../build/as-built-form.tsx";
import { OtherDayLock } from "../build/other-day-lock.tsx";
import { PlantedForm } from "../build/planted-form.tsx";
import { WorkDay } from "../build/work-day.tsx";
import { CareView } from "../care/care-view.tsx";
import type { VisitProps } from "../../view.ts";

/** What a stage records on a sheet of its own. A look writes the stage's steps too, so it stands in their place. */
interface StageForm {
  readonly form: FunctionComponent<VisitProps>;
  readonly writesSteps: boolean;
}

const look: StageForm = { form: CareView, writesSteps: true };

export const stageForms: Partial<Record<StageOfYard["stage"]["id"], StageForm>> = {
  "dig-day": { form: DigDay, writesSteps: false },
  planting: { form: PlantingDay, writesSteps: false },
  "as-built": { form: AsBuiltForm, writesSteps: false },
  week: look,
  month: look,
  year: look,
};

function DigDay(view: VisitProps) {
  return (
    <>
      <OtherDayLock {...view} />
      <WorkDay {...view} />
    </>
  );
}

/** People come and go on a planting day as on a dig day, and bring mulch. */
function PlantingDay(view: VisitProps) {
  return (
    <>
      <WorkDay {...view} />
      <PlantedForm {...view} />
    </>
  );
}
