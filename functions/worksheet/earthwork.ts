import { MATERIALS, materialTons } from "../amendment/material-weight.ts";
import { wholePackages } from "../cost/whole-packages.ts";
import { BASIN_SHAPES, FILL, type BasinShape } from "../basin/basin-shape.ts";
import { USUAL_SIDE_SLOPE } from "../basin/basin-volume.ts";
import { deepestDigFeet, USUAL_EARTH, USUAL_MULCH_INCHES } from "../earthwork/basin-dig.ts";
import { cutAndFill, LEAST_BERM_TOP_FEET, LEAST_FREEBOARD_INCHES, type BermedBasin, type CutAndFill } from "../earthwork/cut-fill.ts";
import { DUG_SOILS, handDigHours, laborerCubicMetersPerHour, laborerHours, LONGEST_SESSION_HOURS } from "../earthwork/dig-hours.ts";
import { soilVolumeInState } from "../earthwork/soil-state.ts";
import { RESTING_DEGREES, SPOIL_SETBACK_FEET, stockpileCone, USUAL_RESTING_DEGREES } from "../earthwork/stockpile.ts";
import { HEAVIEST_VEHICLE_TONS, LARGEST_LOAD_CUBIC_YARDS, loadsByWeight, wholeTruckLoads } from "../earthwork/truck-loads.ts";
import { EARTH_SOILS, stateFactors, type EarthSoil } from "../published/fm-5-434.ts";
import { fhwaVehicleWeights, osha1926SubpartP } from "../published/documents.ts";
import { handDigCubicMetersPerHour } from "../published/planning-planet-wiki.ts";
import { commonPractice, computedByHand } from "../published/source.ts";
import { printedDensities } from "../published/tm-9-2320-366-10-1.ts";
import { INCHES_PER_FOOT } from "../quantities.ts";
import { STEEPEST_PUBLISHED_PERCENT } from "../siting/ground-slope.ts";
import { area, choice, count, depth, earthVolume, flag, hours, length, number, percent, units, weight } from "./calling/arguments.ts";
import { callBeforeDigging, deepDig, deepPonding, steepSides } from "./basin-cautions.ts";
import { digEquation, digSteps, fallsWithin, noBermStands, tooSteepToDig } from "./digging.ts";
import { usualWeight, weightOf } from "./material-cautions.ts";
import { rowOf } from "./calling/results.ts";
import { stepsOf, type WorkingStep } from "./calling/working.ts";
import { worksheetFunction } from "./calling/worksheet-function.ts";

interface CutFillInputs {
  readonly floorLength: number;
  readonly floorWidth: number;
  readonly ponding: number;
  readonly groundSlope: number;
  readonly sideSlope: number;
  readonly mulch: number;
  readonly media: number;
  readonly shape: BasinShape;
  readonly bermTop: number;
  readonly bermSideSlope: number;
  readonly freeboard: number;
  readonly soil: EarthSoil;
}

const bermedBasin = (inputs: CutFillInputs): BermedBasin => ({
  floor: {
    areaSquareFeet: FILL[inputs.shape] * inputs.floorLength * inputs.floorWidth,
    lengthFeet: inputs.floorLength,
    widthFeet: inputs.floorWidth,
    fill: FILL[inputs.shape],
  },
  pondingInches: inputs.ponding,
  mulchInches: inputs.mulch,
  mediaInches: inputs.media,
  sideSlope: inputs.sideSlope,
  groundSlopePercent: inputs.groundSlope,
  bermTopFeet: inputs.bermTop,
  bermSideSlope: inputs.bermSideSlope,
  freeboardInches: inputs.freeboard,
  soil: inputs.soil,
});

const earthworkOf = (inputs: CutFillInputs) => cutAndFill(bermedBasin(inputs));

/** On ground too steep for sides or berm there is nothing to caution about: the cell says why there is no answer. */
const whereItStands =
  (caution: (done: CutAndFill) => boolean) =>
  (inputs: CutFillInputs): boolean =>
    fallsWithin(inputs.groundSlope, Math.max(inputs.sideSlope, inputs.bermSideSlope)) && caution(earthworkOf(inputs));

