import { markingService, type MarkingService } from "../../records/one-call-rules/marking-service.ts";
import type { Program, Yard } from "../program/read-program.ts";

export { reminderWords } from "../../checklist/stage.ts";

/** Whoever marks the lines of a yard, by the place chosen on Program and the yard's units. */
export function markingServiceOf({ oneCall }: Pick<Program, "oneCall">, { units }: Pick<Yard, "units">): MarkingService {
  return markingService(oneCall.place, units);
}
