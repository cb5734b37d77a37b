import { erosionReminder, handDiggingReminder, heatReminder, leadReminder, liftingReminder, utilitiesReminder } from "./reminders.ts";
import { OWN_NAME } from "./one-call-ticket.ts";
import { chosen, counted, type Stage } from "./stage.ts";

/** The days before: ticket, deliveries, tools, people, and what the sky will do. */
export const preDig: Stage = {
  id: "pre-dig",
  name: "Before the dig",
  purpose: "Fix the day, see that the ticket is in force on it, that everything is ordered, and what the weather will be.",
  reminders: [utilitiesReminder, handDiggingReminder, heatReminder, leadReminder, liftingReminder, erosionReminder],
  beginsWith: "dig-date",
  steps: [
    {
      id: "dig-date",
      title: "Day of the dig",
      ask: "Day on which you will dig",
      why: "The ticket and the agreement must be in force on it. Another day begins these steps anew.",
      answer: { kind: "date" },
    },
    {
      id: "digger",
      title: "Who digs",
      ask: "Is the ticket in the name of whoever digs on that day?",
      why: "Crew, contractor and owner each need a ticket of their own; another digger asks for another ticket.",
      answer: chosen([OWN_NAME, "pass"], ["In another's", "stop"]),
      since: 2,
    },
    {
      id: "orders",
      title: "Deliveries",
      ask: "Soil, stone, mulch and plants: ordered, with a day for each?",
      why: "A crew without compost is a crew sent home.",
      answer: chosen(["All ordered, days known", "pass"], ["Something is missing", "refer"]),
    },
    {
      id: "tools",
      title: "Tools",
      ask: "Spades, level and string, barrows, tarps, gloves, water, shade, first-aid kit",
      why: "What is forgotten is a drive away.",
      answer: chosen(["All packed", "pass"], ["Something is missing", "refer"]),
    },
    {
      id: "volunteers",
      title: "People coming",
      ask: "How many people have said they will come",
      why: "Two or three hours of digging each is plenty.",
      answer: counted("people"),
    },
    {
      id: "rain-forecast",
      title: "Rain",
      ask: "Forecast for the day and the night after",
      why: "Wet clay smears and seals, and an open basin fills.",
      answer: chosen(["Dry", "pass"], ["Showers: soil covered, edges safe", "refer"], ["Heavy rain or thunder: move the day", "stop"]),
    },
    {
      id: "heat-forecast",
      title: "Heat",
      ask: "Highest heat index forecast",
      why: "Bands as OSHA publishes them, for shade: in full sun read the next one up.",
      answer: chosen(
        ["Under 80 °F (27 °C)", "pass"],
        ["80 to 90 °F (27 to 32 °C): water and shade planned", "pass"],
        ["91 to 102 °F (33 to 39 °C): a rest of 10 minutes every hour or two", "refer"],
        ["103 °F (39 °C) or more: move the day", "stop"],
      ),
    },
    {
      id: "frozen-ground",
      title: "State of the ground",
      ask: "Will the ground be frozen or soaked on that day?",
      why: "Frozen or soaked soil packs and smears; what is dug then does not drink. (Common practice, no source.)",
      answer: chosen(["Neither", "pass"], ["Frozen or soaked: move the day", "stop"]),
      since: 2,
    },
  ],
};
