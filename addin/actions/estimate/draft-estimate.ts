import { CUBIC_FEET_PER_CUBIC_YARD, fromUs, toUs, unitOf } from "../../../functions/quantities.ts";
import { materialTons, type Material } from "../../../functions/amendment/material-weight.ts";
import { isCellError, type CellInput } from "../../../functions/worksheet/calling/cell.ts";
import { digHours } from "../../../functions/worksheet/earthwork.ts";
import { plainKey } from "../../../functions/worksheet/calling/typed-words.ts";
import { layerVolume, soilState } from "../../../functions/worksheet/soil.ts";
import type { WorksheetFunction } from "../../../functions/worksheet/calling/worksheet-function.ts";
import type { LINE_KINDS } from "../../records/estimate-lines.ts";
import { DRAFTED_ITEMS, PLANT_ITEMS, type Container, type PriceRow } from "../../records/prices.ts";
import type { SettingValues } from "../../records/program.ts";
import type { UnitSystem } from "../../records/site-terms.ts";
import type { Answer, BasinDraft } from "../basin/draft-basin.ts";
import { readPalette } from "../planting/palette.ts";
import { clumpOf } from "../planting/plan.ts";
import { containerFor, plantsByKind, type PlantsOfKind } from "../planting/plant-counts.ts";
import type { Program, Yard } from "../program/read-program.ts";

export type LineKind = (typeof LINE_KINDS)[number];

/** One line that a garden asks for, in the unit in which its item is priced. */
export interface DraftedLine {
  readonly group: string;
  readonly item: string;
  readonly quantity: number;
  readonly unit: string;
  readonly kind: LineKind;
  /** Where the quantity comes from. */
  readonly note: string;
}

export interface EstimateDraft {
  readonly lines: readonly DraftedLine[];
  /** What could not be drafted, and why. */
  readonly sentences: readonly string[];
}

/** The lines of a garden of this size: soil mix, mulch, stone, plants, hire, disposal and the hours to dig it by hand. */
export function draftLines(program: Program, yard: Yard, basin: BasinDraft): EstimateDraft {
  if (!("value" in basin.floorArea)) return { lines: [], sentences: [basin.floorArea.sentence] };
  const { units } = yard;
  const materials: readonly Volume[] = [
    ...basin.mix
      .filter(({ material }) => material !== KEPT)
      .map(({ material, volume }) => ({ group: GROUPS.soil, item: material, volume, note: "Loose, for the soil mix, settling included." })),
    ...materialOf(basin.mulchVolume, GROUPS.mulch, DRAFTED_ITEMS.mulch, "Over floor and sides."),
    ...materialOf(overflowStone(program.settings, units), GROUPS.stone, DRAFTED_ITEMS.stone, "For the overflow, by the size on Program."),
    ...materialOf(soilLeftOver(basin, units), GROUPS.disposal, DRAFTED_ITEMS.disposal, leftOverNote(basin)),
  ];
  const hours = handDigHours(basin.digVolume, units);
  return {
    lines: [
      ...materials.filter(({ volume }) => volume > 0).map((material) => lineOfMaterial(material, program.prices, units)),
      ...plantLines(program, yard, basin),
      {
        group: GROUPS.tools,
        item: DRAFTED_ITEMS.toolHire,
        quantity: 1,
        unit: unitOnPrices(program.prices, DRAFTED_ITEMS.toolHire) ?? "day",
        kind: "cash",
        note: "Common practice: change it to what you hire.",
      },
      ...(hours === null
        ? []
        : [
            {
              group: GROUPS.volunteers,
              item: DRAFTED_ITEMS.volunteerHour,
              quantity: roundedUp(hours),
              unit: "h",
              kind: "in-kind" as const,
              note: "Digging by hand in firm soil. Planting and mulching come on top.",
            },
          ]),
    ],
    sentences: basin.mixSentence === null ? [] : [basin.mixSentence],
  };
}

export const GROUPS = {
  soil: "Soil",
  mulch: "Mulch",
  stone: "Stone",
  plants: "Plants",
  tools: "Tools and hire",
  disposal: "Disposal",
  volunteers: "Volunteers",
} as const;

/** Soil of the dig that goes back into the mix: nothing to buy, and nothing to haul off. */
const KEPT = "native soil";

interface Volume {
  readonly group: string;
  readonly item: string;
  /** In the yard's unit of earth. */
  readonly volume: number;
  readonly note: string;
}

function materialOf(volume: Answer, group: string, item: string, note: string): Volume[] {
  return "value" in volume ? [{ group, item, volume: volume.value, note }] : [];
}

export function overflowStone(settings: SettingValues, units: UnitSystem): Answer {
  return first(layerVolume, [
    fromUs("area", settings.overflowStoneSquareFeet, units),
    fromUs("depth", settings.overflowStoneInches, units),
    0,
    units,
  ]);
}

/** What berm, mulch and soil mix leave of the dig, less what goes back into the mix; all of it while the slope is not measured. */
function soilLeftOver({ earthwork, looseVolume, mix }: BasinDraft, units: UnitSystem): Answer {
  const loose =
    earthwork !== null && "value" in earthwork.leftOver
      ? first(soilState, [Math.max(0, earthwork.leftOver.value), "in place", "loose", "loam", units])
      : looseVolume;
  if (!("value" in loose)) return loose;
  const kept = mix.find(({ material }) => material === KEPT)?.volume ?? 0;
  return { value: Math.max(0, loose.value - kept) };
}

