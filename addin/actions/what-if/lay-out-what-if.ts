import { asWord } from "../../records/as-word.ts";
import { unitOf } from "../../../functions/quantities.ts";
import { isNumberKind } from "../../../functions/worksheet/calling/reading.ts";
import { writtenUnit } from "../../../functions/worksheet/calling/working.ts";
import type { Parameter } from "../../../functions/worksheet/calling/parameters.ts";
import type { NamedResult } from "../../../functions/worksheet/calling/results.ts";
import { designSheet } from "../../records/design.ts";
import type { Places } from "../../records/program.ts";
import { whatIfSheet } from "../../records/what-if.ts";
import { absolute, addressOf, type CellRange, type CellValue, type FormulaWrite, type ValueWrite } from "../../workbook/port.ts";
import { factorOf, feedOf, takesUnits, variable, type Varied, type WhatIfRequest } from "./what-if-request.ts";
import { metricFactor, sourceForEveryYard, sourceOfYard, unlessBlank } from "./what-if-links.ts";

/** A table ready to be written: every cell it fills, and where its answers stand. */
export interface WhatIfTable {
  readonly title: string;
  /** Everything the table takes, the cells that its formulas fill included. */
  readonly area: CellRange;
  readonly answers: CellRange;
  readonly values: readonly ValueWrite[];
  readonly formulas: readonly FormulaWrite[];
}

/** A line of shared inputs: changed in its value cell, and the table follows. */
interface InputLine {
  readonly label: string;
  readonly value: Content;
  readonly unit: Content;
  readonly note: string;
}

type Content = { readonly value: CellValue } | { readonly formula: string };

/** Lays the table out below `top`. The request has no faults (faultsOf). */
export function layOutWhatIf(request: WhatIfRequest, places: Places, top: number): WhatIfTable {
  return request.scope.kind === "all" ? new TableOfYards(request, places, top).table() : new TableOfOne(request, places, top).table();
}

const TITLE_LINES = 2;
const LABELS = ["Shared input", "Value", "Unit", "What it is"] as const;

/** What both kinds of table have in common: a title, the shared inputs, and one formula that meets its headings. */
abstract class Table {
  readonly #values: ValueWrite[] = [];
  readonly #formulas: FormulaWrite[] = [];
  protected readonly inputsRow: number;

  constructor(
    protected readonly request: WhatIfRequest,
    protected readonly places: Places,
    protected readonly top: number,
  ) {
    this.inputsRow = top + TITLE_LINES + 1;
  }

  protected abstract inputLines(): readonly InputLine[];
  /** Writes headings, sides and formula from this row on, and returns where the answers stand. */
  protected abstract grid(headingRow: number): CellRange;

  table(): WhatIfTable {
    const { top } = this;
    const title = titleOf(this.request);
    const lines = this.inputLines();
    this.put(top, 0, { value: title });
    this.put(top + 1, 0, {
      value:
        "Change any value, step or shared input: the answers follow. A cell that shows an error says why in words when it is selected.",
    });
    this.putValues(this.inputsRow - 1, 0, [[...LABELS]]);
    lines.forEach(({ label, value, unit, note }, place) => {
      const row = this.inputsRow + place;
      [{ value: label }, value, unit, { value: note }].forEach((content, column) => this.put(row, column, content));
    });
    const answers = this.grid(this.inputsRow + lines.length + 1);
    const rows = answers.row + answers.rows - top + (this.request.scope.kind === "all" ? 1 : 0);
    const columns = Math.max(LABELS.length, answers.column + answers.columns);
    return {
      title,
      area: { sheet: whatIfSheet.name, row: top, column: 0, rows, columns },
      answers,
      values: this.#values,
      formulas: this.#formulas,
    };
  }

  /** The lines of the arguments that are shared: neither varied nor the units. */
  protected shared(): readonly Parameter[] {
    const { down, across, worksheetFunction } = this.request;
    return variable(worksheetFunction).filter(({ key }) => key !== down?.key && key !== across?.key);
  }

