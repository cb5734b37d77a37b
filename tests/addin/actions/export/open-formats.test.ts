import { check } from "@placemarkio/check-geojson";
import { parse as parseCsv } from "csv-parse/sync";
import { unzipSync } from "fflate";
import ICAL from "ical.js";
import { beforeAll, describe, expect, test } from "vitest";
import { calendarFile } from "../../../../addin/actions/export/calendar-file.ts";
import { geoJsonFile } from "../../../../addin/actions/export/geojson-file.ts";
import { tableFiles } from "../../../../addin/actions/export/table-files.ts";
import { yardPoints } from "../../../../addin/actions/export/yard-points.ts";
import { readProgram, type Program } from "../../../../addin/actions/program/read-program.ts";
import { followUpsSheet } from "../../../../addin/records/follow-ups.ts";
import { firstRow } from "../../../../addin/records/place.ts";
import { placeSettingCell } from "../../../../addin/records/program.ts";
import { recordSheets } from "../../../../addin/records/program-sheets.ts";
import { sitesSheet } from "../../../../addin/records/sites.ts";
import { visitsSheet } from "../../../../addin/records/visits.ts";
import type { WorkbookInMemory } from "../../workbook-in-memory.ts";
import { DAY, home, put, type } from "../field-copy/copies.ts";

const HOSTILE = 'Comma, semicolon; back\\slash "quoted"\nsecond line é 雨の庭 🌧';

async function program(): Promise<{ readonly workbook: WorkbookInMemory; readonly read: Program }> {
  const workbook = await home();
  // A town that does not exist, at a place in the middle of a state.
  await type(workbook, sitesSheet, 0, {
    latitude: 40.1234567,
    longitude: -88.2,
    owner: "R. Elder",
    telephone: "555-0100",
    email: "elder@gardens.example",
  });
  await type(workbook, sitesSheet, 1, { latitude: -88.3, longitude: 40.2, yard: HOSTILE });
  await workbook.writeValues([{ range: placeSettingCell(), values: [["Illinois"]] }]);
  await put(workbook, followUpsSheet, [
    { siteId: "Y-002", kind: "repair", due: DAY + 9, action: "fill the berm" },
    { siteId: "Y-002", kind: "repair", due: DAY + 9, action: "reset the stones" },
    { siteId: "Y-002", kind: "1 week", due: DAY, done: DAY },
  ]);
  await put(workbook, visitsSheet, [
    { siteId: "Y-001", date: DAY, stage: "ticket", step: "ticket-number", answer: "T-9;1", by: "Ash" },
    { siteId: "Y-001", date: DAY, stage: "ticket", step: "ticket-expires", answer: "2026-05-20", by: "Ash" },
    { siteId: "Y-001", date: DAY, stage: "pre-dig", step: "dig-date", answer: "2026-05-12", by: "Ash" },
  ]);
  return { workbook, read: await readProgram(workbook) };
}

