import { agreement } from "./agreement.ts";
import { asBuiltCheck } from "./as-built-check.ts";
import { designCheck } from "./design-check.ts";
import { digDay } from "./dig-day.ts";
import { enquiry } from "./enquiry.ts";
import { monthInspection, weekInspection, yearInspection } from "./inspections.ts";
import { oneCallTicket } from "./one-call-ticket.ts";
import { plantingDay } from "./planting-day.ts";
import { preDig } from "./pre-dig.ts";
import { screeningVisit } from "./screening-visit.ts";
import { STAGE_IDS, type Stage, type StageId } from "./stage.ts";
import { testVisit } from "./test-visit.ts";

const byId: Readonly<Record<StageId, Stage>> = {
  enquiry,
  screening: screeningVisit,
  ticket: oneCallTicket,
  "test-visit": testVisit,
  "design-check": designCheck,
  agreement,
  "pre-dig": preDig,
  "dig-day": digDay,
  planting: plantingDay,
  "as-built": asBuiltCheck,
  week: weekInspection,
  month: monthInspection,
  year: yearInspection,
};

/** The whole job, from the first call to the yearly look, in order. */
export const stages: readonly Stage[] = STAGE_IDS.map((id) => byId[id]);

export function stageNamed(id: StageId): Stage {
  return byId[id];
}
