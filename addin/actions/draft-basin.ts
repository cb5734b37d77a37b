import { isCellError } from "../../functions/worksheet/cell.ts";
import type { Cell, CellInput } from "../../functions/worksheet/cell.ts";
import { basinSize, siteDesign } from "../../functions/worksheet/basin.ts";
import { plantCount } from "../../functions/worksheet/planting.ts";
import { layerVolume, soilMix, soilState } from "../../functions/worksheet/soil.ts";
import type { WorksheetFunction } from "../../functions/worksheet/worksheet-function.ts";
import type { CellValue } from "../workbook/workbook.ts";
import type { ProgramKey } from "../records/program.ts";
import type { UnitSystem } from "../records/site-terms.ts";
import type { Yard } from "./read-program.ts";

/** A number, or the sentence that says why there is none. */
export type Answer = { readonly value: number } | { readonly sentence: string };

/** What the pane's basin view tunes, in the yard's units; blank where the program's setting or a default applies. */
export interface BasinInputs {
  readonly units: UnitSystem;
  readonly contributingArea: CellValue;
  readonly testedRate: CellValue;
  readonly stormDepth: CellValue;
  readonly pondingDepth: CellValue;
  readonly mediaDepth: CellValue;
  readonly sideSlope: CellValue;
  readonly mixRecipe: CellValue;
}

/** The same quantities as the yard's row on Design, from the same worksheet functions. */
export interface BasinDraft {
  readonly stormDepth: number;
  readonly sideSlope: number;
  readonly mediaDepth: number;
  readonly drainHours: number;
  readonly designRate: Answer;
  readonly pondingDepth: Answer;
  readonly floorArea: Answer;
  readonly rimArea: Answer;
  readonly runoff: Answer;
  readonly waterHeld: Answer;
  readonly drawdownHours: Answer;
  readonly ruleArea: Answer;
  readonly digVolume: Answer;
  /** "fits", or why it does not. */
  readonly status: string;
  readonly floorLength: Answer;
  readonly floorWidth: Answer;
  readonly floorEdge: Answer;
  readonly looseVolume: Answer;
  readonly mixVolume: Answer;
  /** What to buy or keep for the mix, loose; empty when no recipe is chosen. */
  readonly mix: readonly { readonly material: string; readonly volume: number }[];
  /** Why the mix cannot be worked out, when a recipe is chosen and it cannot. */
  readonly mixSentence: string | null;
  readonly mulchVolume: Answer;
  readonly plants: Answer;
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
  };
}

export function draftBasin(inputs: BasinInputs, settings: Readonly<Record<ProgramKey, number>>): BasinDraft {
  const { units, mixRecipe } = inputs;
  const inchesAsDepth = units === "metric" ? 25.4 : 1;
  const feetAsLength = units === "metric" ? 0.3048 : 1;
  const stormDepth = inputs.stormDepth ?? settings.stormDepthInches * inchesAsDepth;
  const sideSlope = inputs.sideSlope ?? settings.sideSlope;
  const mediaDepth = inputs.mediaDepth ?? 0;
  const designInputs: CellInput[] = [
    inputs.contributingArea, inputs.testedRate, settings.reductionFactor, stormDepth, inputs.pondingDepth,
    mediaDepth, sideSlope, settings.drainHours, units,
  ];
  const [designRate, pondingDepth, floorArea, rimArea, runoff, waterHeld, drawdownHours, ruleArea, digVolume, status] = rowOf(siteDesign, designInputs, 10);
  const [floorLength, floorWidth, floorEdge] = rowOf(basinSize, [floorArea, null, null, units], 3);
  const [mixVolume] = rowOf(layerVolume, [floorArea, mediaDepth, 0, units], 1);
  const mixInputs: CellInput[] = [mixVolume, mixRecipe, settings.settlingShare, units];
  const mixTable = mixRecipe === null ? [] : soilMix.evaluate(mixInputs);
  const mixFault = mixTable.flat().find(isCellError);
  return {
    stormDepth: numberOr(stormDepth, Number.NaN),
    sideSlope: numberOr(sideSlope, Number.NaN),
    mediaDepth: numberOr(mediaDepth, Number.NaN),
    drainHours: settings.drainHours,
    designRate: answer(designRate), pondingDepth: answer(pondingDepth), floorArea: answer(floorArea), rimArea: answer(rimArea),
    runoff: answer(runoff), waterHeld: answer(waterHeld), drawdownHours: answer(drawdownHours), ruleArea: answer(ruleArea),
    digVolume: answer(digVolume),
    status: isCellError(status) ? status.sentence : String(status ?? ""),
    floorLength: answer(floorLength), floorWidth: answer(floorWidth), floorEdge: answer(floorEdge),
    looseVolume: answer(rowOf(soilState, [digVolume, "in place", "loose", "loam", units], 1)[0]),
    mixVolume: answer(mixVolume),
    mix: mixFault !== undefined ? [] : mixTable.flatMap(([material, volume]) => (typeof volume === "number" ? [{ material: String(material), volume }] : [])),
    mixSentence: mixFault?.sentence ?? null,
    mulchVolume: answer(rowOf(layerVolume, [rimArea, settings.mulchDepthInches * inchesAsDepth, 0, units], 1)[0]),
    plants: answer(rowOf(plantCount, [rimArea, settings.plantSpacingFeet * feetAsLength, "triangle", units], 1)[0]),
    cautions: [...siteDesign.cautionsFor(designInputs), ...(mixRecipe === null ? [] : soilMix.cautionsFor(mixInputs))],
  };
}

/** The first row of an answer, an error filling every place it stands for. */
function rowOf(worksheetFunction: WorksheetFunction, inputs: readonly CellInput[], width: number): readonly (Cell | undefined)[] {
  const row = worksheetFunction.evaluate(inputs)[0] ?? [];
  return row.length === 1 && width > 1 ? Array.from({ length: width }, () => row[0]) : row;
}

function answer(cell: Cell | undefined): Answer {
  if (typeof cell === "number") return { value: cell };
  if (isCellError(cell)) return { sentence: cell.sentence === "" ? `An input shows ${cell.code}.` : cell.sentence };
  return { sentence: "Contributing area and tested rate are missing." };
}

function numberOr(value: CellValue, otherwise: number): number {
  return typeof value === "number" ? value : otherwise;
}

function blankAsNull(value: CellValue): CellValue {
  return value === "" ? null : value;
}