function leftOverNote({ earthwork }: BasinDraft): string {
  return `Loose, less soil kept for the mix, ${earthwork === null ? "a berm not counted because the slope is not measured" : "and less the berm"}.`;
}

function handDigHours(digVolume: Answer, units: UnitSystem): number | null {
  if (!("value" in digVolume)) return null;
  const hours = first(digHours, [digVolume.value, "firm", 1, true, units]);
  return "value" in hours ? hours.value : null;
}

/** Plants of the planting plan, by their own rows of Prices or by container; before there is a plan, a count by spacing. */
function plantLines(program: Program, yard: Yard, basin: BasinDraft): DraftedLine[] {
  const line = (item: string, quantity: number, note: string): DraftedLine => ({
    group: GROUPS.plants,
    item,
    quantity,
    unit: unitOnPrices(program.prices, item) ?? "plant",
    kind: "cash",
    note,
  });
  const usual = containerFor(program.settings.plantSpacingFeet);
  const kinds = plantsOfPlan(program, yard);
  if (kinds.length === 0) {
    const { plants } = basin;
    return "value" in plants && plants.value > 0
      ? [line(PLANT_ITEMS[usual], plants.value, "A first count by the spacing on Program: there is no planting plan yet.")]
      : [];
  }
  const hasOwnRow = ({ plant }: PlantsOfKind) => priceRowOf(program.prices, plant) !== undefined;
  const containers = (Object.keys(PLANT_ITEMS) as Container[]).flatMap((container): DraftedLine[] => {
    const own = kinds.filter((kind) => !hasOwnRow(kind) && (kind.container ?? usual) === container);
    const together = own.reduce((sum, { count }) => sum + count, 0);
    const named = own.map(({ plant, count }) => `${count} ${plant}`).join(", ");
    return together > 0 ? [line(PLANT_ITEMS[container], together, `From the planting plan: ${named}.`)] : [];
  });
  return [...kinds.filter(hasOwnRow).map(({ plant, count }) => line(plant, count, "From the planting plan.")), ...containers];
}

/** Kinds of the plan with their counts, as drawing and list have them. */
export function plantsOfPlan({ plants }: Pick<Program, "plants">, { clumps, units }: Yard): readonly PlantsOfKind[] {
  return plantsByKind(clumps.map(clumpOf), readPalette(plants, units), units).filter(({ count }) => count > 0);
}

/** A volume in the unit in which its item is priced, where that is a unit of volume or weight; else in the yard's own. */
function lineOfMaterial({ group, item, volume, note }: Volume, prices: readonly PriceRow[], units: UnitSystem): DraftedLine {
  const own = unitOf("earthVolume", units);
  const unit = unitOnPrices(prices, item) ?? own;
  const each = cubicYardsIn(unit, item);
  const quantity = each === null ? volume : toUs("earthVolume", volume, units) / each;
  return { group, item, quantity: roundedUp(quantity), unit: each === null ? own : unit, kind: "cash", note };
}

/** Cubic yards in one unit of a material, or null for a unit such as "bag" that says no volume. */
function cubicYardsIn(unit: string, item: string): number | null {
  const spelled = plainKey(unit).replace(/\./g, "").replace(/s$/, "");
  if (["cu yd", "cubic yard", "yd3", "yd³", "yard"].includes(spelled)) return 1;
  if (["cu ft", "cubic foot", "cubic feet", "ft3", "ft³"].includes(spelled)) return 1 / CUBIC_FEET_PER_CUBIC_YARD;
  if (["m³", "m3", "cu m", "cubic meter", "cubic metre"].includes(spelled)) return toUs("earthVolume", 1, "metric");
  if (["l", "liter", "litre"].includes(spelled)) return toUs("earthVolume", 0.001, "metric");
  const weighed = WEIGHED.get(plainKey(item));
  if (weighed === undefined || !["ton", "t", "tonne"].includes(spelled)) return null;
  return toUs("weight", 1, spelled === "ton" ? "us" : "metric") / materialTons(1, weighed);
}

/** Materials often sold by weight, and as what they are weighed. */
const WEIGHED: ReadonlyMap<string, Material> = new Map([
  [DRAFTED_ITEMS.stone, "crushed stone"],
  ["sand", "wet gravel and sand"],
]);

export function priceRowOf(prices: readonly PriceRow[], item: string): PriceRow | undefined {
  return prices.find(({ record }) => record.item !== null && plainKey(record.item) === plainKey(item));
}

export function unitOnPrices(prices: readonly PriceRow[], item: string): string | null {
  return priceRowOf(prices, item)?.record.unit ?? null;
}

/** To a hundredth, upwards; what is a hair above a hundredth by arithmetic alone stays there. */
function roundedUp(quantity: number): number {
  return Math.ceil(quantity * 100 - 1e-6) / 100;
}

function first(worksheetFunction: WorksheetFunction, inputs: readonly CellInput[]): Answer {
  const cell = worksheetFunction.evaluate(inputs)[0]?.[0];
  if (typeof cell === "number") return { value: cell };
  return { sentence: isCellError(cell) ? cell.sentence : "An input is missing." };
}
