import { mixRecipes, recipeSources } from "../amendment/mix-recipes.ts";
import { layerVolumeCubicYards, MOST_USUAL_WASTE_SHARE } from "../amendment/layer-volume.ts";
import {
  LEAST_SAND_SHARE_FOR_CLAY,
  looseVolume,
  mixVolumes,
  SHARE_SUM_TOLERANCE,
  MOST_USUAL_SETTLING_SHARE,
  USUAL_SETTLING_SHARE,
  type MixPart,
} from "../amendment/soil-mix.ts";
import { basinFloor, type BasinShape } from "../basin/basin-shape.ts";
import { basinDig, deepestDigFeet, USUAL_EARTH, USUAL_MULCH_INCHES, type BasinHole } from "../earthwork/basin-dig.ts";
import { inPlaceTo, SOIL_STATES, soilVolumeInState } from "../earthwork/soil-state.ts";
import { EARTH_SOILS, stateFactors } from "../published/fm-5-434.ts";
import { osha1926SubpartP } from "../published/documents.ts";
import { commonPractice, computedByHand } from "../published/source.ts";
import { INCHES_PER_FOOT } from "../quantities.ts";
import { area, choice, depth, earthVolume, percent, share, tableRange, text, units } from "./calling/arguments.ts";
import { invalid, isCellError, type Cell, type CellError } from "./calling/cell.ts";
import { lengthToWidth, shape, sideSlope } from "./basin-arguments.ts";
import { callBeforeDigging, deepDig, steepSides } from "./basin-cautions.ts";
import { prismoidSteps } from "./basin-working.ts";
import { digEquation, digSteps, tooSteepToDig } from "./digging.ts";
import { plainKey } from "./calling/typed-words.ts";
import { isBlank, readerOf, refused } from "./calling/reading.ts";
import { tableOf } from "./calling/results.ts";
import { whyRefused } from "./calling/sentences.ts";
import { stepsOf, type WorkingStep } from "./calling/working.ts";
import { worksheetFunction } from "./calling/worksheet-function.ts";

export const digVolume = worksheetFunction({
  name: "DIGVOLUME",
  summary: "Earth to dig for a basin with its mulch and soil mix, measured in place (bank).",
  arguments: [
    area("floorArea", "Floor area"),
    depth("ponding", "Ponding depth"),
    sideSlope,
    depth("mulch", "Mulch depth").optional(USUAL_MULCH_INCHES),
    depth("media", "Soil mix depth").optional(0),
    percent("groundSlope", "Ground slope").optional(0),
    shape,
    lengthToWidth,
    units,
  ],
  result: earthVolume("Dig volume in place"),
  sources: [
    computedByHand("Prismoidal rule, 27 cu ft in a cu yd"),
    osha1926SubpartP.place("protection and access in excavations"),
    commonPractice("Mulch of 2 to 4 in, dug for under the finished floor and sides"),
  ],
  cautions: [callBeforeDigging, steepSides, deepDig<DigInputs>((inputs) => INCHES_PER_FOOT * deepestDigFeet(holeOf(inputs)))],
  example: {
    arguments: [119, 6, 3, 3, 12, 0, "rectangle", 17 / 7],
    result: 9.185,
    within: 0.0005,
    from: computedByHand(
      "A 17 by 7 ft floor, 3 to 1 sides to 6 in: 79 cu ft; 3 in of mulch under its 20 by 10 ft rim: 50; 12 in of mix under the floor: 119; / 27",
    ),
  },
  equation: digEquation,
  working: (inputs) => [
    ...prismoidSteps(inputs.floorArea, inputs.ponding, inputs.sideSlope, inputs.shape, inputs.lengthToWidth),
    ...digSteps(basinDig(holeOf(inputs))),
  ],
  calculate: (inputs) => tooSteepToDig(inputs.groundSlope, inputs.sideSlope) ?? basinDig(holeOf(inputs)).wholeCubicYards,
});

interface DigInputs {
  readonly floorArea: number;
  readonly ponding: number;
  readonly sideSlope: number;
  readonly mulch: number;
  readonly media: number;
  readonly groundSlope: number;
  readonly shape: BasinShape;
  readonly lengthToWidth: number;
}

function holeOf(inputs: DigInputs): BasinHole {
  return {
    floor: basinFloor(inputs.floorArea, inputs.shape, inputs.lengthToWidth),
    pondingInches: inputs.ponding,
    mulchInches: inputs.mulch,
    mediaInches: inputs.media,
    sideSlope: inputs.sideSlope,
    groundSlopePercent: inputs.groundSlope,
    soil: USUAL_EARTH,
  };
}

export const soilState = worksheetFunction({
  name: "SOILSTATE",
  summary: "A volume of earth in another state: in place, loose or compacted.",
  arguments: [
    earthVolume("volume", "Volume"),
    choice("from", "From", SOIL_STATES),
    choice("to", "To", SOIL_STATES),
    choice("soil", "Soil", EARTH_SOILS),
    units,
  ],
  result: earthVolume("Volume"),
  sources: [stateFactors.from],
  example: {
    arguments: [6, "in place", "loose", "clay"],
    result: 8.58,
    within: 0.005,
    from: computedByHand("6 cu yd of clay in place x 1.43, FM 5-434 table 1-1"),
  },
  equation: ["V to = V from / factor from x factor to   (cu yd; a factor is the volume in that state for each volume in place)"],
  working: ({ volume, from, to, soil }) => [
    { label: "Factor from", value: inPlaceTo(from, soil) },
    { label: "Volume in place", value: soilVolumeInState(volume, from, "in place", soil), kind: "earthVolume" },
    { label: "Factor to", value: inPlaceTo(to, soil) },
  ],
  calculate: ({ volume, from, to, soil }) => soilVolumeInState(volume, from, to, soil),
});