const levelPadByHand = computedByHand("Wedges of a level pad on a slope, cut x compacted per in place = fill");

export const cutFill = worksheetFunction({
  name: "CUTFILL",
  summary: "Cut, berm and what is left over for a basin with a level floor on sloping ground, each in its own state of the earth.",
  arguments: [
    length("floorLength", "Floor length across the slope"),
    length("floorWidth", "Floor width down the slope"),
    depth("ponding", "Ponding depth"),
    percent("groundSlope", "Ground slope"),
    number("sideSlope", "Side slope").atLeast(0).optional(USUAL_SIDE_SLOPE),
    depth("mulch", "Mulch depth").optional(USUAL_MULCH_INCHES),
    depth("media", "Soil mix depth").optional(0),
    choice("shape", "Shape", BASIN_SHAPES).optional("ellipse"),
    length("bermTop", "Berm top width").optional(LEAST_BERM_TOP_FEET),
    number("bermSideSlope", "Berm side slope").atLeast(0).optional(USUAL_SIDE_SLOPE),
    depth("freeboard", "Freeboard").optional(LEAST_FREEBOARD_INCHES),
    choice("soil", "Soil", EARTH_SOILS).optional(USUAL_EARTH),
    units,
  ],
  result: rowOf([
    earthVolume("Cut in place"),
    earthVolume("Berm fill, compacted"),
    earthVolume("Left over in place"),
    length("Berm height"),
  ]),
  sources: [levelPadByHand, stateFactors.from, commonPractice("Berm crest 1 ft or more, sides 3 to 1 or flatter, freeboard 2 to 4 in")],
  cautions: [
    callBeforeDigging,
    deepDig<CutFillInputs>((inputs) => INCHES_PER_FOOT * deepestDigFeet(bermedBasin(inputs))),
    ...deepPonding<CutFillInputs>(({ ponding }) => ponding),
    steepSides,
    {
      when: whereItStands(({ leftOverCubicYards }) => leftOverCubicYards < 0),
      about: "Earth falls short in place: dig deeper or bring clean soil.",
      says: (inputs, speaker) =>
        `Earth falls short by ${speaker.earthVolume(-earthworkOf(inputs).leftOverCubicYards, "up")} in place: dig deeper or bring clean soil.`,
    },
    {
      when: whereItStands(({ hasFloorOnFill }) => hasFloorOnFill),
      says: "Part of the floor would stand on fill, which soaks up less and settles: dig deeper, or make the garden narrower down the slope.",
    },
    {
      when: ({ groundSlope }) => groundSlope > STEEPEST_PUBLISHED_PERCENT,
      says: `Steeper than ${STEEPEST_PUBLISHED_PERCENT}%: the published manuals send the garden to another place.`,
    },
    {
      when: ({ bermTop }) => bermTop < LEAST_BERM_TOP_FEET,
      says: (_, speaker) => `A berm under ${speaker.length(LEAST_BERM_TOP_FEET)} wide at the top is soon trodden down.`,
    },
    {
      when: ({ bermSideSlope }) => bermSideSlope < USUAL_SIDE_SLOPE,
      says: `Berm sides steeper than ${USUAL_SIDE_SLOPE} to 1 wash and slump more easily.`,
    },
    {
      when: ({ freeboard }) => freeboard < LEAST_FREEBOARD_INCHES,
      says: (_, speaker) =>
        `Under ${speaker.depth(LEAST_FREEBOARD_INCHES)} of freeboard a full basin spills over the berm instead of the overflow.`,
    },
  ],
  example: {
    arguments: [10, 10, 0, 6, 0, 0, 0, "rectangle", 0, 0, 0, "loam"],
    result: [[0.2926, 0.2633, 0, 0.2921]],
    within: 0.0001,
    from: computedByHand(
      "A level pad of 10 ft on 6 percent: 5.132 ft in cut, 0.790 cu ft a foot in place, 0.711 compacted, times 10 ft / 27",
    ),
  },
  equation: [
    ...digEquation,
    "berm: the basin's sides go on rising from full water to the freeboard, then the crest, then an outer face of 1 in the berm side slope, wherever the ground is lower than the crest",
    "fill = berm and placed floor over the old ground, mulch and soil mix left out / 27   (cu yd, compacted)",
    "left over = cut - fill / c   (cu yd in place; c compacted per in place)",
  ],
  working(inputs) {
    const done = earthworkOf(inputs);
    return [
      { label: "Width in cut x", value: done.cutWidthFeet, kind: "length" },
      { label: "Ground over full water uphill S x", value: done.uphillRiseFeet, kind: "length" },
      { label: "Dig at the floor's uphill edge", value: deepestDigFeet(bermedBasin(inputs)), kind: "length" },
      ...digSteps(done.dig),
      {
        label: "All fill as it lay in place",
        value: soilVolumeInState(done.fillCubicYards, "compacted", "in place", inputs.soil),
        kind: "earthVolume",
      },
    ];
  },
  calculate(inputs) {
    const steep = tooSteepToDig(inputs.groundSlope, inputs.sideSlope) ?? noBermStands(inputs.groundSlope, inputs.bermSideSlope);
    if (steep !== undefined) return steep;
    const done = earthworkOf(inputs);
    return [done.dig.wholeCubicYards, done.fillCubicYards, done.leftOverCubicYards, done.bermHeightFeet];
  },
});

