import { citationText } from "../../functions/published/source.ts";
import { catalogue } from "../../functions/worksheet/catalogue.ts";
import { isCellError } from "../../functions/worksheet/cell.ts";
import type { Cell, CellInput } from "../../functions/worksheet/cell.ts";
import type { NamedResult } from "../../functions/worksheet/results.ts";
import type { WorksheetFunction } from "../../functions/worksheet/worksheet-function.ts";
import { html, list } from "./html.ts";
import type { Html } from "./html.ts";

/** The function reference, written from the catalogue: Excel's own help for a function opens it at the function's name. */
export function helpPage(): string {
  return html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'">
<title>Soakbook: the worksheet functions</title>
<link rel="icon" href="icons/icon-32.png">
<link rel="stylesheet" href="help.css">
</head>
<body>
<h1>Soakbook: the worksheet functions</h1>
<p>Type a function into a cell with its prefix, as in =SOAK.${catalogue[0]?.name ?? "VERSION"}(...). An argument can be a cell or a range unless it says otherwise; with ranges the answers spill. Results are for planning: local codes and licensed practice decide.</p>
<ul class="contents">
${list(catalogue.map(({ name }) => html`<li><a href="#${name}">${name}</a></li>`))}
</ul>
${list(catalogue.map(reference))}
<section id="support">
<h2>Support</h2>
<p>Ask whoever hosts this add-in for you. The answer to =SOAK.VERSION() says which version computes your workbook.</p>
</section>
<section id="privacy">
<h2>Privacy</h2>
<p>Soakbook sends nothing anywhere. What you type stays in your workbook, and without Excel in your browser, until you save it to a file.</p>
</section>
<section id="terms">
<h2>Terms</h2>
<p>Soakbook comes without warranty. Check its results before anyone digs, and follow local codes.</p>
</section>
</body>
</html>
`.text;
}

function reference(declared: WorksheetFunction): Html {
  return html`<section id="${declared.name}">
<h2>SOAK.${declared.name}</h2>
<p>${declared.summary}</p>
<p><code>=SOAK.${declared.name}(${declared.parameters.map(({ key, optional }) => (optional ? `[${key}]` : key)).join(", ")})</code></p>
${declared.parameters.length === 0 ? html`` : argumentTable(declared)}
<p>${resultWords(declared)}</p>
<p>Example: <code>${exampleFormula(declared)}</code> gives ${exampleAnswer(declared.example.result)}. ${citationText(declared.example.from)}</p>
<p>Sources:</p>
<ul>
${list(declared.sources.map((source) => html`<li>${citationText(source)}</li>`))}
</ul>
</section>
`;
}

function argumentTable(declared: WorksheetFunction): Html {
  return html`<table>
<thead><tr><th scope="col">Argument</th><th scope="col">What it takes</th></tr></thead>
<tbody>
${list(declared.parameters.map((parameter) => html`<tr><th scope="row">${parameter.key}${parameter.optional ? " (optional)" : ""}</th><td>${parameter.description}</td></tr>`))}
</tbody>
</table>
`;
}

function resultWords({ result }: WorksheetFunction): string {
  const values = result.values.map(withUnits).join("; ");
  if (result.shape === "row") return `Result: a row of ${values}.`;
  if (result.shape === "table") return `Result: a table with the columns ${values}.`;
  return `Result: ${values}.`;
}

function withUnits({ label, units }: NamedResult): string {
  return units ? `${label} (${units.us} or ${units.metric})` : label;
}

function exampleFormula({ name, example }: WorksheetFunction): string {
  return `=SOAK.${name}(${example.arguments.map(written).join(", ")})`;
}

function exampleAnswer(result: Cell | readonly (readonly Cell[])[]): string {
  return Array.isArray(result) ? written(result as CellInput) : shown(result as Cell);
}

/** An argument as it is typed into a formula. */
function written(input: CellInput): string {
  if (input === undefined || input === null) return "";
  if (Array.isArray(input)) return `{${(input as readonly (readonly Cell[])[]).map((row) => row.map(written).join(", ")).join("; ")}}`;
  if (typeof input === "string") return `"${input.replaceAll('"', '""')}"`;
  return shown(input as Cell);
}

function shown(cell: Cell): string {
  if (cell === null) return "";
  if (isCellError(cell)) return cell.code;
  return typeof cell === "boolean" ? String(cell).toUpperCase() : String(cell);
}
