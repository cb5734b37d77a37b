import { overflowReminder, standingWaterReminder } from "./reminders.ts";
import { chosen, type Stage } from "./stage.ts";

export const AT_LEAST_THE_DESIGN = "At least the design";

export const asBuiltCheck: Stage = {
  id: "as-built",
  name: "As-built",
  purpose: "Measure rim, sill, floor and depth again, run water in, and see where it leaves. The measurements go on As-built.",
  reminders: [standingWaterReminder, overflowReminder],
  steps: [
    {
      id: "flow-test",
      title: "Flow test",
      ask: "With a hose or buckets: where does the water come in, and where does it leave?",
      why: "Better a bucket than a cloudburst.",
      answer: chosen(["In at the inlet, out over the sill", "pass"], ["Runs past the inlet", "stop"], ["Leaves over a low place", "stop"]),
    },
    {
      id: "as-built-held",
      title: "Against the design",
      ask: "Does what was built hold what the design asks for?",
      why: "Reports count what was built, never what was drawn.",
      answer: chosen([AT_LEAST_THE_DESIGN, "pass"], ["Less, and the owner knows", "refer"], ["Less, to be put right", "stop"]),
    },
  ],
};
