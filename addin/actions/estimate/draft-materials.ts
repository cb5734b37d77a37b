import type { Material } from "../../../functions/amendment/material-weight.ts";
import { PICKUP_TONS } from "../../../functions/earthwork/truck-loads.ts";
import type { EarthSoil } from "../../../functions/published/fm-5-434.ts";
import { fromUs } from "../../../functions/quantities.ts";
import { bags, materialWeight } from "../../../functions/worksheet/amendment.ts";
import type { CellInput } from "../../../functions/worksheet/calling/cell.ts";
import { stockpile, truckLoads } from "../../../functions/worksheet/earthwork.ts";
import { soilState } from "../../../functions/worksheet/soil.ts";
import type { WorksheetFunction } from "../../../functions/worksheet/calling/worksheet-function.ts";
import type { SettingValues } from "../../records/program.ts";
import type { UnitSystem } from "../../records/site-terms.ts";
import type { BasinDraft } from "../basin/draft-basin.ts";
import { overflowStone } from "./draft-estimate.ts";
import { answer, rowOf, type Answer } from "../worksheet-answers.ts";

/** What only the person who orders knows, in the yard's units; null where nothing was typed. */
export interface OrderInputs {
  readonly soil: EarthSoil;
  readonly loadVolume: number | null;
  /** The most a load may weigh. */
  readonly loadWeight: number | null;
  /** In cu ft, on a metric yard in L. */
  readonly bagSize: number | null;
}

export interface MaterialLine {
  readonly material: string;
  readonly volume: Answer;
  /** The material of SOAK.MATERIALWEIGHT it was weighed as; null where there is none like it. */
  readonly weighedAs: Material | null;
  readonly weight: Answer | null;
  /** Null where no bag size was typed. */
  readonly bags: Answer | null;
}

export interface MaterialsDraft {
  readonly inPlace: Answer;
  readonly loose: Answer;
  readonly earthWeight: Answer;
  readonly pileRadius: Answer;
  readonly pileHeight: Answer;
  readonly pileGround: Answer;
  /** Null where no load was typed. */
  readonly loads: Answer | null;
  readonly lines: readonly MaterialLine[];
  /** What is too heavy for one trip of a pickup, and the trips it takes. */
  readonly pickupTrips: readonly { readonly material: string; readonly trips: number }[];
  readonly cautions: readonly string[];
}

/** The name that the dug earth goes by in lists. */
export const DUG_EARTH = "dug earth";
export const OVERFLOW_STONE = "overflow stone";
export const MULCH = "mulch";

/** Dig, heap, loads, mix, mulch and stone of a basin, each from its worksheet function, with that function's cautions. */
export function draftMaterials(basin: BasinDraft, settings: SettingValues, order: OrderInputs): MaterialsDraft {
  const { units } = basin;
  const cautions = new Set<string>();
  const ask = (asked: WorksheetFunction, inputs: readonly CellInput[]): readonly Answer[] => {
    asked.cautionsFor([...inputs, units]).forEach((caution) => cautions.add(caution));
    return rowOf(asked, [...inputs, units], asked.result.values.length).map(answer);
  };
  const one = (asked: WorksheetFunction, inputs: readonly CellInput[]): Answer => ask(asked, inputs)[0] ?? NOTHING;

  const inPlace = basin.digVolume;
  const loose = after(inPlace, (volume) => one(soilState, [volume, "in place", "loose", order.soil]));
  const pile = "value" in loose ? ask(stockpile, [loose.value, null]) : [loose, loose, loose];
  const weigh = (volume: Answer, material: Material | null) =>
    material === null ? null : after(volume, (of) => one(materialWeight, [of, material]));
  const lines = volumesToBuy(basin, settings).map(({ material, volume }): MaterialLine => {
    const weighedAs = WEIGHED_AS.get(material) ?? null;
    return {
      material,
      volume,
      weighedAs,
      weight: weigh(volume, weighedAs),
      bags: order.bagSize === null ? null : after(volume, (of) => one(bags, [of, order.bagSize])),
    };
  });
  return {
    inPlace,
    loose,
    earthWeight: weigh(loose, MOIST_EARTH) ?? NOTHING,
    pileRadius: pile[0] ?? NOTHING,
    pileHeight: pile[1] ?? NOTHING,
    pileGround: pile[2] ?? NOTHING,
    loads:
      order.loadVolume === null
        ? null
        : after(loose, (volume) => one(truckLoads, [volume, order.loadVolume, order.loadWeight, MOIST_EARTH])),
    lines,
    pickupTrips: pickupTrips(units, [{ material: DUG_EARTH, volume: loose, weighedAs: MOIST_EARTH }, ...lines]),
    cautions: [...cautions],
  };
}

function volumesToBuy(
  { units, mix, mulchVolume }: BasinDraft,
  settings: SettingValues,
): readonly Pick<MaterialLine, "material" | "volume">[] {
  return [
    ...mix.map(({ material, volume }) => ({ material, volume: { value: volume } })),
    { material: MULCH, volume: mulchVolume },
    { material: OVERFLOW_STONE, volume: overflowStone(settings, units) },
  ];
}

/** By weight alone: the bed is taken to hold it. */
function pickupTrips(
  units: UnitSystem,
  lines: readonly Pick<MaterialLine, "material" | "volume" | "weighedAs">[],
): MaterialsDraft["pickupTrips"] {
  return lines.flatMap(({ material, volume, weighedAs }) => {
    if (weighedAs === null || !("value" in volume) || volume.value === 0) return [];
    const [trips] = truckLoads.evaluate([volume.value, volume.value, fromUs("weight", PICKUP_TONS, units), weighedAs, units])[0] ?? [];
    return typeof trips === "number" && trips > 1 ? [{ material, trips }] : [];
  });
}

const MOIST_EARTH: Material = "moist earth";

/** Which published or usual weight stands for a material of a mix; peat and sorbents have none. */
const WEIGHED_AS: ReadonlyMap<string, Material> = new Map<string, Material>([
  ["sand", "wet gravel and sand"],
  ["topsoil", "wet topsoil"],
  ["compost", "compost"],
  ["organic matter", "compost"],
  ["native soil", "moist earth"],
  ["silt and clay", "moist earth"],
  [MULCH, "mulch"],
  [OVERFLOW_STONE, "crushed stone"],
]);

const NOTHING: Answer = { sentence: "There is no answer." };

function after(answer: Answer, next: (value: number) => Answer): Answer {
  return "value" in answer ? next(answer.value) : answer;
}
