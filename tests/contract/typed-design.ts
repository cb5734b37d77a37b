/** What Design must show, worked out from the typed cells of a workbook alone, by the calculations and by no formula. */
import { findPlace, type Place } from "../../addin/records/place.ts";
import { holeTestsSheet, READINGS } from "../../addin/records/hole-tests.ts";
import { programSettings, programSheet, type ProgramKey } from "../../addin/records/program.ts";
import type { KeyOf, Sheet } from "../../addin/records/sheet.ts";
import { sitesSheet } from "../../addin/records/sites.ts";
import { surfacesSheet } from "../../addin/records/surfaces.ts";
import type { CellValue, Workbook } from "../../addin/workbook/port.ts";
import { BASIN_SHAPES, USUAL_LENGTH_TO_WIDTH } from "../../functions/basin/basin-shape.ts";
import { designSite } from "../../functions/basin/site-design.ts";
import { takenInchesPerHour } from "../../functions/infiltration/design-rate.ts";
import { readingsWithWater } from "../../functions/infiltration/drop-rate.ts";
import { holeRateInchesPerHour } from "../../functions/infiltration/hole-rate.ts";
import { COVERS, SOIL_GROUPS } from "../../functions/published/tr-55.ts";
import { fromUs, toUs } from "../../functions/quantities.ts";
import { groundSlopePercent } from "../../functions/siting/ground-slope.ts";
import { siteRunoff } from "../../functions/runoff/site-runoff.ts";

/** By row of Sites that bears an ID. */
export interface ExpectedYard {
  readonly siteId: string;
  readonly contributingArea: number | "";
  readonly runoff: number | "";
  readonly holes: number;
  readonly testedRate: number | "";
  /** What SITEDESIGN is asked for: null where no water or no rate is known of the yard. */
  readonly basin: ExpectedBasin | null;
  /** Design must name the same yard. */
  readonly yard: CellValue;
}

export interface ExpectedBasin {
  readonly fits: boolean;
  /** Null where no basin holds the storm. */
  readonly size: {
    readonly pondingDepth: number;
    readonly floorArea: number;
    readonly waterHeld: number;
    readonly digVolume: number;
  } | null;
}

type Rows = readonly (readonly CellValue[])[];

