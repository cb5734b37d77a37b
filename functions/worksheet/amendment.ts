import { compostDepthInches, compostShare, organicShortPercent, RICHEST_PUBLISHED_TARGET_PERCENT } from "../amendment/compost-depth.ts";
import { MATERIALS, materialTons, poundsPerCubicFoot } from "../amendment/material-weight.ts";
import { addedSandShare, sandVolumeToAdd } from "../amendment/sand-to-add.ts";
import { LEAST_SAND_SHARE_FOR_CLAY } from "../amendment/soil-mix.ts";
import { LARGEST_BAG_IN_ANY_UNIT, materialCubicFeet, wholeBags } from "../amendment/whole-bags.ts";
import { packagesBeforeRounding } from "../cost/whole-packages.ts";
import { buildingSoil } from "../published/documents.ts";
import { commonPractice, computedByHand } from "../published/source.ts";
import { printedDensities } from "../published/tm-9-2320-366-10-1.ts";
import { toUs, type UnitSystem } from "../quantities.ts";
import { choice, count, depth, earthVolume, number, percent, units, weight } from "./calling/arguments.ts";
import { invalid } from "./calling/cell.ts";
import { usualWeight } from "./material-cautions.ts";
import { worksheetFunction } from "./calling/worksheet-function.ts";

const dryMass = computedByHand("Balance of dry mass: the mix of 2.977 in of compost in 8 in has 10.0 percent organic matter");

export const compostDepth = worksheetFunction({
  name: "COMPOSTDEPTH",
  summary:
    "Depth of compost to mix into a soil for a target of organic matter; 0 when the soil already has it. Both densities dry, in one unit.",
  arguments: [
    depth("amendedDepth", "Depth to amend"),
    percent("soilOrganic", "Soil organic percent"),
    percent("targetOrganic", "Target organic percent"),
    percent("compostOrganic", "Compost organic percent"),
    number("soilDensity", "Soil density").moreThan(0),
    number("compostDensity", "Compost density").moreThan(0),
    units,
  ],
  result: depth("Compost depth"),
  sources: [dryMass, buildingSoil.place("section 7, custom compost rate")],
  cautions: [
    {
      when: ({ targetOrganic }) => targetOrganic > RICHEST_PUBLISHED_TARGET_PERCENT,
      says: `The target is over ${RICHEST_PUBLISHED_TARGET_PERCENT}%, the richest that is published for planting beds.`,
    },
    {
      when: ({ compostDensity, soilDensity }) => compostDensity >= soilDensity,
      says: "Compost is usually much lighter than soil: give both densities dry, in one unit.",
    },
    {
      when: ({ soilOrganic, targetOrganic }) => soilOrganic < targetOrganic,
      says: "The depth to amend is the finished depth, compost included; loose, it stands higher until it settles.",
    },
  ],
  example: { arguments: [8, 2, 10, 55, 2000, 600], result: 2.977, within: 0.0005, from: dryMass },
  equation: [
    "CR = D Ds (T - S) / (Ds (T - S) + Dc (C - T))   (in; D finished depth in in)",
    "S, T and C percent organic matter of soil, target and compost; Ds and Dc dry densities of soil and compost in one unit",
  ],
  working({ soilOrganic: soilPercent, targetOrganic: targetPercent, compostOrganic: compostPercent, soilDensity, compostDensity }) {
    const organic = { soilPercent, targetPercent, compostPercent };
    return [
      { label: "Organic matter lacking T - S", value: organicShortPercent(organic), kind: "percent" },
      { label: "Compost as a share of the depth", value: compostShare(organic, soilDensity, compostDensity), kind: "share" },
    ];
  },
  calculate({
    amendedDepth,
    soilOrganic: soilPercent,
    targetOrganic: targetPercent,
    compostOrganic: compostPercent,
    soilDensity,
    compostDensity,
  }) {
    if (soilPercent < targetPercent && compostPercent <= targetPercent)
      return invalid("Compost organic percent must be more than the target.");
    return compostDepthInches(amendedDepth, { soilPercent, targetPercent, compostPercent }, soilDensity, compostDensity);
  },
});

const sandBalance = computedByHand("Balance of sand at equal bulk density: (60 - 20) / (95 - 60)");

