import { handDiggingReminder, privateLinesReminder, utilitiesReminder } from "./reminders.ts";
import { chosen, type Stage, type Step } from "./stage.ts";

/** What the ticket and the days before the dig both ask. */
export const OWN_NAME = "In the name of whoever digs";

/** The utilities are asked to mark their lines, and answer one by one. Nothing is dug before the last has. */
export const oneCallTicket: Stage = {
  id: "ticket",
  name: "One-call ticket",
  purpose: "Have the buried lines marked, and keep every operator's answer. Nothing is dug before the last one is in.",
  reminders: [utilitiesReminder, privateLinesReminder, handDiggingReminder],
  beginsWith: "ticket-number",
  steps: [
    {
      id: "ticket-number",
      title: "Ticket number",
      ask: "Number that the one-call center gave",
      why: "Another number begins another ticket: its days and answers are asked for again.",
      answer: { kind: "text" },
    },
    {
      id: "white-lined",
      title: "Dig outlined",
      ask: "Is the place of the dig outlined in white paint or flags, the test holes included?",
      why: "Operators mark what they can see; some states ask for it.",
      answer: chosen(["Outlined", "pass"], ["Not yet", "refer"]),
    },
    {
      id: "ticket-kind",
      title: "Kind of ticket",
      ask: "What kind of ticket is it?",
      why: "A design, survey or planning ticket opens nothing, a test hole included.",
      answer: chosen(["Dig ticket", "pass"], ["Design, survey or planning ticket", "stop"]),
      since: 2,
    },
    {
      id: "ticket-holder",
      title: "Name on the ticket",
      ask: "In whose name is the ticket?",
      why: "Whoever digs needs a ticket of their own: a contractor's dig on the owner's or the program's ticket is a dig without one.",
      answer: chosen([OWN_NAME, "pass"], ["In another's", "stop"]),
      since: 2,
    },
    {
      id: "ticket-issued",
      title: "Issued on",
      ask: "Day on which the center issued the ticket",
      why: "The wait runs from the issue, not from the day a form was sent. Late in the day it counts as the next business day in some states.",
      answer: { kind: "date", hour: "if known" },
    },
    {
      id: "ticket-lawful-from",
      title: "Lawful from",
      ask: "First day on which digging is lawful, as the ticket says it",
      why: "Type day and hour from the ticket that the center returned. Nothing here works them out: digging before them is against the law.",
      answer: { kind: "date", hour: "asked" },
    },
    {
      id: "ticket-expires",
      title: "Last day",
      ask: "Last day on which the ticket is in force",
      why: "Type it from the ticket. After it the marks count for nothing: ask for a new ticket.",
      answer: { kind: "date" },
    },
    {
      id: "ticket-operators",
      title: "Operators",
      ask: "Every operator on the ticket, with commas between",
      why: "Each of them has to answer; a silent one may have a line here.",
      answer: { kind: "text" },
    },
    {
      id: "ticket",
      title: "Marks and answers",
      ask: "Are the lines marked, and has every operator on the ticket answered?",
      why: "No digging before that, the test hole included. Walk the yard and look: paper is not paint.",
      answer: chosen(["All answered, ticket in force", "pass"], ["Asked for, still waiting", "stop"], ["Not asked for yet", "stop"]),
    },
    {
      id: "private-lines",
      title: "Private lines",
      ask: "Has the owner shown where irrigation, propane, septic and yard wiring run?",
      why: "The one-call center does not mark private lines.",
      answer: chosen(["Shown, or none", "pass"], ["Owner does not know", "refer"]),
    },
  ],
  eachOf: { list: "ticket-operators", step: operatorStep },
};

function operatorStep(name: string): Step {
  return {
    id: operatorStepId(name),
    title: name,
    ask: `What did ${name} answer?`,
    why: "No answer is not an all-clear.",
    answer: chosen(["Clear: nothing here", "pass"], ["Marked", "pass"], ["Asked for more time", "stop"], ["No answer yet", "stop"]),
  };
}

export function operatorStepId(name: string): string {
  return `operator: ${name.toLowerCase()}`;
}
