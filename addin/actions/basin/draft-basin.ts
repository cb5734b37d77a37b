import { isCellError, type Cell, type CellInput } from "../../../functions/worksheet/calling/cell.ts";
import { BASIN_SHAPES, USUAL_OUTLINE, type BasinShape } from "../../../functions/basin/basin-shape.ts";
import { fromUs, INCHES_PER_FOOT, toUs } from "../../../functions/quantities.ts";
import { ROOF_RUNOFF_SHARE } from "../../../functions/runoff/runoff-volume.ts";
import { basinSize } from "../../../functions/worksheet/basin.ts";
import { plantCount } from "../../../functions/worksheet/planting.ts";
import { zoneAreas } from "../../../functions/worksheet/plants.ts";
import { siteDesign } from "../../../functions/worksheet/site-design.ts";
import { siteRunoff } from "../../../functions/worksheet/site-runoff.ts";
import { layerVolume, soilMix, soilState } from "../../../functions/worksheet/soil.ts";
import { isErrorCode, type CellValue } from "../../workbook/port.ts";
import { designLimits, type SettingValues } from "../../records/program.ts";
import type { SurfaceRow } from "../../records/surfaces.ts";
import type { UnitSystem } from "../../records/site-terms.ts";
import { basinEarthwork, type BasinEarthwork, type RimSize } from "./basin-earthwork.ts";
import { plannedPlants } from "../planting/plant-counts.ts";
import type { Yard } from "../program/read-program.ts";
import { answer, rowOf, type Answer } from "../worksheet-answers.ts";

export type { Answer } from "../worksheet-answers.ts";

/** What a coordinator chooses of a basin, as cells of the yard's row of Sites; blank where the program's setting or a default applies. */
export interface BasinChoices {
  readonly stormDepth: CellValue;
  readonly pondingDepth: CellValue;
  readonly mediaDepth: CellValue;
  readonly sideSlope: CellValue;
  readonly mixRecipe: CellValue;
  readonly shape: CellValue;
  /** Across the slope to down it. */
  readonly lengthToWidth: CellValue;
}

/** All that a basin's draft rests on, in the yard's units. */
export interface BasinInputs extends BasinChoices {
  readonly units: UnitSystem;
  readonly contributingArea: CellValue;
  readonly testedRate: CellValue;
  readonly groundSlopePercent: CellValue;
  readonly soilGroup?: CellValue;
  /** What drains here, each by the rule of its own cover. Without any, the contributing area runs off as roof does. */
  readonly surfaces?: readonly Pick<SurfaceRow, "cells">[];
  /** Of the planting plan; null where there is none, and plants are counted by their spacing. */
  readonly plannedPlants: number | null;
}

/** The same quantities as the yard's row on Design, from the same worksheet functions. */
export interface BasinDraft {
  readonly units: UnitSystem;
  readonly shape: BasinShape;
  readonly lengthToWidth: number;
  readonly stormDepth: number | null;
  readonly sideSlope: number | null;
  readonly mediaDepth: number | null;
  readonly drainHours: number;
  readonly designRate: Answer;
  readonly pondingDepth: Answer;
  readonly floorArea: Answer;
  readonly rimArea: Answer;
  readonly runoff: Answer;
  /** How much of the storm runs off each cover, in words. */
  readonly runoffRule: string;
  /** Of the storm's rain on all that drains here, what runs off. */
  readonly runoffShare: number;
  readonly waterHeld: Answer;
  readonly drawdownHours: Answer;
  readonly ruleArea: Answer;
  readonly digVolume: Answer;
  /** "fits", or why it does not. */
  readonly status: string;
  readonly floorLength: Answer;
  readonly floorWidth: Answer;
  readonly floorEdge: Answer;
  /** The full water's edge across the slope and down it. */
  readonly rimLength: Answer;
  readonly rimWidth: Answer;
  /** Planting zones: the floor, the sloping sides, a ring of the berm's crest. */
  readonly zones: Readonly<Record<"A" | "B" | "C", Answer>>;
  readonly groundSlopePercent: number | null;
  /** Null while the ground slope is not measured. */
  readonly earthwork: BasinEarthwork | null;
  readonly looseVolume: Answer;
  readonly mixVolume: Answer;
  /** What to buy or keep for the mix, loose; empty when no recipe is chosen. */
  readonly mix: readonly { readonly material: string; readonly volume: number }[];
  /** Why the mix cannot be worked out, when a recipe is chosen and it cannot. */
  readonly mixSentence: string | null;
  readonly mulchVolume: Answer;
  /** Of the planting plan where there is one, else by the spacing on Program. */
  readonly plants: Answer;
  readonly plantsFrom: "plan" | "spacing";
  readonly cautions: readonly string[];
}

