import { overflowReminder, privateLinesReminder } from "./reminders.ts";
import { chosen, type Stage } from "./stage.ts";

/** The owner agrees in writing, and whoever gives permits has been asked. */
export const agreement: Stage = {
  id: "agreement",
  name: "Owner's agreement",
  purpose: "Have the owner sign, ask for the permit, agree on the money and the day.",
  reminders: [privateLinesReminder, overflowReminder],
  steps: [
    {
      id: "agreement-covers",
      title: "What it covers",
      ask: "Right of entry; years of upkeep; no change or removal; who owns plants and materials; cost share and repayment; overflow and neighbors; private lines; liability; pictures; sale of the house; fertilizer and pesticide; inspections",
      why: "What was not agreed before the dig is argued about after it.",
      answer: chosen(["All of it", "pass"], ["Some is left out", "refer"]),
    },
    {
      id: "agreement-signed",
      title: "Signed on",
      ask: "Day on which the owner signed",
      why: "Nobody digs on another's land without it.",
      answer: { kind: "date" },
    },
    {
      id: "agreement-signed-by",
      title: "Signed by",
      ask: "Who signed: the owner of the property",
      why: "A tenant cannot sign for the ground.",
      answer: { kind: "text" },
    },
    {
      id: "agreement-until",
      title: "In force until",
      ask: "Last day of the agreement",
      why: "A dig after it is a dig without it.",
      answer: { kind: "date" },
    },
    {
      id: "agreement-copy",
      title: "Signed copy",
      ask: "Where the signed copy is kept",
      why: "An agreement that nobody finds is none.",
      answer: { kind: "text" },
    },
    {
      id: "permit",
      title: "Permit",
      ask: "Grading, plumbing or right-of-way permit",
      why: "Building, health and stormwater staff decide whether one is needed.",
      answer: chosen(["Asked, none needed", "pass"], ["Granted", "pass"], ["Applied for, no answer", "stop"], ["Not asked yet", "stop"]),
    },
    {
      id: "budget",
      title: "Money",
      ask: "Are cost, cost share and who pays agreed?",
      why: "Materials are ordered next.",
      answer: chosen(["Agreed", "pass"], ["Not agreed yet", "refer"]),
    },
  ],
};
