/** A document for paper, in words and numbers already: what it says and in which order. */
export interface PrintedDocument {
  readonly title: string;
  readonly subtitle: string;
  readonly blocks: readonly PrintedBlock[];
}

export type PrintedBlock =
  | { readonly heading: string }
  | { readonly paragraph: string }
  | { readonly facts: readonly (readonly [label: string, value: string])[] }
  | { readonly list: readonly string[] }
  | { readonly table: PrintedTable }
  /** Lines to fill in by hand. */
  | { readonly blanks: readonly string[] };

export interface PrintedTable {
  readonly caption: string;
  readonly columns: readonly { readonly heading: string; readonly isNumber: boolean }[];
  readonly rows: readonly (readonly string[])[];
  /** How many of the last rows are totals. */
  readonly totals: number;
}

/** A page that stands alone in one file, each document on paper of its own. It asks for no other file and runs nothing. */
export function printedPage(title: string, documents: readonly PrintedDocument[]): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${plainMarkup(title)}</title>
<style>${STYLE}</style>
</head>
<body>
${documents.map(documentMarkup).join("\n")}
</body>
</html>
`;
}

function documentMarkup({ title, subtitle, blocks }: PrintedDocument): string {
  return `<article>
<h1>${escaped(title)}</h1>
<p class="subtitle">${escaped(subtitle)}</p>
${blocks.map(blockMarkup).join("\n")}
</article>`;
}

function blockMarkup(block: PrintedBlock): string {
  if ("heading" in block) return `<h2>${escaped(block.heading)}</h2>`;
  if ("paragraph" in block) return `<p>${escaped(block.paragraph)}</p>`;
  if ("list" in block) return `<ul>${block.list.map((line) => `<li>${escaped(line)}</li>`).join("")}</ul>`;
  if ("facts" in block)
    return `<dl>${block.facts.map(([label, value]) => `<div><dt>${escaped(label)}</dt><dd>${escaped(value)}</dd></div>`).join("")}</dl>`;
  if ("blanks" in block)
    return `<dl class="blanks">${block.blanks.map((label) => `<div><dt>${escaped(label)}</dt><dd></dd></div>`).join("")}</dl>`;
  return tableMarkup(block.table);
}

function tableMarkup({ caption, columns, rows, totals }: PrintedTable): string {
  const cell = (tag: "th" | "td", words: string, column: number) =>
    `<${tag}${tag === "th" ? ' scope="col"' : ""}${columns[column]?.isNumber === true ? ' class="number"' : ""}>${escaped(words)}</${tag}>`;
  const row = (words: readonly string[], place: number) =>
    `<tr${place >= rows.length - totals ? ' class="total"' : ""}>${words.map((word, column) => cell("td", word, column)).join("")}</tr>`;
  return `<table>
<caption>${escaped(caption)}</caption>
<thead><tr>${columns.map(({ heading }, column) => cell("th", heading, column)).join("")}</tr></thead>
<tbody>${rows.map(row).join("\n")}</tbody>
</table>`;
}

/** Text within the page, its writing direction kept to itself. */
function escaped(words: string): string {
  return TURNS_DIRECTION.test(words) ? `<bdi>${plainMarkup(words)}</bdi>` : plainMarkup(words);
}

/** Text as text: no character of it can begin a tag or end an attribute. */
function plainMarkup(words: string): string {
  return words.replace(/[&<>"']/g, (character) => `&#${character.charCodeAt(0)};`);
}

/** Right-to-left letters, or marks that turn the direction of what follows. */
const TURNS_DIRECTION = /[\u0590-\u08ff\u200e\u200f\u202a-\u202e\u2066-\u2069\ufb1d-\ufdff\ufe70-\ufeff]/;

// Letter and A4 both: the page takes the size of the paper in the printer.
const STYLE = `
:root { color-scheme: light; }
body { max-width: 8in; margin: 0 auto; padding: 0.4in; background: #fff; color: #111; font: 11pt/1.4 "Segoe UI", "Helvetica Neue", Arial, "Liberation Sans", sans-serif; }
article + article { margin-top: 1in; }
h1 { margin: 0; font-size: 19pt; line-height: 1.2; overflow-wrap: anywhere; }
h2 { margin: 16pt 0 4pt; font-size: 13pt; break-after: avoid; }
p, ul, dl { margin: 4pt 0; overflow-wrap: anywhere; }
.subtitle { margin-bottom: 10pt; color: #444; }
ul { padding-inline-start: 18pt; }
li { margin: 3pt 0; break-inside: avoid; }
dl > div { display: flex; gap: 12pt; padding: 2pt 0; border-bottom: 0.5pt solid #bbb; break-inside: avoid; }
dt { flex: 0 0 45%; color: #333; }
dd { flex: 1; margin: 0; font-variant-numeric: tabular-nums; overflow-wrap: anywhere; }
.blanks > div { padding: 12pt 0 2pt; border-color: #444; }
table { width: 100%; margin: 8pt 0; border-collapse: collapse; font-size: 9.5pt; line-height: 1.3; }
caption { padding: 0 0 4pt; font-size: 13pt; font-weight: 600; text-align: start; }
th, td { padding: 3pt 4pt; border-bottom: 0.5pt solid #999; text-align: start; vertical-align: top; overflow-wrap: anywhere; }
th { border-bottom: 1.2pt solid #111; vertical-align: bottom; overflow-wrap: normal; }
.number { text-align: end; white-space: nowrap; font-variant-numeric: tabular-nums; }
.total td { font-weight: 600; }
tr { break-inside: avoid; }
thead { display: table-header-group; }
@page { margin: 0.5in; }
@media print {
  body { max-width: none; padding: 0; font-size: 10pt; line-height: 1.3; }
  h2 { margin-top: 8pt; }
  .blanks > div { padding-top: 8pt; }
  p, ul, dl { margin: 3pt 0; }
  li { margin: 1.5pt 0; }
  article + article { margin-top: 0; break-before: page; }
}
`;