/** The inputs as the sheet holds them now. */
export function basinInputsOf(yard: Yard): BasinInputs {
  const { cells } = yard.site;
  return {
    units: yard.units,
    contributingArea: blankAsNull(yard.design.contributingArea),
    testedRate: blankAsNull(yard.design.testedRate),
    stormDepth: cells.stormDepth,
    pondingDepth: cells.pondingDepth,
    mediaDepth: cells.mediaDepth,
    sideSlope: cells.sideSlope,
    mixRecipe: cells.mixRecipe,
    shape: cells.shape,
    lengthToWidth: cells.lengthToWidth,
    groundSlopePercent: blankAsNull(yard.design.groundSlopePercent),
    soilGroup: cells.soilGroup,
    surfaces: yard.surfaces,
    plannedPlants: plannedPlants(yard.clumps),
  };
}

export function draftBasin(inputs: BasinInputs, settings: SettingValues): BasinDraft {
  const { units, mixRecipe } = inputs;
  const { stormDepth, sideSlope, mediaDepth, runoffRule, designInputs, design, size, rim } = sizeBasin(inputs, settings);
  const [designRate, pondingDepth, floorArea, rimArea, runoff, waterHeld, drawdownHours, ruleArea, digVolume, status] = design;
  const [floorLength, floorWidth, floorEdge] = size;
  const [zoneA, zoneB, zoneC] = rowOf(zoneAreas, [floorArea, pondingDepth, sideSlope, null, inputs.shape, inputs.lengthToWidth, units], 3);
  const [mixVolume] = rowOf(layerVolume, [floorArea, mediaDepth, 0, units], 1);
  const mixInputs: CellInput[] = [mixVolume, mixRecipe, settings.settlingShare, units];
  const mixTable = mixRecipe === null ? [] : soilMix.evaluate(mixInputs);
  const mixFault = mixTable.flat().find(isCellError);
  return {
    units,
    shape: BASIN_SHAPES.find((shape) => shape === inputs.shape) ?? USUAL_OUTLINE.shape,
    lengthToWidth: numberOr(inputs.lengthToWidth, USUAL_OUTLINE.lengthToWidth),
    stormDepth: numberOrNull(stormDepth),
    sideSlope: numberOrNull(sideSlope),
    mediaDepth: numberOrNull(mediaDepth),
    drainHours: settings.drainHours,
    designRate: answer(designRate),
    pondingDepth: answer(pondingDepth),
    floorArea: answer(floorArea),
    rimArea: answer(rimArea),
    runoff: answer(runoff),
    runoffRule,
    runoffShare: shareRunningOff(inputs, runoff, stormDepth),
    waterHeld: answer(waterHeld),
    drawdownHours: answer(drawdownHours),
    ruleArea: answer(ruleArea),
    digVolume: answer(digVolume),
    status: isCellError(status) ? status.sentence : String(status ?? ""),
    floorLength: answer(floorLength),
    floorWidth: answer(floorWidth),
    floorEdge: answer(floorEdge),
    rimLength: rim === null ? answer(floorArea) : { value: rim.length },
    rimWidth: rim === null ? answer(floorArea) : { value: rim.width },
    zones: { A: answer(zoneA), B: answer(zoneB), C: answer(zoneC) },
    groundSlopePercent: typeof inputs.groundSlopePercent === "number" ? inputs.groundSlopePercent : null,
    earthwork:
      rim === null
        ? null
        : basinEarthwork(
            {
              ...inputs,
              floorLength,
              floorWidth,
              pondingDepth,
              sideSlope,
              mediaDepth,
              mulchDepth: fromUs("depth", settings.mulchDepthInches, units),
            },
            rim,
          ),
    looseVolume: answer(rowOf(soilState, [digVolume, "in place", "loose", "loam", units], 1)[0]),
    mixVolume: answer(mixVolume),
    mix:
      mixFault !== undefined
        ? []
        : mixTable.flatMap(([material, volume]) => (typeof volume === "number" ? [{ material: String(material), volume }] : [])),
    mixSentence: mixFault?.sentence ?? null,
    mulchVolume: answer(rowOf(layerVolume, [rimArea, fromUs("depth", settings.mulchDepthInches, units), 0, units], 1)[0]),
    plants:
      inputs.plannedPlants === null
        ? answer(rowOf(plantCount, [rimArea, fromUs("length", settings.plantSpacingFeet, units), "triangle", units], 1)[0])
        : { value: inputs.plannedPlants },
    plantsFrom: inputs.plannedPlants === null ? "spacing" : "plan",
    cautions: [...siteDesign.cautionsFor(designInputs), ...(mixRecipe === null ? [] : soilMix.cautionsFor(mixInputs))],
  };
}