const recipeRule = choice(
  "recipe",
  "Recipe",
  mixRecipes.map(({ name }) => name),
).rule;
const shareRule = share("share", "Share").rule;
const readShare = readerOf(shareRule, "us");
const settling = commonPractice("Order 15 to 20 percent more than the finished volume");

export const soilMix = worksheetFunction({
  name: "SOILMIX",
  summary: "What to buy or keep of each material for a soil mix that must fill a volume once it has settled.",
  arguments: [
    earthVolume("mixVolume", "Mix volume in place"),
    tableRange("recipe", "Recipe name or shares"),
    share("settlingShare", "Settling share").lessThan(1).optional(USUAL_SETTLING_SHARE),
    units,
  ],
  result: tableOf([text("Material"), earthVolume("Volume to buy or keep")]),
  sources: [...recipeSources, settling],
  cautions: [
    {
      when: ({ settlingShare }) => settlingShare > MOST_USUAL_SETTLING_SHARE,
      says: "A mix settles by 0.15 to 0.20 of its loose volume as a rule: this share orders far more.",
    },
    {
      when: ({ recipe }) => isClayMix(recipe),
      says: `A little sand makes a clay worse: keep sand at ${LEAST_SAND_SHARE_FOR_CLAY * 100}% of the mix or more, and let a soil sample decide.`,
    },
    {
      when: ({ recipe }) => nameIn(recipe) === "sand and compost",
      says: "This much compost sheds phosphorus: choose another mix where the overflow reaches a lake or a stream.",
    },
  ],
  example: {
    arguments: [2, "fast soil"],
    result: [
      ["native soil", 1.529],
      ["compost", 0.824],
    ],
    within: 0.0005,
    from: computedByHand("2 / 0.85 = 2.353 cu yd loose, 65 and 35 percent of it"),
  },
  equation: ["loose volume = mix volume in place / (1 - settling share)   (cu yd)", "V of a material = its share x loose volume   (cu yd)"],
  working: ({ mixVolume, recipe, settlingShare }) =>
    stepsOf(partsFrom(recipe), (parts) => [
      { label: "Loose volume", value: looseVolume(mixVolume, settlingShare), kind: "earthVolume" },
      ...parts.map((part): WorkingStep => ({ label: `Share of ${part.material}`, value: part.share, kind: "share" })),
    ]),
  calculate({ mixVolume, recipe, settlingShare }) {
    const parts = partsFrom(recipe);
    if (isCellError(parts)) return parts;
    return mixVolumes(mixVolume, parts, settlingShare).map(({ material, volume }) => [material, volume] as const);
  },
});

export const layerVolume = worksheetFunction({
  name: "LAYERVOLUME",
  summary: "Material for a layer of even depth: mulch, stone, compost.",
  arguments: [area("area", "Area"), depth("depth", "Depth"), share("wasteShare", "Waste share").optional(0), units],
  result: earthVolume("Volume of material"),
  sources: [computedByHand("1 cu yd covers 324 sq ft an inch deep")],
  cautions: [
    {
      when: ({ wasteShare }) => wasteShare > MOST_USUAL_WASTE_SHARE,
      says: "Usually 0.05 to 0.15 is added for waste: a share of 1 orders twice the layer.",
    },
  ],
  example: { arguments: [200, 3], result: 1.852, within: 0.0005, from: computedByHand("200 sq ft x 3 in / 324") },
  equation: ["V = A d / 324 x (1 + waste share)   (cu yd; A in sq ft, d in in)"],
  calculate: ({ area: squareFeet, depth: inches, wasteShare }) => layerVolumeCubicYards(squareFeet, inches, wasteShare),
});

/** The parts of a mix, from the name of a recipe or from shares of the user's own. */
function partsFrom(cells: readonly (readonly Cell[])[]): readonly MixPart[] | CellError {
  const typed = cells.flat().filter((cell) => !isBlank(cell));
  const error = typed.find(isCellError);
  if (error !== undefined) return error;
  const [only, ...others] = typed;
  if (others.length === 0 && typeof only === "string") {
    return mixRecipes.find(({ name }) => name === plainKey(only))?.parts ?? whyRefused(recipeRule, only, "us", "Recipe");
  }
  const parts: MixPart[] = [];
  for (const cell of typed) {
    const read = readShare(cell);
    const number = parts.length + 1;
    if (read === refused) return whyRefused(shareRule, cell, "us", `Share ${number}`);
    parts.push({ material: `material ${number}`, share: read as number });
  }
  const sum = parts.reduce((total, part) => total + part.share, 0);
  if (Math.abs(sum - 1) > SHARE_SUM_TOLERANCE) return invalid(`Shares must add up to 1; they add up to ${Number(sum.toPrecision(4))}.`);
  return parts;
}

/** Shares of the user's own may be sand for a clay as well: nothing says what they are. */
function isClayMix(cells: readonly (readonly Cell[])[]): boolean {
  const name = nameIn(cells);
  return name === undefined || name === "tight soil";
}

/** The name of a recipe, where one was given. */
function nameIn(cells: readonly (readonly Cell[])[]): string | undefined {
  const name = cells.flat().find((cell) => !isBlank(cell));
  return typeof name === "string" ? plainKey(name) : undefined;
}
