import { describe, expect, test } from "vitest";
import { depth, rate, text, units, hours } from "../../../functions/worksheet/calling/arguments.ts";
import { invalid } from "../../../functions/worksheet/calling/cell.ts";
import { worksheetFunction } from "../../../functions/worksheet/calling/worksheet-function.ts";
import { writtenUnit } from "../../../functions/worksheet/calling/working.ts";
import { about, pondedVolume } from "./sample-functions.ts";

/** Hours to soak in, with every kind of step; fails where nothing soaks in. */
const soakHours = worksheetFunction({
  ...about,
  name: "SOAKHOURS",
  arguments: [depth("depth", "Ponding depth"), rate("rate", "Rate"), units],
  result: hours("Drawdown"),
  equation: ["t = d / f   (h)"],
  working: ({ depth: inches, rate: inchesPerHour }) => [
    { label: "Ponding depth", value: inches, kind: "depth" },
    { label: "Time", value: inches / inchesPerHour, kind: "hours" },
    { label: "Weight of water", value: 62.4, unit: "lb/cu ft" },
    { label: "Ratio", value: 2 },
    { label: "Verdict", value: "soaks in" },
  ],
  calculate({ depth: inches, rate: inchesPerHour }) {
    if (inches > 100) throw new Error("Too deep to compute.");
    return inchesPerHour === 0 ? invalid("Rate must be more than 0.") : inches / inchesPerHour;
  },
});

describe("the steps of a call", () => {
  test("are in the units of the call, each with its unit", () => {
    expect(soakHours.workingFor([6, 0.5])).toEqual([
      { label: "Ponding depth", value: 6, unit: "in" },
      { label: "Time", value: 12, unit: "h" },
      { label: "Weight of water", value: 62.4, unit: "lb/cu ft" },
      { label: "Ratio", value: 2, unit: "" },
      { label: "Verdict", value: "soaks in", unit: "" },
    ]);
    expect(soakHours.workingFor([152.4, 12.7, "metric"])[0]).toEqual({ label: "Ponding depth", value: 152.4, unit: "mm" });
  });

  test("are none when an input is missing or impossible, or the cell says in words why there is no answer", () => {
    expect(soakHours.workingFor([6])).toEqual([]);
    expect(soakHours.workingFor([-6, 0.5])).toEqual([]);
    expect(soakHours.workingFor([6, 0])).toEqual([]);
  });

  test("are none where the calculation itself gives up", () => {
    expect(soakHours.workingFor([101, 0.5])).toEqual([]);
  });

  test("leave out a number that outgrew arithmetic", () => {
    expect(soakHours.workingFor([100, 1e-308]).map(({ label }) => label)).not.toContain("Time");
  });

  test("are none for a function that declares none", () => {
    expect(pondedVolume.workingFor([100, 6])).toEqual([]);
  });

  test("have no unit for words", () => {
    expect(writtenUnit(text("Status").kind, "us")).toBe("");
    expect(writtenUnit("percent", "metric")).toBe("%");
    expect(writtenUnit("area", "metric")).toBe("m²");
  });
});