/** A basin's size alone, for those who try many. */
export function sizeBasin(inputs: BasinInputs, settings: SettingValues): SizedBasin {
  const { units, shape, lengthToWidth } = inputs;
  const stormDepth = inputs.stormDepth ?? fromUs("depth", settings.stormDepthInches, units);
  const sideSlope = inputs.sideSlope ?? settings.sideSlope;
  const mediaDepth = inputs.mediaDepth ?? 0;
  const { runoff, rule: runoffRule } = runoffOf(inputs, stormDepth);
  const designInputs: CellInput[] = [
    inputs.contributingArea,
    inputs.testedRate,
    settings.reductionFactor,
    stormDepth,
    runoff,
    inputs.pondingDepth,
    mediaDepth,
    fromUs("depth", settings.mulchDepthInches, units),
    sideSlope,
    settings.drainHours,
    shape,
    lengthToWidth,
    // Ground that is not measured counts as level, as on Design.
    inputs.groundSlopePercent === "#N/A" ? null : inputs.groundSlopePercent,
    ...designLimits(settings, units),
    // A draft is judged by its own inputs.
    null,
    units,
  ];
  const design = rowOf(siteDesign, designInputs, 10);
  const [, pondingDepth, floorArea] = design;
  const size = rowOf(basinSize, [floorArea, shape, lengthToWidth, units], 3);
  return { stormDepth, sideSlope, mediaDepth, runoffRule, designInputs, design, size, rim: rimOf(size, pondingDepth, sideSlope, units) };
}

/** As Design works it out, for the storm of the draft; a blank runoff where nothing on Surfaces drains here yet. */
function runoffOf({ surfaces = [], soilGroup = null, units }: BasinInputs, stormDepth: CellValue): { runoff: Cell; rule: string } {
  const column = (key: "siteId" | "cover" | "area" | "share") => surfaces.map(({ cells }) => [asCell(cells[key])]);
  const lists = (["siteId", "cover", "area", "share"] as const).map(column);
  const [, , runoff = null, rule = ""] = rowOf(siteRunoff, [lists[0]?.[0]?.[0] ?? null, stormDepth, soilGroup, ...lists, units], 4);
  if (surfaces.length === 0 || runoff === "") return { runoff: null, rule: ALL_AS_ROOF };
  return { runoff, rule: isCellError(rule) ? "" : String(rule) };
}

function shareRunningOff({ contributingArea, units }: BasinInputs, runoff: Cell | undefined, stormDepth: CellValue): number {
  if (typeof contributingArea !== "number" || typeof runoff !== "number" || typeof stormDepth !== "number") return ROOF_RUNOFF_SHARE;
  const rainCubicFeet = (toUs("area", contributingArea, units) * toUs("depth", stormDepth, units)) / INCHES_PER_FOOT;
  return rainCubicFeet > 0 ? Math.min(toUs("waterVolume", runoff, units) / rainCubicFeet, 1) : ROOF_RUNOFF_SHARE;
}

const ALL_AS_ROOF = `${ROOF_RUNOFF_SHARE} of the storm off all that drains here`;

function asCell(value: CellValue): Cell {
  return isErrorCode(value) ? { code: value, sentence: "" } : value;
}

export interface SizedBasin {
  readonly stormDepth: CellValue;
  readonly sideSlope: CellValue;
  readonly mediaDepth: CellValue;
  readonly runoffRule: string;
  readonly designInputs: readonly CellInput[];
  /** As SITEDESIGN answers. */
  readonly design: readonly (Cell | undefined)[];
  /** As BASINSIZE answers. */
  readonly size: readonly (Cell | undefined)[];
  readonly rim: RimSize | null;
}

/** The rim's axes are the floor's, each longer by twice the reach of the sides. */
function rimOf(
  [length, width]: readonly (Cell | undefined)[],
  pondingDepth: Cell | undefined,
  sideSlope: CellValue,
  units: UnitSystem,
): RimSize | null {
  if (typeof length !== "number" || typeof width !== "number" || typeof pondingDepth !== "number" || typeof sideSlope !== "number")
    return null;
  const wider = 2 * sideSlope * fromUs("length", toUs("depth", pondingDepth, units) / INCHES_PER_FOOT, units);
  return { length: length + wider, width: width + wider };
}

function numberOr(value: CellValue, otherwise: number): number {
  return typeof value === "number" ? value : otherwise;
}

function numberOrNull(value: CellValue): number | null {
  return typeof value === "number" ? value : null;
}

function blankAsNull(value: CellValue): CellValue {
  return value === "" ? null : value;
}
