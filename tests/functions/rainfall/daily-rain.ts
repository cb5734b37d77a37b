/**
 * Daily rain in millimetres, 2012 to 2015, from vega-datasets 3.2.1, data/weather.csv: NOAA gauge readings in
 * hundredths of an inch, rounded there to 0.1 mm. A work of the US government.
 */
import { readFileSync } from "node:fs";

export const dailyRainMillimetres = { Seattle: dailyRain("Seattle"), "New York": dailyRain("New York") };

function dailyRain(city: string): readonly number[] {
  const file = new URL("../../../node_modules/vega-datasets/data/weather.csv", import.meta.url);
  const [heading = "", ...days] = readFileSync(file, "utf8").trim().split("\n");
  const columns = heading.split(",");
  const cells = days.map((day) => day.split(",")).filter((day) => day[columns.indexOf("location")] === city);
  return cells.map((day) => Number(day[columns.indexOf("precipitation")]));
}
