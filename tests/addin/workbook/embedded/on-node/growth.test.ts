import { expect, it } from "vitest";
import { appendRows } from "../../../../../addin/actions/program/write-records.ts";
import { designSheet } from "../../../../../addin/records/design.ts";
import { readRecords } from "../../../../../addin/records/read-records.ts";
import { sitesSheet } from "../../../../../addin/records/sites.ts";
import { surfacesSheet } from "../../../../../addin/records/surfaces.ts";
import type { GridOnNode } from "./entry.ts";
import { demo, onGrid } from "./grid-on-node.ts";

let workbook: GridOnNode["workbook"];
onGrid((on) => (workbook = on.workbook), demo);

it("a program of two hundred yards takes more, with surfaces, and Design answers for the first and the last of them", async () => {
  const sites = Array.from({ length: sitesSheet.rows }, (_, index) => ({
    siteId: `Q-${index + 1}`,
    yard: `Further yard ${index + 1}`,
    units: "us",
  }));
  const last = sites.at(-1)!.siteId;
  const designOf = async (siteId: string) => {
    const cells = (await workbook.readSheets(["Design"]))[0] ?? [];
    const [heading = []] = cells.slice(designSheet.preface.length);
    const at = (key: "yard" | "contributingArea") => heading.indexOf(designSheet.columns[key].heading);
    const row = cells.find(([id]) => id === siteId) ?? [];
    return [row[at("yard")], row[at("contributingArea")]];
  };
  const before = await designOf("Y-001");
  expect(before[0]).toBe("Corner house, Fennel Row");
  await appendRows(workbook, sitesSheet, sites);
  await appendRows(workbook, surfacesSheet, [{ siteId: last, surface: "Roof", cover: "roof", area: 640 }]);
  await workbook.calculated();
  expect(await designOf(last)).toEqual([`Further yard ${sites.length}`, 640]);
  expect(await designOf("Y-001")).toEqual(before);
  expect(readRecords(sitesSheet, (await workbook.readSheets(["Sites"]))[0] ?? []).rows.length).toBeGreaterThan(sitesSheet.rows);
});