export const sandToAdd = worksheetFunction({
  name: "SANDTOADD",
  summary: "Sand to mix into a soil for a target sand content; 0 when the soil already has it.",
  arguments: [
    earthVolume("nativeVolume", "Native volume"),
    percent("nativeSand", "Native sand percent"),
    percent("sourceSand", "Sand source's sand percent"),
    percent("targetSand", "Target sand percent"),
    units,
  ],
  result: earthVolume("Sand volume"),
  sources: [sandBalance, commonPractice("Sand under half of the mix makes a clay worse")],
  cautions: [
    {
      when: ({ nativeSand: nativePercent, sourceSand: sourcePercent, targetSand: targetPercent }) => {
        const share = addedSandShare({ nativePercent, sourcePercent, targetPercent });
        return share > 0 && share < LEAST_SAND_SHARE_FOR_CLAY;
      },
      says: `The sand would be under ${LEAST_SAND_SHARE_FOR_CLAY * 100}% of the mix: too little to help a clay, which a little sand makes worse.`,
    },
  ],
  example: { arguments: [1, 20, 95, 60], result: 1.143, within: 0.0005, from: sandBalance },
  equation: ["V sand = V native x (T - s) / (a - T), 0 where T <= s   (cu yd; s, T and a percent sand of soil, target and source)"],
  working({ nativeSand: nativePercent, sourceSand: sourcePercent, targetSand: targetPercent }) {
    const sand = { nativePercent, sourcePercent, targetPercent };
    return [
      { label: "Sand for each unit of native soil", value: sandVolumeToAdd(1, sand) },
      { label: "Added sand as a share of the mix", value: addedSandShare(sand), kind: "share" },
    ];
  },
  calculate({ nativeVolume, nativeSand: nativePercent, sourceSand: sourcePercent, targetSand: targetPercent }) {
    if (nativePercent < targetPercent && sourcePercent <= targetPercent)
      return invalid("Sand source's sand percent must be more than the target.");
    return sandVolumeToAdd(nativeVolume, { nativePercent, sourcePercent, targetPercent });
  },
});

export const bags = worksheetFunction({
  name: "BAGS",
  summary: "Whole bags that hold a volume of material. The bag's size is in cu ft, on a metric sheet in L.",
  arguments: [earthVolume("materialVolume", "Material volume"), number("bagSize", "Bag size in cu ft (metric: L)").moreThan(0), units],
  result: count("Bags"),
  sources: [computedByHand("27 cu ft in a cu yd: 13.5 bags of 2 cu ft, 27 of 1, 54 of 0.5")],
  cautions: [
    {
      when: ({ bagSize }) => bagSize > LARGEST_BAG_IN_ANY_UNIT,
      says: "Bags hold 0.5 to 3 cu ft (metric: 15 to 85 L): the size is that of one bag.",
    },
  ],
  example: { arguments: [1.852, 2, "us"], result: 26, from: computedByHand("1.852 cu yd x 13.5 = 25.002, and a part of a bag is a bag") },
  equation: ["n = 27 V / bag size, rounded up to whole bags   (V in cu yd, bag size in cu ft)"],
  working: ({ materialVolume: cubicYards, bagSize }, { system }) => [
    { label: "Material", value: materialCubicFeet(cubicYards), kind: "waterVolume" },
    { label: "Bags before rounding up", value: packagesBeforeRounding(materialCubicFeet(cubicYards), bagCubicFeet(bagSize, system)) },
  ],
  calculate: ({ materialVolume: cubicYards, bagSize }, { system }) => wholeBags(cubicYards, bagCubicFeet(bagSize, system)),
});

function bagCubicFeet(bagSize: number, system: UnitSystem): number {
  return toUs("waterVolume", bagSize * CUBIC_METERS_PER_BAG_UNIT[system], system);
}

/** Bags are sold by the liter where other volumes are in cubic meters. */
const CUBIC_METERS_PER_BAG_UNIT = { us: 1, metric: 0.001 } as const;

export const materialWeight = worksheetFunction({
  name: "MATERIALWEIGHT",
  summary: "Weight of a volume of material as it lies.",
  arguments: [earthVolume("materialVolume", "Material volume"), choice("material", "Material", MATERIALS), units],
  result: weight("Weight"),
  sources: [printedDensities.from, commonPractice("Moist compost 1,000, mulch 800 and wet topsoil 3,000 lb a cu yd")],
  cautions: [usualWeight],
  example: { arguments: [5.19, "dry earth"], result: 10_510 / 2000, within: 0.0025, from: printedDensities.from },
  equation: ["W = V x density x 27 / 2000   (tons; V in cu yd, density in lb per cu ft)"],
  working: ({ material }) => [{ label: "Density", value: poundsPerCubicFoot(material), unit: "lb per cu ft" }],
  calculate: ({ materialVolume: cubicYards, material }) => materialTons(cubicYards, material),
});
