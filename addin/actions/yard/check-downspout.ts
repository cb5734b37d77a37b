import { halfRoundTrenchFlow } from "../../../functions/overflow/half-round-trench.ts";
import { peakCoefficients } from "../../../functions/published/asce-manual-37.ts";
import { corrugatedPlasticRoughness } from "../../../functions/published/manning-roughness-page.ts";
import { citationText } from "../../../functions/published/source.ts";
import { channelRoughness, pipeRoughness } from "../../../functions/published/winchester-stormwater-code.ts";
import { isCellError, type CellInput } from "../../../functions/worksheet/calling/cell.ts";
import { pipeFlow } from "../../../functions/worksheet/overflow.ts";
import { peakFlow } from "../../../functions/worksheet/rain.ts";
import type { WorksheetFunction } from "../../../functions/worksheet/calling/worksheet-function.ts";
import type { Workbook } from "../../workbook/port.ts";
import { privateLinesReminder, trenchReminder, utilitiesReminder } from "../../checklist/reminders.ts";
import type { UnitSystem } from "../../records/site-terms.ts";
import type { SurfaceRow } from "../../records/surfaces.ts";
import type { Answer } from "../basin/draft-basin.ts";
import { changeRow, type Conflict } from "../program/write-records.ts";

export type Conduit = "pipe" | "trench";

/** In the yard's units; null where nothing is typed. */
export interface DownspoutInputs {
  readonly conduit: Conduit;
  readonly units: UnitSystem;
  readonly roofArea: number | null;
  readonly intensity: number | null;
  readonly coefficient: number | null;
  /** Inside diameter of the pipe, or width of the trench at its top. */
  readonly width: number | null;
  readonly slopePercent: number | null;
  readonly roughness: number | null;
}

export interface DownspoutCheck {
  /** The roof's peak flow, by SOAK.PEAKFLOW. */
  readonly peak: Answer;
  /** What the pipe or trench carries just full, by SOAK.PIPEFLOW. */
  readonly capacity: Answer;
  /** Null while either is not known. */
  readonly carries: boolean | null;
  /** The least usual size that carries the peak on the same slope; null where this one does, or where none would. */
  readonly sizeThatWould: number | null;
  readonly cautions: readonly string[];
}

/** Usual widths in the trade's own inches and millimetres. Common practice, no source. */
export const USUAL_SIZES: Readonly<Record<Conduit, Readonly<Record<UnitSystem, readonly number[]>>>> = {
  pipe: { us: [3, 4, 6, 8], metric: [75, 100, 150, 200] },
  trench: { us: [6, 8, 10, 12, 15, 18, 24], metric: [150, 200, 250, 300, 400, 500, 600] },
};

export interface Lining {
  readonly name: string;
  readonly roughness: number;
  readonly source: string;
}

const { PVC, HDPE } = pipeRoughness.values;

export const LININGS: Readonly<Record<Conduit, readonly Lining[]>> = {
  pipe: [
    { name: "smooth plastic (PVC)", roughness: PVC, source: citationText(pipeRoughness.from) },
    { name: "plastic with a smooth inside (HDPE)", roughness: HDPE, source: citationText(pipeRoughness.from) },
    {
      name: "corrugated plastic",
      roughness: corrugatedPlasticRoughness.values["corrugated plastic"],
      source: citationText(corrugatedPlasticRoughness.from),
    },
  ],
  trench: Object.entries(channelRoughness.values).map(([name, roughness]) => ({
    name,
    roughness,
    source: citationText(channelRoughness.from),
  })),
};

/** The most that is printed for a roof, so that a pipe is never found large enough by a low coefficient. */
export const ROOF_PEAK_COEFFICIENT = peakCoefficients.values.roof[1];
export const ROOF_PEAK_SOURCE = citationText(peakCoefficients.from);

/** Usual cautions where a trench is dug for a pipe. */
export const TRENCH_REMINDERS = [utilitiesReminder, privateLinesReminder, trenchReminder];

export function checkDownspout(inputs: DownspoutInputs): DownspoutCheck {
  const { conduit, units, width } = inputs;
  const peakInputs = [inputs.roofArea, inputs.intensity, inputs.coefficient ?? ROOF_PEAK_COEFFICIENT, units];
  const peak = answerOf(peakFlow, peakInputs, "Roof area and rain intensity are missing.");
  const capacity = capacityOf(inputs, width);
  const known = "value" in peak && "value" in capacity;
  const carries = known ? capacity.value >= peak.value : null;
  const sizeThatWould = known && carries === false ? leastSize(inputs, peak.value) : null;
  // A trench is rougher than any pipe that is printed, so its roughness is not held against theirs.
  const ofConduit = pipeFlow.cautionsFor(capacityInputs(conduit === "pipe" ? inputs : { ...inputs, roughness: null }, width));
  return { peak, capacity, carries, sizeThatWould, cautions: [...peakFlow.cautionsFor(peakInputs), ...ofConduit] };
}

function leastSize(inputs: DownspoutInputs, peak: number): number | null {
  const enough = USUAL_SIZES[inputs.conduit][inputs.units].find((size) => {
    const capacity = capacityOf(inputs, size);
    return "value" in capacity && capacity.value >= peak;
  });
  return enough ?? null;
}

function capacityOf(inputs: DownspoutInputs, width: number | null): Answer {
  const full = answerOf(pipeFlow, capacityInputs(inputs, width), "Diameter, slope and roughness are missing.");
  return "value" in full && inputs.conduit === "trench" ? { value: halfRoundTrenchFlow(full.value) } : full;
}

function capacityInputs({ slopePercent, roughness, units }: DownspoutInputs, width: number | null): CellInput[] {
  return [width, slopePercent, roughness, units];
}

function answerOf(worksheetFunction: WorksheetFunction, inputs: readonly CellInput[], whenBlank: string): Answer {
  const cell = worksheetFunction.evaluate(inputs)[0]?.[0];
  if (typeof cell === "number") return { value: cell };
  return { sentence: isCellError(cell) ? cell.sentence : whenBlank };
}

/** The part of a roof that does not drain here yet: what a rerouted downspout would bring. Null where the area is not known. */
export function areaElsewhere({ record: { area, share } }: SurfaceRow): number | null {
  return area === null ? null : area * (1 - (share ?? 1));
}

/** Keeps the check beside the roof it is for. */
export function recordDownspout(workbook: Workbook, row: SurfaceRow, words: string): Promise<readonly Conflict[]> {
  return changeRow(workbook, row, { downspout: words });
}