  /** `=SOAK.NAME(...)` without its equals sign, one value of its row taken where the request asks for one. */
  protected call(expressionOf: (parameter: Parameter) => string): string {
    const { worksheetFunction, result } = this.request;
    const called = `SOAK.${worksheetFunction.name}(${worksheetFunction.parameters.map(expressionOf).join(",")})`;
    return this.isRow && result !== "all" ? `INDEX(${called},0,${result + 1})` : called;
  }

  protected get isRow(): boolean {
    return this.request.worksheetFunction.result.shape === "row";
  }

  protected get results(): readonly NamedResult[] {
    return resultsOf(this.request);
  }

  protected parameter(key: string): Parameter {
    const found = this.request.worksheetFunction.parameters.find((parameter) => parameter.key === key);
    if (found === undefined) throw new Error(`SOAK.${this.request.worksheetFunction.name} has no argument "${key}".`);
    return found;
  }

  /** The value cell of a shared input, as a formula on the sheet writes it. */
  protected inputCell(place: number): string {
    return this.reference(this.inputsRow + place, 1);
  }

  protected reference(row: number, column: number, rows = 1, columns = 1): string {
    return absolute(addressOf(this.range(row, column, rows, columns))).replace(/^.*!/, "");
  }

  protected range(row: number, column: number, rows = 1, columns = 1): CellRange {
    return { sheet: whatIfSheet.name, row, column, rows, columns };
  }

  protected put(row: number, column: number, content: Content): void {
    if ("formula" in content) this.#formulas.push({ range: this.range(row, column), formulas: [[content.formula]] });
    else if (content.value !== null && content.value !== "") this.putValues(row, column, [[content.value]]);
  }

  protected putValues(row: number, column: number, values: readonly (readonly CellValue[])[]): void {
    this.#values.push({ range: this.range(row, column, values.length, values[0]?.length ?? 0), values });
  }

  /** Value functions lift over a whole row of headings; row functions take columns only, so each heading has its own formula. */
  protected putAnswers(answers: CellRange, formulaAt: (heading: (row: number) => string) => string): void {
    if (!this.isRow || this.request.across === null) {
      this.put(answers.row, answers.column, { formula: formulaAt((row) => this.reference(row, answers.column, 1, answers.columns)) });
      return;
    }
    for (let column = answers.column; column < answers.column + answers.columns; column += 1) {
      this.put(answers.row, column, { formula: formulaAt((row) => this.reference(row, column)) });
    }
  }
}

