import {
  handDiggingReminder,
  heatReminder,
  leadReminder,
  liftingReminder,
  privateLinesReminder,
  standingWaterReminder,
  treesReminder,
  utilitiesReminder,
} from "./reminders.ts";
import { chosen, counted, type Stage } from "./stage.ts";

/** The soil is asked: how fast it drinks, what it is made of, and whether water or rock is close. */
export const testVisit: Stage = {
  id: "test-visit",
  name: "Test visit",
  purpose: "Dig and time at least two test holes where the garden will be, and look at the soil. Readings go on Hole tests.",
  reminders: [
    utilitiesReminder,
    privateLinesReminder,
    handDiggingReminder,
    standingWaterReminder,
    leadReminder,
    treesReminder,
    heatReminder,
    liftingReminder,
  ],
  steps: [
    {
      id: "soil-texture",
      title: "Soil by feel",
      ask: "Moist soil pressed between finger and thumb",
      why: "A long smooth ribbon is clay, whatever the hole says on a dry day.",
      answer: chosen(["Gritty, makes no ribbon", "pass"], ["Makes a short ribbon", "pass"], ["Smooth ribbon over 1 in (25 mm)", "refer"]),
    },
    {
      id: "water-signs",
      title: "Signs of water",
      ask: "Gray or rust-colored spots in the soil, or water in the hole",
      why: "They show how high the water stands in a wet season.",
      answer: chosen(["None seen", "pass"], ["Gray or rust spots", "refer"], ["Water came into the hole", "stop"]),
    },
    {
      id: "refusal-depth",
      title: "Depth to refusal",
      ask: "Depth at which the spade would go no further",
      why: "Rock or hardpan below the floor keeps a basin from emptying.",
      answer: counted("in", "mm"),
      optional: true,
    },
    {
      id: "empty-in-a-day",
      title: "Empty in a day",
      ask: "Was the hole empty within 24 hours?",
      why: "A hole that is still wet the next day makes a basin that stays wet.",
      answer: chosen(["Yes, empty", "pass"], ["No, water was left", "refer"]),
    },
    {
      id: "test-weather",
      title: "Weather",
      ask: "Rain of the last days, and frost",
      why: "Dry soil drinks faster than it will in a wet spring.",
      answer: { kind: "text" },
      optional: true,
    },
  ],
};
