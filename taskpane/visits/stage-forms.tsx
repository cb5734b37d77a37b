import type { FunctionComponent } from "preact";
import type { StageOfYard } from "../../addin/actions/stage-standing.ts";
import type { ViewProps } from "../view.ts";

/** What a stage records on a sheet of its own, beside its steps on Visits. */
export const stageForms: Partial<Record<StageOfYard["stage"]["id"], FunctionComponent<ViewProps>>> = {};