/** One varied input down, and across it another one or the values of a row, for typed numbers or one yard's. */
class TableOfOne extends Table {
  protected inputLines(): readonly InputLine[] {
    const { scope, worksheetFunction } = this.request;
    return [
      ...(scope.kind === "yard"
        ? [
            {
              label: "Site ID",
              value: { value: scope.siteId },
              unit: { value: null },
              note: "Write another yard's Site ID here, and the table is that yard's.",
            },
          ]
        : []),
      ...(takesUnits(worksheetFunction) ? [this.#unitsLine()] : []),
      ...this.shared().map((parameter) => this.#lineOf(parameter)),
    ];
  }

  protected grid(headingRow: number): CellRange {
    const { across } = this.request;
    const down = this.#down;
    const parameter = this.parameter(down.key);
    const answers = this.range(headingRow + 1, 1, down.values.length, across?.values.length ?? this.results.length);
    this.putValues(
      headingRow + 1,
      0,
      down.values.map((value) => [value]),
    );
    if (across === null) {
      this.put(headingRow, 0, this.#heading(parameter));
      this.results.forEach((result, place) => this.put(headingRow, 1 + place, this.#heading(result)));
    } else {
      this.put(headingRow, 0, this.#corner(parameter, this.parameter(across.key)));
      this.putValues(headingRow, 1, [across.values]);
    }
    const side = this.reference(headingRow + 1, 0, down.values.length);
    this.putAnswers(
      answers,
      (heading) =>
        `=${this.call((each) => (each.key === down.key ? side : each.key === across?.key ? heading(headingRow) : this.#shared(each)))}`,
    );
    return answers;
  }

  get #down(): Varied {
    if (this.request.down === null) throw new Error("A table of one yard varies an input down its rows.");
    return this.request.down;
  }

  #shared(parameter: Parameter): string {
    if (parameter.isRange) return this.#series(parameter);
    if (parameter.key === "units") return this.#unitsCell ?? "";
    return this.inputCell(this.#firstInput + this.shared().findIndex(({ key }) => key === parameter.key));
  }

  #series(parameter: Parameter): string {
    const feed = feedOf(this.request, parameter);
    return feed.kind === "workbook" ? sourceOfYard(feed.source, 1, this.places, this.#siteCell, this.#unitsCell) : "";
  }

  get #siteCell(): string | null {
    return this.request.scope.kind === "yard" ? this.inputCell(0) : null;
  }

  get #unitsCell(): string | null {
    return takesUnits(this.request.worksheetFunction) ? this.inputCell(this.#firstInput - 1) : null;
  }

  /** Site ID and units stand above the arguments. */
  get #firstInput(): number {
    return (this.request.scope.kind === "yard" ? 1 : 0) + (takesUnits(this.request.worksheetFunction) ? 1 : 0);
  }

  #unitsLine(): InputLine {
    const { scope } = this.request;
    const site = this.#siteCell;
    const value: Content =
      site === null
        ? { value: scope.kind === "all" ? "us" : scope.units }
        : { formula: `=${sourceOfYard({ kind: "design", key: "units" }, 1, this.places, site, null)}` };
    return { label: "Units", value, unit: { value: null }, note: "us: in, ft, sq ft, cu ft, cu yd; metric: mm, m, m², m³." };
  }

  #lineOf(parameter: Parameter): InputLine {
    const feed = feedOf(this.request, parameter);
    const unit = this.#unit(parameter);
    if (feed.kind === "typed") return { label: parameter.label, value: { value: feed.value }, unit, note: parameter.description };
    if (feed.kind === "workbook") {
      const formula = `=${sourceOfYard(feed.source, factorOf(parameter), this.places, this.#siteCell, this.#unitsCell)}`;
      return { label: parameter.label, value: { formula }, unit, note: `Follows the workbook. ${parameter.description}` };
    }
    return { label: parameter.label, value: this.#defaultOf(parameter), unit, note: parameter.description };
  }

  #defaultOf(parameter: Parameter): Content {
    const { default: usual } = parameter;
    if (usual === undefined || (typeof usual === "object" && usual !== null)) return { value: null };
    const factor = factorOf(parameter);
    const units = this.#unitsCell;
    if (typeof usual !== "number" || usual === 0 || factor === 1 || units === null) return { value: usual };
    return { formula: `=${usual}*${metricFactor(units, factor)}` };
  }

  #unit({ kind }: { readonly kind: Parameter["kind"] }): Content {
    if (!isNumberKind(kind)) return { value: null };
    const units = this.#unitsCell;
    if (units === null || factorOf({ kind }) === 1) return { value: writtenUnit(kind, "us") };
    return { formula: `=IF(${asWord(units)}="metric","${unitOf(kind, "metric")}","${unitOf(kind, "us")}")` };
  }

  #heading(of: Parameter | NamedResult): Content {
    return written(this.#labelled(of));
  }

  #corner(down: Parameter, across: Parameter): Content {
    return written([...this.#labelled(down), { text: " down, " }, ...this.#labelled(across), { text: " across" }]);
  }

  /** "Ponding depth (in)", the unit following the units cell. */
  #labelled(of: Parameter | NamedResult): readonly Piece[] {
    const unit = this.#unit(of);
    if ("formula" in unit) return [{ text: `${of.label} (` }, { formula: unit.formula.slice(1) }, { text: ")" }];
    return [{ text: unit.value === null || unit.value === "" ? of.label : `${of.label} (${String(unit.value)})` }];
  }
}

/** A row a yard, and one varied input across the columns. */
class TableOfYards extends Table {
  protected inputLines(): readonly InputLine[] {
    return this.shared().map((parameter): InputLine => {
      const feed = feedOf(this.request, parameter);
      const unit = { value: isNumberKind(parameter.kind) ? writtenUnit(parameter.kind, "us") : null };
      if (feed.kind === "workbook") {
        return {
          label: parameter.label,
          value: { value: null },
          unit,
          note: `Blank: each yard's own, from the workbook. A value here counts for every yard. ${parameter.description}`,
        };
      }
      const usual = parameter.default;
      const value =
        feed.kind === "typed" ? feed.value : usual === undefined || (typeof usual === "object" && usual !== null) ? null : usual;
      return { label: parameter.label, value: { value }, unit, note: `For every yard. ${parameter.description}` };
    });
  }

