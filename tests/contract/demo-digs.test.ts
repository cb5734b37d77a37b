import { beforeAll, describe, expect, test } from "vitest";
import { builtBasin } from "../../addin/actions/build/record-as-built.ts";
import { basinInputsOf, draftBasin, type Answer, type BasinDraft } from "../../addin/actions/basin/draft-basin.ts";
import { fillDemoProgram } from "../../addin/actions/demo/demo-program.ts";
import { draftLines } from "../../addin/actions/estimate/draft-estimate.ts";
import { draftMaterials } from "../../addin/actions/estimate/draft-materials.ts";
import { placeAsSetUp } from "../../addin/records/place.ts";
import { plantingSheet } from "../../addin/records/planting.ts";
import type { Workbook } from "../../addin/workbook/port.ts";
import { readProgram, type Program, type Yard } from "../../addin/actions/program/read-program.ts";
import { setUpWorkbook } from "../../addin/actions/workbook/set-up-workbook.ts";
import { excelWorkbook } from "../../addin/workbook/excel/excel-workbook.ts";
import { basinDimensions, type BasinDimensions } from "../../taskpane/views/basin/basin-dimensions.ts";
import type { Point } from "../../taskpane/views/basin/plan-geometry.ts";
import { sectionGeometry } from "../../taskpane/views/basin/section-geometry.ts";
import { byColumns } from "../functions/earthwork/by-columns.ts";
import { InMemoryExcel } from "./in-memory-excel.ts";

/** FM 5-434, table 1-1: loam. */
const LOOSE = 1.25;
const COMPACTED = 0.9;

/** Cubic yards or cubic meters: what the lengths of the drawing make of one. */
const volumeIn = { us: 27, metric: 1 } as const;

interface DugYard {
  readonly yard: Yard;
  readonly draft: BasinDraft;
  readonly drawing: BasinDimensions;
}

let workbook: Workbook;
let program: Program;
let dug: readonly DugYard[];

beforeAll(async () => {
  new InMemoryExcel();
  workbook = excelWorkbook((error) => expect.fail(String(error)));
  await setUpWorkbook(workbook);
  await fillDemoProgram(workbook);
  program = await readProgram(workbook);
  dug = program.yards.flatMap((yard) => {
    const draft = draftBasin(basinInputsOf(yard), program.settings);
    const drawing = basinDimensions(draft, program.settings.mulchDepthInches);
    return drawing === null ? [] : [{ yard, draft, drawing }];
  });
});

const valueOf = (answer: Answer | undefined) => (answer !== undefined && "value" in answer ? answer.value : Number.NaN);

/** Height of a drawn line of points, left to right, at a place along it. */
function heightOn(line: readonly Point[], x: number): number {
  const after = line.findIndex((point) => point.x >= x);
  const [left, right] = [line[after - 1], line[after]];
  if (left === undefined || right === undefined) return Number.NaN;
  return right.x === left.x ? right.y : left.y + ((right.y - left.y) * (x - left.x)) / (right.x - left.x);
}

/** What the section's points enclose, turned around the plan: nothing of it is asked of the functions that compute it. */
function asDrawn(drawing: BasinDimensions): { readonly cut: number; readonly fill: number } {
  const section = sectionGeometry(drawing);
  const halfFloor = section.floorDownhill.x;
  const rim = section.downhillRim.x - halfFloor;
  const [, , , , ...mulchFoot] = section.mulch;
  const underMulch = [...mulchFoot].reverse();
  const underMix = Math.min(...section.mix.map(({ y }) => y));
  const [left, right] = section.ground;
  const groundHeight = (down: number) => left.y + ((right.y - left.y) * (down - left.x)) / (right.x - left.x);
  const crest = { inner: section.crestInner.x - halfFloor, outer: section.crestOuter.x - halfFloor };
  const toe = (section.toe?.x ?? Number.NaN) - halfFloor;
  const outerFace = [section.crestOuter, section.toe as Point];
  const rising = section.crestInner.y === section.downhillRim.y ? 0 : (crest.inner - rim) / (section.crestInner.y - section.downhillRim.y);
  const within = (out: number) => (out < 0 ? underMix : out < rim ? heightOn(underMulch, halfFloor + out) : undefined);
  const cutTop = -section.cutTop.x - halfFloor;
  return byColumns(
    {
      shape: drawing.shape,
      floorLength: drawing.floorLength,
      floorWidth: drawing.floorWidth,
      groundHeight,
      dugHeight: (out) => within(out) ?? (out - rim) / rising,
      placedHeight: (out) =>
        within(out) ??
        (out < crest.inner ? (out - rim) / rising : out < crest.outer ? drawing.freeboard : heightOn(outerFace, halfFloor + out)),
      edges: [0, rim, crest.inner, crest.outer, toe, cutTop].sort((one, other) => one - other),
    },
    200,
  );
}

