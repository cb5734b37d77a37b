import { overflowReminder, standingWaterReminder, trenchReminder, wellsAndSepticReminder } from "./reminders.ts";
import { chosen, type Stage } from "./stage.ts";

/** A second person goes through the design before anybody promises it to an owner. */
export const designCheck: Stage = {
  id: "design-check",
  name: "Design",
  purpose:
    "Size the basin on its tab, then let a second person check it: area that drains here, tested rate, depths, overflow, plants, cost.",
  reminders: [trenchReminder, standingWaterReminder, wellsAndSepticReminder, overflowReminder],
  beginsWith: "design-version",
  steps: [
    {
      id: "design-version",
      title: "Version",
      ask: "Name or date of this version of the design",
      why: "Another version begins another check: the earlier one says nothing about it.",
      answer: { kind: "text" },
    },
    { id: "designed-by", title: "Designed by", ask: "Who made the design", why: "Nobody checks their own work.", answer: { kind: "text" } },
    {
      id: "design-assumptions",
      title: "Assumptions",
      ask: "What the design takes for granted, and where its factors come from",
      why: "Whoever asks in five years finds it here.",
      answer: { kind: "text" },
      optional: true,
    },
    {
      id: "design-checked-by",
      title: "Checked by",
      ask: "Who checked it: another person",
      why: "A second pair of eyes finds the inch that should have been a foot.",
      answer: { kind: "text" },
    },
    {
      id: "design-verdict",
      title: "Result of the check",
      ask: "Do inputs, sizes, overflow route, plants and cost hold?",
      why: "From here on people are told what it will be and what it will cost.",
      answer: chosen(["It holds", "pass"], ["Corrections needed", "stop"]),
    },
  ],
};
