import { privacyReminder } from "./reminders.ts";
import { chosen, type Stage } from "./stage.ts";

/** Somebody asks: who they are, what troubles them, and whether the program may come. */
export const enquiry: Stage = {
  id: "enquiry",
  name: "Enquiry",
  purpose: "Write down who asks, what troubles them, and whether we may come and look.",
  reminders: [privacyReminder],
  steps: [
    {
      id: "contact",
      title: "Contact",
      ask: "Name and telephone of the person to ask for",
      why: "Somebody has to open the gate on the day.",
      answer: { kind: "text" },
    },
    {
      id: "problem",
      title: "Problem",
      ask: "What does the water do, and when?",
      why: "The trouble that is told is the one the garden has to cure.",
      answer: { kind: "text" },
    },
    {
      id: "in-area",
      title: "In the area",
      ask: "Is the yard in the area that the program serves?",
      why: "Funders pay for gardens in their own area.",
      answer: chosen(["Yes", "pass"], ["Not sure", "refer"], ["No", "stop"]),
    },
    {
      id: "permission",
      title: "Leave to enter",
      ask: "May we walk the yard, and has the owner of the property agreed?",
      why: "A tenant's word is not the owner's.",
      answer: chosen(["Yes, the owner agreed", "pass"], ["Tenant agreed, owner not asked", "stop"], ["Not asked yet", "stop"]),
    },
    {
      id: "photo-consent",
      title: "Pictures",
      ask: "May pictures of the yard be kept and shown?",
      why: "A picture that nobody agreed to cannot be used in a report.",
      answer: chosen(["Kept and shown", "pass"], ["Kept for the records only", "pass"], ["No pictures", "pass"]),
    },
    {
      id: "language",
      title: "Language",
      ask: "Language or help the visit needs",
      why: "Safety has to be understood.",
      answer: { kind: "text" },
      optional: true,
    },
    {
      id: "heard-from",
      title: "Heard of us from",
      ask: "How did they hear of the program?",
      why: "Reports ask for it.",
      answer: { kind: "text" },
      optional: true,
    },
  ],
};