describe("the demo's yards", () => {
  test("are dug in both systems of units, on level ground and on slopes, with and without soil mix", () => {
    expect(dug.length).toBeGreaterThan(8);
    expect(new Set(dug.map(({ draft }) => draft.units))).toEqual(new Set(["us", "metric"]));
    expect(dug.some(({ draft }) => (draft.mediaDepth ?? 0) > 0)).toBe(true);
    expect(dug.some(({ draft }) => (draft.groundSlopePercent ?? 0) > 4)).toBe(true);
  });

  test("are dug on Design as the section draws them, column by column, to the last digit shown", () => {
    for (const { yard, draft, drawing } of dug) {
      const drawn = asDrawn(drawing).cut / volumeIn[draft.units];
      expect(Math.abs(Number(yard.design.digVolume) - drawn), yard.siteId).toBeLessThan(0.005);
    }
  });

  test("have one dig: Design's, the draft's and CUTFILL's cut", () => {
    for (const { yard, draft } of dug) {
      expect(valueOf(draft.digVolume), yard.siteId).toBe(yard.design.digVolume);
      if (draft.earthwork !== null) expect(valueOf(draft.earthwork.cut)).toBeCloseTo(valueOf(draft.digVolume), 11);
    }
  });

  test("leave over what berm, mulch and soil mix leave of it, and swell to 1.25 of it", () => {
    for (const { yard, draft, drawing } of dug) {
      expect(Number(yard.design.looseVolume), yard.siteId).toBeCloseTo(LOOSE * Number(yard.design.digVolume), 11);
      if (draft.earthwork === null) continue;
      const { cut, fill } = asDrawn(drawing);
      const leftOver = (cut - fill / COMPACTED) / volumeIn[draft.units];
      expect(Math.abs(valueOf(draft.earthwork.leftOver) - leftOver), yard.siteId).toBeLessThan(0.005);
    }
  });

  test("are hauled, heaped and dug by hand from that one dig", () => {
    for (const { yard, draft } of dug) {
      const dig = Number(yard.design.digVolume);
      const order = { soil: "loam", loadVolume: 2, loadWeight: null, bagSize: null } as const;
      const materials = draftMaterials(draft, program.settings, order);
      expect(valueOf(materials.inPlace), yard.siteId).toBe(dig);
      expect(valueOf(materials.loose)).toBeCloseTo(LOOSE * dig, 11);
      expect(valueOf(materials.loads ?? undefined)).toBe(Math.ceil((LOOSE * dig) / 2));
      const line = (item: string) => draftLines(program, yard, draft).lines.find((one) => one.item === item)?.quantity;
      // Planning Planet wiki, pits by hand (read): 0.43 cu m an hour in firm soil; volunteers 1.5 times as long (common practice).
      const cubicMeters = dig * (draft.units === "us" ? 0.764554857984 : 1);
      expect(line("volunteer hour")).toBe(Math.ceil((cubicMeters / 0.43) * 1.5 * 100 - 1e-6) / 100);
      const kept = draft.mix.find(({ material }) => material === "native soil")?.volume ?? 0;
      const left = draft.earthwork === null ? LOOSE * dig : LOOSE * Math.max(0, valueOf(draft.earthwork.leftOver));
      // Priced by the cubic yard.
      const hauled = Math.max(0, left - kept) / (draft.units === "us" ? 1 : 0.764554857984);
      expect(line("soil disposal") ?? 0).toBeCloseTo(Math.ceil(hauled * 100 - 1e-6) / 100, 9);
    }
  });

  test("has Design's plants: those of the plan where there is one, else by spacing over the rim area", () => {
    for (const { yard, draft } of dug) expect(valueOf(draft.plants), yard.siteId).toBe(yard.design.plants);
    expect(new Set(dug.map(({ draft }) => draft.plantsFrom))).toEqual(new Set(["plan", "spacing"]));
    const planned = dug.find(({ yard }) => yard.siteId === "Y-010");
    // 15, 9 and 7 planned on Planting.
    expect(planned?.yard.design.plants).toBe(31);
  });

  test("hold as much when they are measured as they are drawn", () => {
    for (const { yard, drawing } of dug) {
      const depth = (length: number) => (drawing.units === "us" ? length * 12 : length * 1000);
      const built = builtBasin(
        {
          shape: drawing.shape,
          floorLength: drawing.floorLength,
          floorWidth: drawing.floorWidth,
          pondingDepth: depth(drawing.pondingDepth),
          sideSlope: drawing.sideSlope,
          mediaDepth: depth(drawing.mixDepth),
          sillWidth: null,
          lowestBerm: null,
          drainHours: null,
        },
        drawing.units,
      );
      expect(built.waterHeld, yard.siteId).toBeCloseTo(Number(yard.design.waterHeld), 9);
      expect(built.rimArea).toBeCloseTo(Number(yard.design.rimArea), 9);
    }
  });

  // Last, since it types into the workbook: a clump planted and never planned is counted as the list of plants counts it.
  test("has Design's plants where some were planted that nobody had planned", async () => {
    const clump = program.yards.flatMap(({ clumps }) => clumps).find(({ record }) => record.siteId === "Y-010");
    if (clump === undefined) throw new Error("Y-010 has no plan.");
    const place = placeAsSetUp(plantingSheet);
    await workbook.writeValues([
      { range: place.cell(clump.row, "planned"), values: [[null]] },
      { range: place.cell(clump.row, "planted"), values: [[4]] },
    ]);
    await workbook.calculated();
    const changed = (await readProgram(workbook)).yards.find(({ siteId }) => siteId === "Y-010");
    const others = 31 - Number(clump.record.planned);
    expect(changed?.design.plants).toBe(others + 4);
    expect(changed && valueOf(draftBasin(basinInputsOf(changed), program.settings).plants)).toBe(others + 4);
  });
});