describe("Yards on a map", () => {
  let read: Program;
  let workbook: WorkbookInMemory;

  beforeAll(async () => {
    ({ read, workbook } = await program());
  });

  const choices = { units: "metric", withPersons: false, withOwnColumns: false } as const;

  // RFC 7946, 3.1.1: longitude first. Read by check-geojson, which holds a file against that document.
  test("are features that another reader takes, longitude first, with figures that name their unit", () => {
    const { content } = geoJsonFile(read, read.yards, choices);
    const file = check(content);
    expect(file).toMatchObject({
      type: "FeatureCollection",
      features: [{ id: "Y-001", geometry: { type: "Point", coordinates: [-88.2, 40.123457] } }],
    });
    expect(content).toContain('"contributing_area_m2"');
  });

  test("leave persons and people's own columns out unless they are asked for", async () => {
    const beside = Object.keys(sitesSheet.columns).length;
    await workbook.writeValues(
      [["Key number"], ["12"]].map((values, down) => ({
        range: { sheet: sitesSheet.name, row: firstRow(sitesSheet) - 1 + down, column: beside, rows: 1, columns: 1 },
        values: [values],
      })),
    );
    const again = await readProgram(workbook);
    const bare = geoJsonFile(again, again.yards, choices).content;
    for (const personal of ["Elder", "555-0100", "elder@", '12"', "gate code"]) expect(bare).not.toContain(personal);
    const whole = geoJsonFile(again, again.yards, { ...choices, withPersons: true, withOwnColumns: true }).content;
    expect(check(whole)).toMatchObject({ features: [{ properties: { owner: "R. Elder", "own: Key number": "12" } }] });
  });

  test("name each yard that is left out, and why", () => {
    expect(yardPoints(read, read.yards).leftOut).toEqual([
      { siteId: "Y-002", sentence: "its latitude and longitude look the wrong way round: latitude is the one from the equator." },
      { siteId: "Y-003", sentence: "it has no coordinates." },
    ]);
  });

  test.each([
    ["the wrong way round for the state", 40.2, -88.3, -88.3, 40.2, /wrong way round/],
    ["without the sign of America", 40.2, -88.3, 40.2, 88.3, /not negative/],
    ["in the sea", 40.2, -88.3, 0, 0, /in the sea/],
    ["beyond the poles", 40.2, -88.3, 120, 95, /from -90 to 90/],
    ["of one number", 40.2, -88.3, 40.2, null, /no longitude/],
  ])("are not drawn %s", async (_, latitude, longitude, wrongLatitude, wrongLongitude, says) => {
    const one = await home();
    await one.writeValues([{ range: placeSettingCell(), values: [["Illinois"]] }]);
    await type(one, sitesSheet, 0, { latitude, longitude });
    await type(one, sitesSheet, 1, { latitude: wrongLatitude, longitude: wrongLongitude });
    const { points, leftOut } = yardPoints(await readProgram(one), (await readProgram(one)).yards);
    expect(points.map(({ yard }) => yard.siteId)).toEqual(["Y-001"]);
    expect(leftOut.find(({ siteId }) => siteId === "Y-002")?.sentence).toMatch(says);
  });

  test("are told by where the others lie in a program outside the states", async () => {
    const one = await home();
    await type(one, sitesSheet, 0, { latitude: 52.1, longitude: 11.6 });
    await type(one, sitesSheet, 1, { latitude: 52.2, longitude: 11.5 });
    await type(one, sitesSheet, 2, { latitude: 11.6, longitude: 52.1 });
    const read = await readProgram(one);
    expect(yardPoints(read, read.yards).leftOut).toEqual([
      { siteId: "Y-003", sentence: "its latitude and longitude look the wrong way round: latitude is the one from the equator." },
    ]);
  });
});

