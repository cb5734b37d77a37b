import { layerVolumeCubicYards } from "../amendment/layer-volume.ts";
import { mixRecipes, recipeSources } from "../amendment/mix-recipes.ts";
import { looseVolume, mixVolumes, USUAL_SETTLING_SHARE } from "../amendment/soil-mix.ts";
import { BASIN_SHAPES, USUAL_LENGTH_TO_WIDTH } from "../basin/basin-shape.ts";
import { basinFloorSize } from "../basin/basin-size.ts";
import { soilVolumeInState } from "../earthwork/soil-state.ts";
import { wholePlants } from "../planting/plant-count.ts";
import { stateFactors } from "../published/fm-5-434.ts";
import { computedByHand } from "../published/source.ts";
import { area, choice, count, depth, earthVolume, length, number, share, units, type ResultValue } from "./calling/arguments.ts";
import { rowOf } from "./calling/results.ts";
import { worksheetFunction } from "./calling/worksheet-function.ts";

/** Blank where no recipe says what the mix is of. */
const orBlank = (value: ResultValue<number>): ResultValue<number | ""> => value;

/** What a yard's row shows of a mix; materials besides these are in the total. */
const SHOWN_MATERIALS = ["sand", "topsoil", "compost", "native soil"] as const;

export const siteTakeoff = worksheetFunction({
  name: "SITETAKEOFF",
  summary: "Quantities to stake, dig, haul, buy and plant for a basin that has its size: a row a yard.",
  arguments: [
    area("floorArea", "Floor area"),
    area("rimArea", "Rim area"),
    earthVolume("inPlaceVolume", "Dig in place"),
    depth("media", "Soil mix depth").optional(0),
    depth("mulch", "Mulch depth").optional(3),
    length("spacing", "Plant spacing").moreThan(0).optional(1.5),
    choice(
      "recipe",
      "Mix recipe",
      mixRecipes.map(({ name }) => name),
    ).leftOutMeans("no mix is bought"),
    share("settlingShare", "Settling share").lessThan(1).optional(USUAL_SETTLING_SHARE),
    choice("shape", "Shape", BASIN_SHAPES).optional("ellipse"),
    number("lengthToWidth", "Length to width").atLeast(1).optional(USUAL_LENGTH_TO_WIDTH),
    count("plannedPlants", "Plants of the plan").leftOutMeans("plants are counted by their spacing over the rim area"),
    units,
  ],
  result: rowOf([
    length("Floor length"),
    length("Floor width"),
    length("Floor edge"),
    earthVolume("Dig, loose"),
    earthVolume("Soil mix in place"),
    orBlank(earthVolume("Mix to buy or keep, loose")),
    orBlank(earthVolume("Sand")),
    orBlank(earthVolume("Topsoil")),
    orBlank(earthVolume("Compost")),
    orBlank(earthVolume("Native soil")),
    earthVolume("Mulch"),
    count("Plants"),
  ]),
  sources: [stateFactors.from, ...recipeSources],
  example: {
    arguments: [200, 240, 6, 12, 3, 1.5, "fast soil", 0.15, "rectangle", 2],
    result: [[20, 10, 60, 7.5, 7.407, 8.715, 0, 0, 3.05, 5.664, 2.222, 124]],
    within: 0.0005,
    from: computedByHand(
      "20 x 10 ft; 6 x 1.25 for loam, FM 5-434 table 1-1; 200 x 12 / 324, / 0.85, 65 and 35 percent of it; 240 x 3 / 324; 240 / (1.5^2 sin 60 degrees)",
    ),
  },
  equation: [
    "floor length, width and edge as SOAK.BASINSIZE   (ft)",
    "dig loose = dig in place x 1.25   (cu yd; loam)",
    "mix = floor area x depth / 324, loose = mix / (1 - settling share), each material its share of that   (cu yd; sq ft, in)",
    "mulch = rim area x depth / 324   (cu yd)",
    "plants = those of the plan, or rim area / (spacing^2 sin 60 degrees), rounded up   (sq ft, ft)",
  ],
  calculate({
    floorArea,
    rimArea,
    inPlaceVolume: inPlace,
    media,
    mulch,
    spacing,
    recipe,
    settlingShare,
    shape,
    lengthToWidth,
    plannedPlants,
  }) {
    const { lengthFeet, widthFeet, edgeFeet } = basinFloorSize(floorArea, shape, lengthToWidth);
    const mix = layerVolumeCubicYards(floorArea, media, 0);
    const parts = mixRecipes.find(({ name }) => name === recipe)?.parts;
    const volumes = parts === undefined ? [] : mixVolumes(mix, parts, settlingShare);
    const [sand, topsoil, compost, nativeSoil] = SHOWN_MATERIALS.map((material): number | "" =>
      parts === undefined ? "" : (volumes.find((part) => part.material === material)?.volume ?? 0),
    ) as [number | "", number | "", number | "", number | ""];
    return [
      lengthFeet,
      widthFeet,
      edgeFeet,
      soilVolumeInState(inPlace, "in place", "loose", "loam"),
      mix,
      parts === undefined ? "" : looseVolume(mix, settlingShare),
      sand,
      topsoil,
      compost,
      nativeSoil,
      layerVolumeCubicYards(rimArea, mulch, 0),
      plannedPlants ?? wholePlants(rimArea, spacing, "triangle"),
    ] as const;
  },
});
