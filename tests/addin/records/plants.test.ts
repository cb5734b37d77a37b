import { expect, test } from "vitest";
import { plantPalette } from "../../../addin/records/plant-palette.ts";
import { plantsSheet, startingPlants } from "../../../addin/records/plants.ts";
import { readRecords } from "../../../addin/records/read-records.ts";

const headings = Object.values(plantsSheet.columns).map(({ heading }) => heading);
const { rows, slips } = readRecords(plantsSheet, [headings, ...startingPlants]);
const plant = (name: string) => rows.find(({ record }) => record.scientificName === name)?.record;

test("every plant of the palette is a clean record with its list year and the source of its ratings", () => {
  expect(slips).toEqual([]);
  expect(rows).toHaveLength(55);
  expect(new Set(plantPalette.map(([name]) => name)).size).toBe(55);
  for (const { record } of rows)
    expect(record).toMatchObject({ listYear: 2020, ratingSource: expect.stringContaining("National Wetland Plant List") as unknown });
});

// National Wetland Plant List, national download 2020 v1, read in transcription; corrected cells of the first reading.
test.each([
  ["Aquilegia canadensis", { easternMountainsAndPiedmont: "FAC", atlanticAndGulfCoastalPlain: "FACU" }],
  ["Baptisia australis", { midwest: "FACU", westernMountainsValleysAndCoast: null }],
  ["Eutrochium fistulosum", { midwest: "OBL", northcentralAndNortheast: "FACW" }],
  ["Rudbeckia fulgida", { midwest: "OBL", easternMountainsAndPiedmont: "FAC" }],
  ["Andropogon gerardii", { northcentralAndNortheast: "FACU" }],
  ["Mahonia aquifolium", { westernMountainsValleysAndCoast: "FACU", aridWest: "UPL" }],
  ["Echinacea purpurea", { midwest: "NL", aridWest: "NL" }],
])("%s is rated as the list of 2020 has it", (name, ratings) => {
  expect(plant(name)).toMatchObject(ratings);
});

test("a plant's zone is not taken from its rating: an obligate of the Midwest's wetlands may grow on a garden's rim", () => {
  expect(plant("Rudbeckia fulgida")).toMatchObject({ midwest: "OBL", zone: "B C" });
});

test("there are plants for every zone, and every rated plant outside the west has a spacing", () => {
  for (const zone of ["A", "B", "C"]) expect(rows.filter(({ record }) => record.zone?.includes(zone)).length, zone).toBeGreaterThan(5);
  for (const { record } of rows) if (record.zone !== null) expect(record.spacingFeet, record.scientificName ?? "").toBeGreaterThan(0);
});