describe("Days of the program as a calendar", () => {
  const origin = { workbook: "0123456789abcdef", madeAt: new Date(Date.UTC(2026, 4, 4, 7, 30, 5)) };
  let read: Program;

  beforeAll(async () => {
    ({ read } = await program());
  });

  const eventsOf = (content: string) =>
    new ICAL.Component(ICAL.parse(content) as never[]).getAllSubcomponents("vevent").map((event) => new ICAL.Event(event));

  // Read by ical.js, which knows RFC 5545.
  test("are whole days that another reader takes: ticket ends, open follow-ups and dig days", () => {
    const events = eventsOf(calendarFile(read.yards, { withPersons: false }, origin));
    expect(events.map(({ summary, startDate, endDate }) => [summary, startDate.toString(), endDate.toString(), startDate.isDate])).toEqual([
      ["Ticket T-9;1 ends, Y-001 Hazel corner", "2026-05-20", "2026-05-21", true],
      ["Follow-up: 1 week, Y-001 Hazel corner", "2026-06-03", "2026-06-04", true],
      ["Dig day, Y-001 Hazel corner", "2026-05-12", "2026-05-13", true],
      [`Follow-up: repair, Y-002 ${HOSTILE}`, "2026-05-13", "2026-05-14", true],
      [`Follow-up: repair, Y-002 ${HOSTILE}`, "2026-05-13", "2026-05-14", true],
      [`Dig day, Y-002 ${HOSTILE}`, "2026-05-04", "2026-05-05", true],
    ]);
    expect(events[0]?.component.getFirstPropertyValue("dtstamp")?.toString()).toBe("2026-05-04T07:30:05Z");
  });

  // RFC 5545, 3.1: lines of at most 75 octets, each ended by CR LF.
  test("stand in lines that are short enough, of whole characters", () => {
    const content = calendarFile(read.yards, { withPersons: true }, origin);
    const lines = content.split("\r\n");
    expect(content.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
    for (const line of lines) expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
    expect(content).not.toContain("\ufffd");
    expect(eventsOf(content)[0]?.description).toContain("R. Elder, 555-0100, elder@gardens.example");
  });

  test("keep their names from file to file, no two alike, and leave persons out unless they are asked for", () => {
    const content = calendarFile(read.yards, { withPersons: false }, origin);
    const later = calendarFile(read.yards, { withPersons: false }, { ...origin, madeAt: new Date() });
    const names = eventsOf(content).map(({ uid }) => uid);
    expect(eventsOf(later).map(({ uid }) => uid)).toEqual(names);
    expect(new Set(names).size).toBe(names.length);
    expect(content).not.toMatch(/Elder|555-0100/);
  });
});

describe("Every sheet as a table", () => {
  let files: ReadonlyMap<string, readonly string[][]>;

  beforeAll(async () => {
    const { workbook } = await program();
    const beside = Object.keys(sitesSheet.columns).length;
    await workbook.writeValues(
      [["Dog's name"], ["=Bracken"]].map((values, down) => ({
        range: { sheet: sitesSheet.name, row: firstRow(sitesSheet) - 1 + down, column: beside, rows: 1, columns: 1 },
        values: [values],
      })),
    );
    const { content, leftOut } = await tableFiles(workbook);
    expect(leftOut).toEqual([]);
    files = new Map(
      Object.entries(unzipSync(content)).map(([name, bytes]) => [name, parseCsv(Buffer.from(bytes), { bom: true }) as string[][]]),
    );
  });

  // Read by csv-parse, RFC 4180.
  test("is read by another reader: a file a sheet, days as days, texts that stay texts", () => {
    expect([...files.keys()].sort()).toEqual([...recordSheets.map(({ name }) => `${name}.csv`), "Data dictionary.csv"].sort());
    const [headings = [], ...rows] = files.get("Sites.csv") ?? [];
    expect(headings.at(-1)).toBe("Dog's name");
    expect(rows.length).toBe(3);
    expect(rows[0]?.at(-1)).toBe("'=Bracken");
    expect(rows[1]?.[headings.indexOf("Yard")]).toBe(HOSTILE);
    const [visitHeadings = [], first = []] = files.get("Visits.csv") ?? [];
    expect(first[visitHeadings.indexOf("Date")]).toBe("2026-05-04");
  });

  test("has a line of the data dictionary for each of its columns, with its unit and what it means", () => {
    const [, ...lines] = files.get("Data dictionary.csv") ?? [];
    for (const sheet of recordSheets) {
      const [headings = []] = files.get(`${sheet.name}.csv`) ?? [];
      const told = lines.filter(([name]) => name === sheet.name).map(([, column]) => column);
      expect(told).toEqual(headings);
    }
    expect(lines.find(([sheet, column]) => sheet === "Design" && column === "Floor area (sq ft | m²)")?.slice(2, 5)).toEqual([
      "sq ft",
      "m²",
      "computed, a number",
    ]);
    expect(lines.filter(([, , , , kind, , meaning]) => kind !== "a person's own column" && (meaning ?? "") === "")).toEqual([]);
  });
});
