import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { takenBack } from "../../addin/hosting/write-reference.ts";

const listed = (...functions: readonly (readonly [id: string, ...parameters: string[]])[]) => ({
  functions: functions.map(([id, ...names]) => ({ id, parameters: names.map((name) => ({ name })) })),
});
const before = listed(["DRAWDOWN", "ponding", "units"], ["BAGS", "volume"]);

test("functions and arguments that come after what there was take nothing back", () => {
  expect(takenBack(before, before)).toEqual([]);
  expect(takenBack(before, listed(["NEW", "area"], ["DRAWDOWN", "ponding", "units", "media"], ["BAGS", "volume"]))).toEqual([]);
});

test("a function that goes, an argument that goes and one that moves are named", () => {
  expect(takenBack(before, listed(["DRAWDOWN", "ponding", "media", "units"]))).toEqual([
    "SOAK.DRAWDOWN takes media where it took units.",
    "SOAK.BAGS is gone.",
  ]);
  expect(takenBack(before, listed(["DRAWDOWN", "ponding"], ["BAGS", "volume"]))).toEqual([
    "SOAK.DRAWDOWN takes nothing where it took units.",
  ]);
});

test("units is the last argument of every function that takes it in version 1.0.0, where workbooks begin to rest on the list", () => {
  const { version } = JSON.parse(readFileSync("package.json", "utf8")) as { version: string };
  if (version !== "1.0.0") return;
  const kept = JSON.parse(readFileSync("manifest/functions.json", "utf8")) as ReturnType<typeof listed>;
  for (const { id, parameters } of kept.functions) {
    const place = parameters.findIndex(({ name }) => name === "units");
    expect(place === -1 || place === parameters.length - 1, id).toBe(true);
  }
});
