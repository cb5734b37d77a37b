import { citationText } from "../../functions/published/source.ts";
import { catalogue } from "../../functions/worksheet/catalogue.ts";
import { isCellError, type Cell, type CellInput } from "../../functions/worksheet/calling/cell.ts";
import type { NamedResult, UnitNames } from "../../functions/worksheet/calling/results.ts";
import { speakers } from "../../functions/worksheet/calling/speaker.ts";
import type { Caution, WorksheetFunction } from "../../functions/worksheet/calling/worksheet-function.ts";

/** One function as the reference tells it, in words: the help page and the page in the repository say the same. */
export interface ReferenceEntry {
  readonly name: string;
  readonly summary: string;
  /** "=SOAK.DRAWDOWN(ponding, rate, [media])" */
  readonly usage: string;
  readonly inputs: readonly ReferenceInput[];
  readonly result: string;
  readonly equation: readonly string[];
  readonly cautions: readonly string[];
  readonly sources: readonly string[];
  readonly example: { readonly formula: string; readonly answer: string; readonly from: string };
}

export interface ReferenceInput {
  readonly name: string;
  readonly us: string;
  readonly metric: string;
  readonly takes: string;
}

export const referenceTitle = "Soakbook: the worksheet functions";

export const howToWrite =
  `Type a function into a cell with its prefix, as in =SOAK.${catalogue[0]?.name ?? "VERSION"}(...). ` +
  "What stands in brackets may be left out. An argument can be a cell or a range unless it says otherwise; with ranges the answers spill. " +
  'With "metric" as the last argument, inputs and answers are in metric units. ' +
  "Equations are in US units; metric inputs are converted before and answers after. " +
  "Results are for planning: local codes and licensed practice decide.";

/** Every function, in the order of the catalogue. */
export function referenceEntries(): readonly ReferenceEntry[] {
  return catalogue.map(entryOf);
}

function entryOf(declared: WorksheetFunction): ReferenceEntry {
  const { name, summary, parameters, equation, cautions, sources, example } = declared;
  return {
    name,
    summary,
    usage: `=SOAK.${name}(${parameters.map(({ key, optional }) => (optional ? `[${key}]` : key)).join(", ")})`,
    inputs: parameters.map(({ key, optional, units, description }) => ({
      name: optional ? `[${key}]` : key,
      ...unitColumns(units),
      takes: description,
    })),
    result: resultWords(declared),
    equation,
    cautions: [...new Set(cautions.map(cautionWords))],
    sources: [...new Set(sources.map(citationText))],
    example: {
      formula: `=SOAK.${name}(${example.arguments.map(written).join(", ")})`,
      answer: Array.isArray(example.result) ? written(example.result as CellInput) : shown(example.result as Cell),
      from: citationText(example.from),
    },
  };
}

function unitColumns(units: UnitNames | undefined): { readonly us: string; readonly metric: string } {
  return { us: units?.us ?? "", metric: units?.metric ?? "" };
}

function cautionWords({ says, about }: Caution<never>): string {
  if (about !== undefined) return about;
  return typeof says === "string" ? says : says({} as never, speakers.us);
}

function resultWords({ result }: WorksheetFunction): string {
  const values = result.values.map(withUnits).join("; ");
  if (result.shape === "row") return `A row of ${values}.`;
  if (result.shape === "table") return `A table with the columns ${values}.`;
  return `${values}.`;
}

function withUnits({ label, units }: NamedResult): string {
  return units ? `${label} (${units.us} or ${units.metric})` : label;
}

/** An argument as it is typed into a formula. */
function written(input: CellInput): string {
  if (input === undefined || input === null) return "";
  if (Array.isArray(input)) return `{${(input as Rows).map((row) => row.map(written).join(", ")).join("; ")}}`;
  if (typeof input === "string") return `"${input.replaceAll('"', '""')}"`;
  return shown(input as Cell);
}

type Rows = readonly (readonly Cell[])[];

function shown(cell: Cell): string {
  if (cell === null) return "";
  if (isCellError(cell)) return cell.code;
  return typeof cell === "boolean" ? String(cell).toUpperCase() : String(cell);
}
