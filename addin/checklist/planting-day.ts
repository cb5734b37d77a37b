import { dustReminder, heatReminder, liftingReminder, standingWaterReminder } from "./reminders.ts";
import { chosen, counted, type Stage } from "./stage.ts";

export const plantingDay: Stage = {
  id: "planting",
  name: "Planting",
  purpose: "Set the plants out by the plan, plant, water, mulch. People who come sign in; what went in, clump by clump, goes on Planting.",
  reminders: [heatReminder, liftingReminder, dustReminder, standingWaterReminder],
  steps: [
    {
      id: "plants-planted",
      title: "Plants",
      ask: "Plants put in the ground",
      why: "The count is held against the plan, and next year's losses against the count.",
      answer: counted("plants"),
    },
    {
      id: "substitutions",
      title: "In place of others",
      ask: "What was planted in place of what",
      why: "A swap may want another zone.",
      answer: { kind: "text" },
      optional: true,
    },
    {
      id: "watered-in",
      title: "Watered in",
      ask: "Was every plant watered the same day?",
      why: "Roots dry within hours.",
      answer: chosen(["Yes", "pass"], ["No", "stop"]),
    },
    {
      id: "mulched",
      title: "Mulch",
      ask: "Mulch 2 to 4 in (50 to 100 mm) deep, clear of the stems?",
      why: "It keeps weeds down and the soil open.",
      answer: chosen(["Yes", "pass"], ["Not yet", "refer"]),
    },
    {
      id: "waterer",
      title: "Who waters",
      ask: "Who waters in the first weeks",
      why: "Most losses are thirst in the first summer.",
      answer: { kind: "text" },
    },
  ],
};