export async function expectedYards(workbook: Pick<Workbook, "readSheets">): Promise<readonly ExpectedYard[]> {
  const [sites = [], surfaces = [], holes = [], program = []] = await workbook.readSheets(
    [sitesSheet, surfacesSheet, holeTestsSheet, programSheet].map(({ name }) => name),
  );
  const site = cellsOf(sitesSheet, sites);
  const surface = cellsOf(surfacesSheet, surfaces);
  const hole = cellsOf(holeTestsSheet, holes);
  const setting = (key: ProgramKey) => settingIn(program, key);
  const storm = setting("stormDepthInches");
  const idOf = (value: CellValue) => String(value ?? "").trim();
  return site.rows.flatMap((row): ExpectedYard[] => {
    const siteId = idOf(site.at(row, "siteId"));
    if (siteId === "") return [];
    const units = site.at(row, "units") === "metric" ? "metric" : "us";
    const typedStorm = site.at(row, "stormDepth");
    const stormInches = typeof typedStorm === "number" ? toUs("depth", typedStorm, units) : storm;
    const group = SOIL_GROUPS.find((one) => one === site.at(row, "soilGroup")) ?? "D";
    const own = surface.rows.filter((one) => idOf(surface.at(one, "siteId")) === siteId && typeof surface.at(one, "area") === "number");
    const drained = siteRunoff(
      stormInches,
      own.map((one) => ({
        cover: COVERS.find((cover) => cover === surface.at(one, "cover")) ?? null,
        areaSquareFeet: toUs("area", Number(surface.at(one, "area")), units),
        shareDrainingHere: Number(surface.at(one, "share") ?? 1),
      })),
      group,
    );
    const rates = hole.rows
      .filter((one) => idOf(hole.at(one, "siteId")) === siteId)
      .flatMap((one): number[] => {
        const readings = Array.from({ length: READINGS }, (_, place) => ({
          minutes: hole.at(one, `minutes${place + 1}` as KeyOf<typeof holeTestsSheet>),
          water: hole.at(one, `water${place + 1}` as KeyOf<typeof holeTestsSheet>),
        })).filter(({ minutes, water }) => typeof minutes === "number" && typeof water === "number");
        if (readings.length < 2) return [];
        const inInches = readings.map(({ minutes, water }) => ({
          minutes: Number(minutes),
          waterDepthInches: toUs("depth", Number(water), units),
        }));
        return [holeRateInchesPerHour(readingsWithWater(inInches), toUs("depth", Number(hole.at(one, "holeDiameter")), units))];
      });
    const testedInchesPerHour = rates.length === 0 ? null : takenInchesPerHour(rates, "geometric mean");
    const inInches = (key: "pondingDepth" | "mediaDepth") => {
      const typed = site.at(row, key);
      return typeof typed === "number" ? toUs("depth", typed, units) : undefined;
    };
    const numberAt = (key: "slopeDrop" | "slopeRun" | "sideSlope" | "lengthToWidth") => {
      const typed = site.at(row, key);
      return typeof typed === "number" ? typed : undefined;
    };
    const [drop, run] = [numberAt("slopeDrop"), numberAt("slopeRun")];
    const designed =
      own.length === 0 || testedInchesPerHour === null
        ? null
        : designSite({
            contributingSquareFeet: drained.contributingSquareFeet,
            testedInchesPerHour,
            reductionFactor: setting("reductionFactor"),
            stormInches,
            runoffCubicFeet: drained.runoffCubicFeet,
            pondingInches: inInches("pondingDepth"),
            mediaInches: inInches("mediaDepth") ?? 0,
            mulchInches: setting("mulchDepthInches"),
            sideSlope: numberAt("sideSlope") ?? setting("sideSlope"),
            drainHours: setting("drainHours"),
            outline: {
              shape: BASIN_SHAPES.find((shape) => shape === site.at(row, "shape")) ?? "ellipse",
              lengthToWidth: numberAt("lengthToWidth") ?? USUAL_LENGTH_TO_WIDTH,
            },
            groundSlopePercent: drop === undefined || run === undefined ? 0 : groundSlopePercent(drop, run),
            limits: {
              largestFloorShare: setting("largestFloorShare"),
              leastFloorSquareFeet: setting("leastFloorSquareFeet"),
              leastDesignInchesPerHour: setting("leastDesignRateInchesPerHour"),
              longestEmptyHours: setting("longestEmptyHours"),
              leastStormInches: setting("leastStormInches"),
              largestStormInches: setting("largestStormInches"),
            },
          });
    return [
      {
        siteId,
        basin: designed && {
          fits: designed.breaches.length === 0,
          size: designed.basin
            ? {
                pondingDepth: fromUs("depth", designed.basin.pondingInches, units),
                floorArea: fromUs("area", designed.basin.floorSquareFeet, units),
                waterHeld: fromUs("waterVolume", designed.basin.heldCubicFeet, units),
                digVolume: fromUs("earthVolume", designed.basin.dig.wholeCubicYards, units),
              }
            : null,
        },
        yard: site.at(row, "yard"),
        contributingArea: own.length === 0 ? "" : fromUs("area", drained.contributingSquareFeet, units),
        runoff: own.length === 0 ? "" : fromUs("waterVolume", drained.runoffCubicFeet, units),
        holes: rates.length,
        testedRate: testedInchesPerHour === null ? "" : fromUs("rate", testedInchesPerHour, units),
      },
    ];
  });
}

function cellsOf<S extends Sheet>(sheet: S, values: Rows) {
  const found = findPlace(sheet, values);
  if (!("place" in found)) throw new Error(`${sheet.name} has lost a heading.`);
  const place = found.place as Place<S>;
  return {
    rows: values.map((_, row) => row).slice(place.firstRow),
    at: (row: number, key: KeyOf<S>): CellValue => values[row]?.[place.columnIndex(key)] ?? null,
  };
}

function settingIn(values: Rows, key: ProgramKey): number {
  const row = values.find(([name]) => name === programSettings[key].setting);
  return Number(row?.[1]);
}