  protected grid(headingRow: number): CellRange {
    const { across } = this.request;
    if (across === null) throw new Error("A table of every yard varies an input across its columns.");
    const design = this.places.of(designSheet);
    const answers = this.range(headingRow + 1, 2, design.rows, across.values.length);
    const ids = design.columnReference("siteId");
    const units = design.columnReference("units");
    const [result] = this.results;
    this.put(headingRow - 1, 2, {
      value: `${inBoth(this.parameter(across.key))} across${factorOf(this.parameter(across.key)) === 1 ? "" : ", in US units; a metric yard takes the same in its own"}. Answers: ${result === undefined ? "" : inBoth(result)}`,
    });
    this.putValues(headingRow, 0, [["Site ID", "Units", ...across.values]]);
    this.put(headingRow + 1, 0, { formula: `=IF(${ids}="","",${ids})` });
    this.put(headingRow + 1, 1, { formula: `=IF(${ids}="","",${units})` });
    const converted = (parameter: Parameter, cells: string) =>
      factorOf(parameter) === 1 ? cells : `${cells}*${metricFactor(units, factorOf(parameter))}`;
    this.putAnswers(answers, (heading) => {
      const call = this.call((each) => {
        if (each.key === "units") return units;
        if (each.key === across.key) return converted(each, heading(headingRow));
        const feed = feedOf(this.request, each);
        const ofYards = feed.kind === "workbook" ? sourceForEveryYard(feed.source, factorOf(each), this.places) : null;
        if (each.isRange) return ofYards ?? "";
        const cell = this.inputCell(this.shared().findIndex(({ key }) => key === each.key));
        return unlessBlank(cell, converted(each, cell), ofYards);
      });
      return `=IF(${ids}="","",${call})`;
    });
    this.put(answers.row + answers.rows, 0, { value: "End of this table. The rows above fill by themselves, a row a yard." });
    return answers;
  }
}

/** The results that stand in the table. */
export function resultsOf({ worksheetFunction, result }: Pick<WhatIfRequest, "worksheetFunction" | "result">): readonly NamedResult[] {
  const { values } = worksheetFunction.result;
  return result === "all" ? values : values.slice(result, result + 1);
}

function titleOf(request: WhatIfRequest): string {
  const { worksheetFunction, down, across, scope } = request;
  const labelOf = (varied: Varied | null) => worksheetFunction.parameters.find(({ key }) => key === varied?.key)?.label.toLowerCase() ?? "";
  const [only] = resultsOf(request);
  const what = request.result === "all" ? worksheetFunction.summary.replace(/\.$/, "") : (only?.label ?? "");
  const by = [...(down === null ? [] : [`${labelOf(down)} down`]), ...(across === null ? [] : [`${labelOf(across)} across`])].join(", ");
  return `${what}: ${scope.kind === "all" ? "every yard down, " : ""}${by} (SOAK.${worksheetFunction.name})`;
}

/** "Floor area (sq ft | m²)". */
function inBoth({ label, kind }: { readonly label: string; readonly kind: Parameter["kind"] }): string {
  if (!isNumberKind(kind)) return label;
  const [us, metric] = [writtenUnit(kind, "us"), writtenUnit(kind, "metric")];
  return us === "" ? label : `${label} (${us === metric ? us : `${us} | ${metric}`})`;
}

type Piece = { readonly text: string } | { readonly formula: string };

function written(pieces: readonly Piece[]): Content {
  if (pieces.every((piece) => "text" in piece)) return { value: pieces.map((piece) => ("text" in piece ? piece.text : "")).join("") };
  return { formula: `=${pieces.map((piece) => ("text" in piece ? `"${piece.text.replaceAll('"', '""')}"` : piece.formula)).join("&")}` };
}