const spoil = osha1926SubpartP.place("spoil kept back from the edge of an excavation");

export const stockpile = worksheetFunction({
  name: "STOCKPILE",
  summary: "Radius, height and ground covered of a heap of loose earth at its resting angle.",
  arguments: [
    earthVolume("looseVolume", "Loose volume"),
    number("restingAngle", "Resting angle in degrees").moreThan(0).lessThan(90).optional(USUAL_RESTING_DEGREES),
    units,
  ],
  result: rowOf([length("Radius"), length("Height"), area("Ground covered")]),
  sources: [computedByHand("Volume of a cone, pi r^2 h / 3"), spoil],
  cautions: [
    {
      when: () => true,
      says: (_, speaker) =>
        `Keep the heap ${speaker.length(SPOIL_SETBACK_FEET)} or more back from the edge of the dig, and off roots and drains.`,
    },
    {
      when: ({ restingAngle }) => restingAngle < RESTING_DEGREES.least || restingAngle > RESTING_DEGREES.most,
      says: `Earth rests at ${RESTING_DEGREES.least} (wet clay) to ${RESTING_DEGREES.most} degrees (moist earth).`,
    },
  ],
  example: { arguments: [10], result: [[6.99, 5.27, 153.7]], within: 0.05, from: computedByHand("A cone of 270 cu ft at 37 degrees") },
  equation: [
    "r = (3 V / (pi tan a))^(1/3)   (ft; V = 27 x loose volume in cu ft, a resting angle)",
    "h = r tan a   (ft)",
    "A = pi r^2   (sq ft)",
  ],
  calculate({ looseVolume, restingAngle }) {
    const { radiusFeet, heightFeet, groundSquareFeet } = stockpileCone(looseVolume, restingAngle);
    return [radiusFeet, heightFeet, groundSquareFeet];
  },
});

