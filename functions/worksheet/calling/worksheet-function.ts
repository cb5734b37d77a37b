import type { Citation } from "../../published/source.ts";
import { units, type Argument, type ArgumentRule } from "./arguments.ts";
import { answerToCells, Call, type Plan } from "./call.ts";
import { isCellError, type Cell, type CellError, type CellInput } from "./cell.ts";
import { parametersFrom, type Parameter } from "./parameters.ts";
import { readerOf } from "./reading.ts";
import { presenterOf, resultFrom, type Result, type ResultSpec } from "./results.ts";
import type { Speaker } from "./speaker.ts";
import { smallPercentCautions } from "./small-percents.ts";
import { shownSteps, type ShownStep, type WorkingStep } from "./working.ts";

/** A worksheet function as every host and every reader of the catalogue sees it. */
export interface WorksheetFunction {
  /** "DRAWDOWN"; a cell says =SOAK.DRAWDOWN(...). */
  readonly name: string;
  readonly summary: string;
  /** In order, with `units` among them where the function has a dimension. */
  readonly parameters: readonly Parameter[];
  readonly result: Result;
  readonly sources: readonly Citation[];
  readonly cautions: readonly Caution<never>[];
  readonly example: Example;
  /** The equation as printed, a line each, in the US units of its source. */
  readonly equation: readonly string[];
  /** What a host calls: cells in, rows of cells out. Never throws. */
  evaluate(inputs: readonly CellInput[]): readonly (readonly Cell[])[];
  /** Cautions for one row of inputs (single cells or whole ranges); none when the input is missing or impossible. */
  cautionsFor(inputs: readonly CellInput[]): readonly string[];
  /** Intermediate values for one row of inputs, in the units of the call; none when the input is missing or impossible. */
  workingFor(inputs: readonly CellInput[]): readonly ShownStep[];
}

/** A true warning about input that computes: outside the published range, or commonly a slip. */
export interface Caution<Inputs> {
  readonly when: (inputs: Inputs) => boolean;
  readonly says: string | ((inputs: Inputs, speaker: Speaker) => string);
  /** What the reference says instead, where the words depend on the inputs of the call. */
  readonly about?: string;
}

/** A published worked example: these arguments give this result, `within` half its last printed digit. */
export interface Example {
  readonly arguments: readonly CellInput[];
  readonly result: Cell | readonly (readonly Cell[])[];
  readonly within?: number;
  readonly from: Citation;
}

type AnyArgument = Argument<string, unknown>;

/** What the arguments come to, in US units, by their names; `units` is not among it. */
type InputsOf<Arguments extends readonly AnyArgument[]> = {
  readonly [One in Arguments[number] as Exclude<One["rule"]["key"], (typeof units)["rule"]["key"]>]: One["value"];
};

/** Everything about one worksheet function, said once. */
export interface Declaration<Arguments extends readonly AnyArgument[], Output> {
  readonly name: string;
  readonly summary: string;
  /** In the order of a call. `units` is among them where an argument, a result or a sentence has a dimension. */
  readonly arguments: Arguments;
  readonly result: ResultSpec<Output>;
  readonly sources: readonly Citation[];
  readonly cautions?: readonly Caution<InputsOf<Arguments>>[];
  readonly example: Example;
  /** The equation as printed, a line each, in the US units of its source: "Q = (P - Ia)^2 / (P - Ia + S)   (in)". */
  readonly equation?: readonly string[];
  /** Intermediate values of one call, in the order a reviewer computes them; receives exactly what `calculate` receives. */
  readonly working?: (inputs: InputsOf<Arguments>, speaker: Speaker) => readonly WorkingStep[];
  /** Receives values in US units by the names of `arguments`, without `units`, and the speaker of the row's units. */
  readonly calculate: (inputs: InputsOf<Arguments>, speaker: Speaker) => Output | CellError;
}

/** Makes a calculation callable from cells: lifting, guarding, units and words are written once, for all. */
export function worksheetFunction<const Arguments extends readonly AnyArgument[], const Output>(
  declaration: Declaration<Arguments, Output>,
): WorksheetFunction {
  const { name, summary, sources, example, equation = [], working = noSteps } = declaration;
  const result = resultFrom(declaration.result);
  const rules = declaration.arguments.map(({ rule }): ArgumentRule => rule);
  const unitsPlace = rules.indexOf(units.rule);
  const planned = rules
    .map((rule, place) => ({ rule, place, readers: { us: readerOf(rule, "us"), metric: readerOf(rule, "metric") } }))
    .filter(({ place }) => place !== unitsPlace);
  const plan: Plan = {
    name,
    arguments: planned,
    unitsPlace: unitsPlace === -1 ? undefined : unitsPlace,
    result,
    presenters: { us: presenterOf(result, "us"), metric: presenterOf(result, "metric") },
    calculate: declaration.calculate as Plan["calculate"],
  };
  return {
    name,
    summary,
    parameters: parametersFrom(rules),
    result,
    sources,
    /** @documentation */
    cautions: cautionsOf(declaration),
    example,
    equation,
    evaluate: (inputs) => answerToCells(plan, inputs) ?? new Call(plan, inputs).answers(),
    /** @documentation */
    cautionsFor(given) {
      const row = new Call(plan, given).firstRow();
      if (row === undefined) return [];
      const inputs = row.inputs as InputsOf<Arguments>;
      return cautionsOf(declaration)
        .filter(({ when }) => when(inputs))
        .map(({ says }) => (typeof says === "string" ? says : says(inputs, row.speaker)));
    },
    /** @documentation */
    workingFor(given) {
      const row = new Call(plan, given).firstRow();
      if (row === undefined) return [];
      const inputs = row.inputs as InputsOf<Arguments>;
      try {
        return isCellError(declaration.calculate(inputs, row.speaker)) ? [] : shownSteps(working(inputs, row.speaker), row.speaker.system);
      } catch {
        // Beyond what the calculation can take, the cell says so in words and there is nothing to follow.
        return [];
      }
    },
  };
}

/** Those declared, and those that every percent carries. */
function cautionsOf<Arguments extends readonly AnyArgument[]>({
  arguments: own,
  cautions = [],
}: Pick<Declaration<Arguments, unknown>, "arguments" | "cautions">): readonly Caution<InputsOf<Arguments>>[] {
  return [...cautions, ...smallPercentCautions(own.map(({ rule }) => rule))];
}

function noSteps(): readonly WorkingStep[] {
  return [];
}
