import { inspectionItems, inspectionStep } from "./inspection-items.ts";
import { heatReminder, liftingReminder, standingWaterReminder, winterReminder } from "./reminders.ts";
import { chosen, counted, type Stage, type Step } from "./stage.ts";

const reminders = [standingWaterReminder, heatReminder, liftingReminder];

export const weekInspection: Stage = {
  id: "week",
  name: "After a week",
  purpose: "See that it is watered, that water comes in, and that nothing has settled or washed out. Pictures from the same places.",
  reminders,
  beginsWith: "week-date",
  steps: [
    dayOf("week"),
    {
      id: "week-watering",
      title: "Watering",
      ask: "Is the soil moist a finger deep?",
      why: "New roots are as long as the pot was deep.",
      answer: chosen(["Moist", "pass"], ["Dry on top", "watch"], ["Dry a finger deep", "fail"]),
    },
    ...itemsOf("week", ["inlet", "sill", "erosion"]),
  ],
};

export const monthInspection: Stage = {
  id: "month",
  name: "After a month",
  purpose: "Come within two days of half an inch (13 mm) of rain or more, twice in the first six months: ponding, weeds, losses.",
  reminders,
  beginsWith: "month-date",
  steps: [
    dayOf("month"),
    ...itemsOf("month", ["ponding"]),
    {
      id: "month-drain-hours",
      title: "Drain time",
      ask: "Hours from the end of the rain to an empty basin, where known",
      why: "It is held against the design's drawdown.",
      answer: counted("h"),
      optional: true,
    },
    ...itemsOf("month", ["inlet", "erosion", "mulch", "weeds", "plants"]),
  ],
};

export const yearInspection: Stage = {
  id: "year",
  name: "After a year, then yearly",
  purpose: "Go through every item. A new day begins the look anew; what was seen before stays on record.",
  reminders: [...reminders, winterReminder],
  beginsWith: "year-date",
  steps: [
    dayOf("year"),
    ...itemsOf(
      "year",
      inspectionItems.map(({ id }) => id),
    ),
    {
      id: "year-regraded",
      title: "Ground changed",
      ask: "Was the yard graded, built on or driven over since?",
      why: "Packed or moved soil is another soil: test the hole again.",
      answer: chosen(["No", "pass"], ["Yes: test again", "watch"]),
    },
    {
      id: "year-winter",
      title: "Salt and snow",
      ask: "Was snow piled on it, or salted meltwater led into it?",
      why: "Salt kills plants and closes clay. Common practice, no source.",
      answer: chosen(["No", "pass"], ["Yes", "watch"]),
      since: 2,
    },
    {
      id: "year-next",
      title: "What to do next",
      ask: "What the owner or the program does, and by when",
      why: "A finding without a name and a day is not put right.",
      answer: { kind: "text" },
      optional: true,
    },
  ],
};

function dayOf(look: string): Step {
  return {
    id: `${look}-date`,
    title: "Day of the look",
    ask: "Day on which you looked",
    why: "Another day begins another look.",
    answer: { kind: "date" },
  };
}

function itemsOf(look: string, ids: readonly string[]): Step[] {
  return inspectionItems.filter(({ id }) => ids.includes(id)).map((item) => inspectionStep(look, item));
}
