import {
  areaElsewhere,
  checkDownspout,
  LININGS,
  ROOF_PEAK_COEFFICIENT,
  USUAL_SIZES,
  type Conduit,
  type DownspoutCheck,
  type DownspoutInputs,
  type Lining,
} from "../../../addin/actions/yard/check-downspout.ts";
import { unitOf, type UnitSystem } from "../../../functions/quantities.ts";
import { shown } from "../../parts/numbers.ts";
import { quantityWords } from "../../parts/quantity-words.ts";
import { isRefused, readTypedNumber, type NumberRule } from "../../parts/typed-number.ts";
import type { SurfaceRow } from "./surface-draft.ts";
import { surfacesText } from "./surfaces-text.ts";

const words = surfacesText.downspout;

/** The form as typed. */
export interface TypedDownspout {
  readonly conduit: Conduit;
  readonly roofArea: string;
  readonly intensity: string;
  readonly source: string;
  readonly coefficient: string;
  readonly width: string;
  readonly slope: string;
  readonly lining: string;
  readonly roughness: string;
}

export const BLANK_DOWNSPOUT: TypedDownspout = {
  conduit: "pipe",
  roofArea: "",
  intensity: "",
  source: "",
  coefficient: "",
  width: "",
  slope: "",
  lining: LININGS.pipe[0]?.name ?? "",
  roughness: "",
};

type NumberKey = "roofArea" | "intensity" | "coefficient" | "width" | "slope" | "roughness";

/** What a blank stands for, so that the form can say it: nothing for the intensity, which has no default. */
export interface DownspoutDefaults {
  readonly roofArea: number | null;
  /** The blank stands for the part that does not drain here yet, not for the whole surface. */
  readonly isElsewhere: boolean;
  readonly lining: Lining | null;
}

export function defaultsOf(row: SurfaceRow, typed: TypedDownspout): DownspoutDefaults {
  const elsewhere = areaElsewhere(row);
  const isElsewhere = elsewhere !== null && elsewhere > 0;
  return {
    roofArea: isElsewhere ? elsewhere : row.record.area,
    isElsewhere,
    lining: LININGS[typed.conduit].find(({ name }) => name === typed.lining) ?? null,
  };
}

export interface DownspoutAsRead {
  readonly inputs: DownspoutInputs;
  readonly check: DownspoutCheck;
  readonly faults: Readonly<Partial<Record<NumberKey, string>>>;
}

export function readDownspout(typed: TypedDownspout, row: SurfaceRow, units: UnitSystem): DownspoutAsRead {
  const faults: Partial<Record<NumberKey, string>> = {};
  const numberOf = (key: NumberKey, rule: NumberRule): number | null => {
    const read = readTypedNumber(typed[key], rule);
    if (!isRefused(read)) return read.value;
    faults[key] = read.sentence;
    return null;
  };
  const defaults = defaultsOf(row, typed);
  const inputs: DownspoutInputs = {
    conduit: typed.conduit,
    units,
    roofArea: numberOf("roofArea", { label: words.roofArea, atLeast: 0 }) ?? defaults.roofArea,
    intensity: numberOf("intensity", { label: words.intensity, moreThan: 0 }),
    coefficient: numberOf("coefficient", { label: words.coefficient, moreThan: 0, atMost: 1 }) ?? ROOF_PEAK_COEFFICIENT,
    width: numberOf("width", { label: words.width[typed.conduit], moreThan: 0 }),
    slopePercent: numberOf("slope", { label: words.slope, atLeast: 0, atMost: 100 }),
    roughness: numberOf("roughness", { label: words.roughness, moreThan: 0 }) ?? defaults.lining?.roughness ?? null,
  };
  return { inputs, check: checkDownspout(inputs), faults };
}

export interface DownspoutVerdict {
  readonly carries: boolean;
  /** "Carries it" or "Too small". */
  readonly inShort: string;
  readonly sentences: readonly string[];
}

/** The answer in words; null while something is missing or at fault. */
export function downspoutVerdict({ inputs, check, faults }: DownspoutAsRead): DownspoutVerdict | null {
  const { peak, capacity, carries, sizeThatWould } = check;
  if (Object.keys(faults).length > 0 || carries === null || "sentence" in peak || "sentence" in capacity) return null;
  const { conduit, units, slopePercent } = inputs;
  const what = named(inputs);
  const flows = [flowWords(peak.value, units), what, flowWords(capacity.value, units)] as const;
  if (carries) return { carries, inShort: words.badge.carries, sentences: [words.carries(...flows)] };
  const tooSmall = { carries, inShort: words.badge.tooSmall };
  if (slopePercent === 0) return { ...tooSmall, sentences: [words.level] };
  const largest = USUAL_SIZES[conduit][units].at(-1) ?? 0;
  const size = (width: number) => words.a[conduit](quantityWords("depth", width, units));
  return {
    ...tooSmall,
    sentences: [
      words.tooSmall(...flows),
      sizeThatWould === null ? words.noneWould(quantityWords("depth", largest, units)) : words.would(size(sizeThatWould)),
    ],
  };
}

/** What the sheet keeps of the check: the answer and everything it rests on, to be followed by hand. */
export function downspoutRecord(read: DownspoutAsRead, typed: TypedDownspout, day: string): string | null {
  const verdict = downspoutVerdict(read);
  const { roofArea, intensity, coefficient, slopePercent, roughness, units } = read.inputs;
  if (verdict === null || roofArea === null || intensity === null || coefficient === null || slopePercent === null || roughness === null)
    return null;
  return [
    `${verdict.inShort}.`,
    ...verdict.sentences,
    words.record.roof(
      quantityWords("area", roofArea, units),
      quantityWords("rate", intensity, units),
      shown(coefficient, 3),
      typed.source.trim(),
    ),
    words.record.conduit(typed.lining, shown(slopePercent, 3), shown(roughness, 4)),
    words.record.checked(day),
  ].join(" ");
}

function named({ conduit, units, width }: DownspoutInputs): string {
  return words.a[conduit](quantityWords("depth", width ?? 0, units));
}

/** "0.132 cfs", "3.74 L/s". */
export function flowWords(flow: number, units: UnitSystem): string {
  return `${shown(flow, units === "us" ? 3 : 2)} ${unitOf("flow", units)}`;
}