export const truckLoads = worksheetFunction({
  name: "TRUCKLOADS",
  summary: "Whole loads that carry off loose material, by the stricter of volume and weight.",
  arguments: [
    earthVolume("looseVolume", "Loose volume"),
    earthVolume("loadVolume", "Load volume").moreThan(0),
    weight("loadWeightLimit", "Load weight limit").moreThan(0).leftOutMeans("only the volume counts"),
    choice("material", "Material", MATERIALS).optional("moist earth"),
    units,
  ],
  result: count("Loads"),
  sources: [
    printedDensities.from,
    fhwaVehicleWeights.place("80,000 lb, the most that a vehicle may weigh"),
    commonPractice("A wet load fills a pickup's payload before its bed"),
  ],
  cautions: [
    {
      when: ({ loadWeightLimit }) => loadWeightLimit === undefined,
      about: "No weight limit is given: a full load may be heavier than the vehicle may carry.",
      says: ({ loadVolume, material }, speaker) =>
        `No weight limit is given: a full load weighs about ${weightOf(loadVolume, material, speaker)}, which may be more than the vehicle may carry.`,
    },
    {
      when: ({ loadVolume }) => loadVolume > LARGEST_LOAD_CUBIC_YARDS,
      says: (_, speaker) =>
        `No truck or box takes more than ${speaker.earthVolume(LARGEST_LOAD_CUBIC_YARDS)}: the load volume is that of one load, in ${speaker.system === "us" ? "cu yd" : "m³"}.`,
    },
    {
      when: ({ loadWeightLimit }) => loadWeightLimit !== undefined && loadWeightLimit > HEAVIEST_VEHICLE_TONS,
      says: (_, speaker) =>
        `A truck and its load may weigh ${speaker.say("weight", HEAVIEST_VEHICLE_TONS)} at most: the limit is in ${speaker.system === "us" ? "tons of 2,000 lb" : "tonnes"}, not in ${speaker.system === "us" ? "lb" : "kg"}.`,
    },
    {
      when: ({ looseVolume, loadVolume, loadWeightLimit, material }) =>
        wholeTruckLoads(looseVolume, loadVolume, loadWeightLimit, material).isWeightGoverned,
      says: "Weight, not volume, sets the number of loads: do not fill the bed.",
    },
    usualWeight,
  ],
  example: { arguments: [10, 5.19, 10_510 / 2000, "dry earth"], result: 2, from: printedDensities.from },
  equation: ["n = the larger of V / load volume and W / load weight limit, rounded up to whole loads   (V in cu yd, W in tons)"],
  working: ({ looseVolume, loadVolume, loadWeightLimit, material }) => [
    { label: "Loads by volume", value: wholePackages(looseVolume, loadVolume), kind: "count" },
    { label: "Weight W", value: materialTons(looseVolume, material), kind: "weight" },
    ...stepsOf(loadWeightLimit, (limit): readonly WorkingStep[] => [
      { label: "Loads by weight", value: loadsByWeight(looseVolume, limit, material), kind: "count" },
    ]),
  ],
  calculate: ({ looseVolume, loadVolume, loadWeightLimit, material }) =>
    wholeTruckLoads(looseVolume, loadVolume, loadWeightLimit, material).loads,
});

export const digHours = worksheetFunction({
  name: "DIGHOURS",
  summary: "Person-hours and clock hours to dig a volume by hand.",
  arguments: [
    earthVolume("inPlaceVolume", "In-place volume"),
    choice("soil", "Soil", DUG_SOILS),
    count("people", "People").atLeast(1).optional(1),
    flag("volunteers", "Volunteers").optional(true),
    units,
  ],
  result: rowOf([hours("Person-hours"), hours("Clock hours")]),
  sources: [handDigCubicMetersPerHour.from, commonPractice("Volunteers take 1.5 to 2 times as long as laborers")],
  cautions: [
    callBeforeDigging,
    {
      when: ({ inPlaceVolume, soil, people, volunteers }) =>
        handDigHours(inPlaceVolume, soil, people, volunteers).clockHours > LONGEST_SESSION_HOURS,
      says: `Over ${LONGEST_SESSION_HOURS} h of digging for each person: plan a second session or more people, with water, shade and rests.`,
    },
  ],
  example: {
    arguments: [6, "firm", 6],
    result: [[16, 2.7]],
    within: 0.05,
    from: computedByHand("6 cu yd x 1.78 h a cu yd x 1.5, and a sixth of it"),
  },
  equation: [
    "person-hours = V / output x factor   (h; V in place, 1 cu yd = 0.7646 cu m; output of one laborer in cu m/h; factor 1.5 for volunteers, else 1)",
    "clock hours = person-hours / people   (h)",
  ],
  working: ({ inPlaceVolume, soil }) => [
    { label: "Output of one laborer", value: laborerCubicMetersPerHour(soil), unit: "cu m/h" },
    { label: "Hours of one laborer", value: laborerHours(inPlaceVolume, soil), kind: "hours" },
  ],
  calculate({ inPlaceVolume, soil, people, volunteers }) {
    const { personHours, clockHours } = handDigHours(inPlaceVolume, soil, people, volunteers);
    return [personHours, clockHours];
  },
});
